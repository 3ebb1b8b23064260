export * from './seat';
export * from './over';
export * from './choose';
export * from './reading';
export * from './others';
export * from './for-thread';
export * from './verdict';
export * from './practice';
