export * from './run';
export * from './progress';
export * from './changes';
export * from './stored';
