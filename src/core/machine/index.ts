export * from './field';
export * from './fields';
export * from './profile';
export * from './check-field';
export * from './stored';
export * from './gears';
export * from './workshop';
