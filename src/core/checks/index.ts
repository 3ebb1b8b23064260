export * from './item';
export * from './items';
export * from './bounds';
export * from './reading';
export * from './record';
export * from './state';
export * from './phase';
