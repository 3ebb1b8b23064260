export * from './spec';
export * from './format';
export * from './check';
export * from './run';
export { MOST_BUCKETS, SECTORS, type Buckets } from './record';
