import * as v from 'valibot';
import type { VersionRow } from '../core/carry';

/**
 * How every record that can change is kept, and goes into files. Which of two versions is newer is told by ancestry
 * (`parents`), never by a phone's clock; `changedAt` is for people to read.
 */
export type Envelope = VersionRow;

/** A record that can be read: its envelope and what is in it. */
export interface Kept<T> {
  readonly id: string;
  readonly rev: string;
  readonly changedAt: number;
  readonly deleted: boolean;
  readonly value: T;
}

/** A record that can't be read by this version: shown as such, kept as it is, exportable raw. */
export interface Unreadable {
  readonly id: string;
  readonly raw: unknown;
}

/** How the values of one store are written and read. `decode` gives null for what it can't read; never throws. */
export interface Codec<T> {
  readonly schema: number;
  readonly encode: (value: T) => unknown;
  readonly decode: (body: unknown) => T | null;
}

const Text = v.pipe(v.string(), v.minLength(1), v.maxLength(100));
const EnvelopeShape = v.looseObject({
  id: Text,
  schema: v.pipe(v.number(), v.integer(), v.minValue(1)),
  rev: Text,
  parents: v.pipe(v.array(Text), v.maxLength(8)),
  device: v.string(),
  counter: v.number(),
  changedAt: v.number(),
  deleted: v.boolean(),
  body: v.unknown(),
});

export const isEnvelope = (x: unknown): x is Envelope => v.is(EnvelopeShape, x);
