import type { Inputs, TestRecord, TestResult } from '../../context';
import { roomOf } from '../../figures/room-from';
import { compare, inBase, type Stated } from '../../quantity';
import { makeTest } from '../record';
import { SEEN, type Seen } from './now';
import { stopRule } from './rules';
import type { StopTest } from './tests';

/** Why nothing was recorded. */
export type StopRefusal = 'distance-needed' | 'room-not-known' | 'not-lacking';
export type StopMade =
  { readonly ok: true; readonly record: TestRecord } | { readonly ok: false; readonly refusal: StopRefusal };

const resultOf = (seen: Seen, tooFar: boolean): TestResult => {
  if (seen === 'none-here') return 'undecided';
  return seen === 'as-said' && !tooFar ? 'passed' : 'failed';
};

/**
 * The record of what a person saw. A test that measures a distance is as said only with that distance, held against the
 * stopping room of the job; that it was not as said can always be recorded.
 */
export const makeStopTest = (
  test: StopTest,
  inputs: Inputs,
  id: string,
  seen: Seen,
  distance: Stated | null,
): StopMade => {
  if (seen === 'none-here' && !test.mayLack) return { ok: false, refusal: 'not-lacking' };
  const measured = test.distance && seen !== 'none-here' ? distance : null;
  const room = roomOf(inputs);
  if (test.distance && seen === 'as-said') {
    if (!measured) return { ok: false, refusal: 'distance-needed' };
    if (!room) return { ok: false, refusal: 'room-not-known' };
  }
  const tooFar = measured !== null && room !== null && compare(inBase(measured), inBase(room)) > 0;
  const record = makeTest(test.id, stopRule(test.id, inputs), inputs, id, {
    result: resultOf(seen, tooFar),
    readings: test.distance && measured ? { [test.distance.id]: measured } : {},
    choices: { [SEEN]: seen },
  });
  return { ok: true, record };
};
