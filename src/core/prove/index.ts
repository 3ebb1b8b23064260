export * from './ids';
export * from './record';
export * from './rules';
export { chose, LEAD_READING, leadOf } from './given';
export * from './spec';
export * from './take';
export * from './tests';
export * from './uncertainty';
