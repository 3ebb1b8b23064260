export * from './document';
export * from './merge';
export * from './rows';
export { alike } from './canonical';
export { MOST } from './bounds';
export { forCodes, type CodesKind } from './for-codes';
export * from './shelf';
