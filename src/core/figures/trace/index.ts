export * from './figures';
export * from './setup';
export * from './verdict';
