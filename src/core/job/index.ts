export * from './job';
export * from './stored';
