export * from './job';
export * from './work';
export * from './fields';
export * from './stored';
export * from './own-thread';
export * from './starts';
