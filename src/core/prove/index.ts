export * from './ids';
export * from './record';
export * from './rules';
export * from './spec';
export * from './take';
export * from './tests';
export * from './uncertainty';
