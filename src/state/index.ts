export { App } from './app';
export { dayOf } from './clock';
export type { SaveState } from './live';
export type { OwnEntry } from './own-threads';
export type { Settings, StorageCode } from '../storage';
export { openStorage, newId } from '../storage';
