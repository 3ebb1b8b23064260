export * from './gearing';
export * from './rates';
