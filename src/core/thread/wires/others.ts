import type { Thread } from '../thread';
import type { Measured } from './reading';

/** Ways to measure without wires. Lengths in one unit. */

/**
 * Thread micrometer (cone and vee anvils) set on a standard: the reading, moved by what the standard showed.
 * Anvils must be marked for this pitch and form; lead and angle errors of the work go into the reading unseen.
 * u is null while any part is.
 */
export const threadMicrometer = (
  reading: Measured,
  standard: { readonly actual: Measured; readonly shown: Measured },
): Measured => {
  const us = [reading.u, standard.actual.u, standard.shown.u];
  return {
    value: reading.value + standard.actual.value - standard.shown.value,
    u: us.includes(null) ? null : Math.hypot(...(us as number[])),
  };
};

export type GaugeRule = 'iso-1502' | 'asme-b1.2';

/** Whose rule a thread's gauges follow: by the inch that of ASME. */
export const gaugeRuleOf = ({ pitch }: Thread): GaugeRule =>
  pitch.unit === 'tpi' ? 'asme-b1.2' : 'iso-1502';

export interface GaugeLengths {
  /** A no-go gauge may enter from either end by no more than this many turns. */
  readonly noGoTurns: number;
  /** The same along the axis: turns × lead. */
  readonly noGoLength: number;
  /** The go gauge must run this far freely: the whole length of the thread. */
  readonly goLength: number;
  readonly source: 'from-memory';
}

/**
 * How far go and no-go gauges may run: no-go two turns (ISO 1502), three turns (ASME B1.2), both from memory of
 * the standards. Null unless lead and length are above 0.
 */
export const gaugeLengths = (rule: GaugeRule, lead: number, threadLength: number): GaugeLengths | null => {
  if (!(lead > 0 && threadLength > 0)) return null;
  const noGoTurns = rule === 'iso-1502' ? 2 : 3;
  return { noGoTurns, noGoLength: noGoTurns * lead, goLength: threadLength, source: 'from-memory' };
};

/** Pitch from a length over so many crests or grooves: crests are one more than pitches. Null below two crests. */
export const pitchOverCrests = (length: Measured, crests: number): Measured | null => {
  if (!Number.isInteger(crests) || crests < 2 || !(length.value > 0)) return null;
  const n = crests - 1;
  return { value: length.value / n, u: length.u === null ? null : length.u / n };
};
