export * from './ratio';
export * from './stored';
export * from './read';
export * from './write';
export * from './units';
export * from './lead';
export * from './preferred';
