export { App } from './app';
export { dayOf } from './clock';
export type { SaveState } from './live';
export type { Settings, StorageCode } from '../storage';
export { openStorage, newId } from '../storage';
