import type { IDBPDatabase } from 'idb';
import { v1 } from './v1';
import { v2 } from './v2';
import { v3 } from './v3';

/**
 * One migration per file, run in order from the version found. To change the database: add the next file here,
 * with a saved database of the version before as its test.
 */
export const MIGRATIONS: readonly ((db: IDBPDatabase) => void)[] = [v1, v2, v3];
export const DB_VERSION = MIGRATIONS.length;
export const DB_NAME = 'latheside';
/** The copy of that database beside it (mirror.ts). */
export const MIRROR_NAME = `${DB_NAME}-mirror`;
