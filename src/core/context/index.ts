export * from './inputs';
export * from './record';
export * from './staleness';
