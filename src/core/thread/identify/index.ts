export * from './candidate';
export * from './identify';
export * from './readings';
export type { CrestState } from './crest';
export * from './separate';
