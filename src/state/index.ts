export { App } from './app';
export { dayOf } from './clock';
export { threadsInUse, type ThreadInUse } from './in-use';
export type { SaveState } from './live';
export type { OwnEntry } from './own-threads';
export type { EndedRun } from './ended-runs';
export type { Begun, OpenRun, RunHold, RunNames } from './runs';
export type { Settings, StorageCode } from '../storage';
export { openStorage, newId } from '../storage';
