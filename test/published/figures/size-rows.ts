import { div, inBase, mul, ratio, type Ratio } from '../../../src/core/quantity';
import { threadsOf } from '../../../src/core/thread/catalogue';
import { drillNamed, type DrillKind } from '../../../src/core/thread/drills';
import { basicSizes } from '../../../src/core/thread/forms';
import { limits } from '../../../src/core/thread/limits';
import type { Thread } from '../../../src/core/thread/thread';
import { thread } from '../printed';
import type { Figure, Source, Table } from './figure';
import { headingOf } from './limit-rows';

/** Size on its key, major diameter and pitch, both in mm; "-" where nothing is printed. */
export type SeriesRow = readonly [size: string, major: string, pitch: string];

const mm = (value: Ratio, unit: 'mm' | 'in'): Ratio => (unit === 'in' ? mul(value, ratio(127, 5)) : value);

/** Diameter and pitch that a series gives a size: the size is looked up, not the pitch. */
export const seriesTable = (source: Source, family: string, rows: readonly SeriesRow[]): Table => ({
  source,
  figures: rows.flatMap(([size, major, pitch]) => {
    const [t, ...others] = threadsOf(family).filter((x) => x.size === size);
    const ours = (f: (t: Thread) => Ratio | null): Ratio | string =>
      (t && !others.length && f(t)) || 'no such size, or more than one';
    const figures: Figure[] = [
      {
        family,
        name: `${t?.id ?? size} basic major`,
        printed: major,
        ours: ours((x) => x.major && mm(x.major.value, x.major.unit === 'in' ? 'in' : 'mm')),
      },
      { family, name: `${t?.id ?? size} pitch`, printed: pitch, ours: ours((x) => inBase(x.pitch)) },
    ];
    return figures.filter((f) => f.printed !== '-');
  }),
});

/** Basic sizes of a thread in its own unit: "major", "pitch" and "minor" diameter; "-" where nothing is printed. */
export type BasicRow = readonly [id: string, major: string, pitch: string, minor: string];

export const basicTable = (source: Source, rows: readonly BasicRow[]): Table => ({
  source,
  figures: rows.flatMap(([id, ...cells]) => {
    const t = thread(id);
    const b = basicSizes(t);
    return (['major', 'pitch', 'minor'] as const).flatMap((column, i): Figure[] => {
      const printed = cells[i] ?? '-';
      if (printed === '-') return [];
      return [
        { family: headingOf(t.family), name: `${id} basic ${column}`, printed, ours: b?.[column] ?? 'none' },
      ];
    });
  }),
});

/** Trapezoidal basic sizes as ISO 2904 names them: d2 = D2, D4 of the nut, d3 of the screw, D1 of the nut. */
export type TrapezoidalRow = readonly [id: string, d2: string, D4: string, d3: string, D1: string];

export const trapezoidalTable = (source: Source, rows: readonly TrapezoidalRow[]): Table => ({
  source,
  figures: rows.flatMap(([id, d2, D4, d3, D1]) => {
    const b = basicSizes(thread(id));
    const screw = limits(thread(id), '7e');
    const nut = limits(thread(id), '7H');
    const figure = (name: string, printed: string, ours: Ratio | null | undefined): Figure[] =>
      printed === '-' ? [] : [{ family: 'tr', name: `${id} ${name}`, printed, ours: ours ?? 'none' }];
    return [
      ...figure('basic pitch', d2, b?.pitch),
      ...figure('D4', D4, nut.ok ? nut.major.min : null),
      ...figure('7e minor max', d3, screw.ok ? screw.minor.max : null),
      ...figure('basic minor', D1, b?.minor),
    ];
  }),
});

/** Kind of drill, its name, diameter in inches. */
export type DrillRow = readonly [kind: DrillKind, name: string, inches: string];

export const drillTable = (source: Source, rows: readonly DrillRow[]): Table => ({
  source,
  figures: rows.map(([kind, name, printed]) => {
    const drill = drillNamed(kind, name);
    const ours = drill ? div(drill.diameter, ratio(127, 5)) : 'not listed';
    return { family: 'drills', name: `${kind} ${name}`, printed, ours };
  }),
});
