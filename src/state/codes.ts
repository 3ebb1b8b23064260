import { storeTest } from '../core/context';
import { readProfile, storeProfile } from '../core/machine';
import type { App } from './app';

/** What a person is told of bytes that came by codes. */
export interface Received {
  readonly name: string;
  readonly workshop: string;
  readonly tests: number;
  /** Nothing of them is kept on the phone. */
  readonly bytes: Uint8Array;
}

/** The machine in use as bytes: its profile and the newest record of each test. Null where there is no machine. */
export const bytesToShow = (app: App): Promise<Uint8Array<ArrayBuffer> | null> => {
  const { profile, records } = app;
  if (!profile) return Promise.resolve(null);
  const newest = new Map(records.tests.map((record) => [record.test, record]));
  const tests = [...newest.values()].map((record) => ({ at: record.at, ...storeTest(record) }));
  const text = JSON.stringify({ profile: storeProfile(profile), tests });
  return Promise.resolve(new TextEncoder().encode(text));
};

/** Takes bytes as `bytesToShow` gives them, and says what they are; null for anything else. Never throws. */
export const bytesRead = (_app: App, bytes: Uint8Array): Promise<Received | null> => {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    const { profile, tests } = JSON.parse(text) as { profile?: unknown; tests?: unknown };
    const read = readProfile(profile)?.profile;
    if (!read || !Array.isArray(tests)) return Promise.resolve(null);
    return Promise.resolve({ name: read.name, workshop: read.workshop, tests: tests.length, bytes });
  } catch {
    return Promise.resolve(null);
  }
};
