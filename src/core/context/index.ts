export * from './inputs';
export * from './order';
export * from './record';
export * from './staleness';
export * from './stored';
export * from './test-ids';
export * from './test-record';
export * from './test-standing';
