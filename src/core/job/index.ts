export * from './job';
export * from './fields';
export * from './stored';
