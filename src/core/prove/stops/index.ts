export * from './arrangement';
export * from './now';
export * from './record';
export * from './rules';
export * from './standing';
export * from './tests';
