import * as v from 'valibot';
import { fromStored, toStored } from '../quantity';
import { EVENT_KINDS, type EventKind } from './inputs';
import type { CheckRecord } from './record';

const CheckShape = v.object({
  item: v.string(),
  answer: v.picklist(['done', 'not-ok']),
  day: v.string(),
  hours: v.nullable(v.number()),
  inputs: v.record(v.string(), v.string()),
  rule: v.number(),
  reading: v.unknown(),
  cut: v.nullable(v.number()),
});
const EventShape = v.object({ kind: v.picklist(EVENT_KINDS) });
const HoursShape = v.object({ hours: v.pipe(v.number(), v.finite(), v.minValue(0)) });

/** What of a check record goes into its row's body. */
export const storeCheck = ({ id: _id, at: _at, reading, ...rest }: CheckRecord): Record<string, unknown> => ({
  ...rest,
  reading: reading && toStored(reading),
});

/** null for what can't be read: it counts as not recorded, and the check is asked again. Never throws. */
export const readCheckBody = (body: unknown): Omit<CheckRecord, 'id' | 'at'> | null => {
  const read = v.safeParse(CheckShape, body);
  return read.success ? { ...read.output, reading: fromStored(read.output.reading) } : null;
};

/**
 * What stands for a check that can't be read, where at least its item can be told: made by no rule there is (0), so that it
 * has lapsed and an older answer doesn't take its place. Null for anything else. Never throws.
 */
export const unreadCheck = (body: unknown): Omit<CheckRecord, 'id' | 'at'> | null => {
  const item = (body as { item?: unknown } | null | undefined)?.item;
  return typeof item === 'string'
    ? { item, answer: 'done', day: '', hours: null, inputs: {}, rule: 0, reading: null, cut: null }
    : null;
};

export const readEventKind = (body: unknown): EventKind | null => {
  const read = v.safeParse(EventShape, body);
  return read.success ? read.output.kind : null;
};

/** Running hours, 0 or more. */
export const readHoursBody = (body: unknown): number | null => {
  const read = v.safeParse(HoursShape, body);
  return read.success ? read.output.hours : null;
};
