export * from './filter';
export * from './common-mode';
export * from './edge-gap';
export * from './open-collector';
export * from './reach';
export * from './supply';
export * from './input-filter';
