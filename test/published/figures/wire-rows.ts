import { bestWire, wireRange, wireStandsOff } from '../../../src/core/thread/wires';
import type { Source, Table } from './figure';

/** Included angle in degrees: the heading a figure is counted under. */
const HEADING: Readonly<Record<number, string>> = { 29: 'acme', 55: '55° wires', 60: '60° wires' };

/** Threads per inch and the printed figure in inches. */
export type WireRow = readonly [tpi: number, printed: string];
export type WireKind = 'best' | 'least' | 'most' | 'constant';

const wire = (kind: WireKind, angle: number, tpi: number): number | string => {
  const [half, p] = [angle / 2, 1 / tpi];
  // Crest of an Acme thread P/4 above the pitch line (ASME B1.5).
  const range = wireRange(half, p, p / 4, p / 4 + 0.01);
  const w = 0.05;
  switch (kind) {
    case 'best':
      return bestWire(half, p) ?? 'none';
    case 'least':
    case 'most':
      return range?.[kind] ?? 'none';
    case 'constant':
      // What is taken from W (1 + cosec of the half angle) to give the height over the pitch line.
      return w * (1 + 1 / Math.sin((half * Math.PI) / 180)) - wireStandsOff({ half, pitch: p, lead: p }, w);
  }
};

export const wireTable = (
  source: Source,
  kind: WireKind,
  angle: number,
  rows: readonly WireRow[],
): Table => ({
  source,
  figures: rows.map(([tpi, printed]) => ({
    family: HEADING[angle] ?? '',
    name: `${angle}° ${kind} wire ${tpi} tpi`,
    printed,
    ours: wire(kind, angle, tpi),
  })),
});

/** Major diameter and threads per inch, wire, printed size over wires of the basic thread, in inches. */
export type OverRow = readonly [major: number, tpi: number, wire: number, printed: string];

/** `loss`: basic major less basic pitch diameter, in pitches. Lead left out, as the tables do. */
export const overTable = (
  source: Source,
  form: string,
  angle: number,
  loss: number,
  rows: readonly OverRow[],
): Table => ({
  source,
  figures: rows.map(([major, tpi, w, printed]) => {
    const p = 1 / tpi;
    return {
      family: HEADING[angle] ?? '',
      name: `${form} ${major}-${tpi} over ${w}`,
      printed,
      ours: major - loss * p + wireStandsOff({ half: angle / 2, pitch: p, lead: p }, w),
    };
  }),
});
