import { mul, ratio, stated, sub, type Ratio } from '../../../src/core/quantity';
import { basicSizes } from '../../../src/core/thread/forms';
import { limits } from '../../../src/core/thread/limits';
import type { Thread } from '../../../src/core/thread/thread';
import { thread } from '../printed';
import type { Source, Table } from './figure';

/**
 * A cell of ISO 965-1: range of diameters (over, up to; mm), pitch in hundredths of a millimetre, class that has its
 * grade or deviation, µm. Tables that don't ask for the diameter have the range of one that the pitch occurs at.
 */
export type CellRow = readonly [
  range: readonly [over: number, upTo: number],
  pitch: number,
  cls: string,
  um: string,
];
export type CellKind = 'pitch' | 'minor' | 'deviation';

/** A thread of any diameter and pitch, whether a series has it or not. */
const anyMetric = (diameter: number, hundredths: number): Thread => ({
  ...thread('iso-fine:M10x1'),
  major: stated(ratio(Math.round(diameter * 100), 100), 'mm'),
  pitch: stated(ratio(hundredths, 100), 'mm'),
});

const width = (kind: CellKind, t: Thread, cls: string): Ratio | string => {
  const l = limits(t, cls);
  if (!l.ok) return l.refusal;
  const basic = basicSizes(t)?.pitch;
  if (kind === 'deviation') return l.pitch.min && basic ? sub(l.pitch.min, basic) : 'none';
  const { max, min } = l[kind];
  return max && min ? sub(max, min) : 'none';
};

const inMicrometres = (r: Ratio | string): Ratio | string => (typeof r === 'string' ? r : mul(r, 1000));

export const cellTable = (source: Source, kind: CellKind, rows: readonly CellRow[]): Table => ({
  source,
  figures: rows.map(([[over, upTo], pitch, cls, printed]) => ({
    family: 'iso965-1',
    name: `${kind} ${over}–${upTo} P ${pitch / 100} ${cls}`,
    printed,
    // The upper end belongs to the range.
    ours: inMicrometres(width(kind, anyMetric(upTo, pitch), cls)),
  })),
});
