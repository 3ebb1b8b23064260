export * from './reading';
export * from './change';
export * from './causes';
export type { Slip, SlipKind } from './slips';
export * from './expected';
export * from './find';
export type { NextTest } from './next';
export * from './patterns';
export * from './kept';
