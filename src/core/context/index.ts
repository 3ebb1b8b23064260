export * from './inputs';
export * from './record';
export * from './staleness';
export * from './stored';
