export * from './recall';
export * from './table';
