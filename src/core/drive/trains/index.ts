export * from './written';
export * from './mesh';
export * from './train';
export * from './search';
