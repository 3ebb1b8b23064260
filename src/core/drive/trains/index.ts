export * from './written';
export * from './seats';
export * from './mesh';
export * from './turns';
export * from './train';
export * from './search';
