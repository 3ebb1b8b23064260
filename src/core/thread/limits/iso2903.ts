import { add, mul, r40At, r40Index, ratio, sub, toNumber, type Ratio } from '../../quantity';
import { basicSizes, pitchLength } from '../forms';
import type { Thread } from '../thread';
import { atGrade, diameterRange, printed } from './iso965-tables';
import { mm3 } from './rounded';
import { band, refused, type LimitsResult } from './types';

/**
 * ISO 2903 (from memory of its tables), one row a pitch, mm: pitch, then in µm |es| of e and of c, and the crest
 * tolerances of the screw and of the nut.
 */
const ROWS = `1.5 67 140 150 190;2 71 150 180 236;3 85 170 236 315;4 95 190 300 375;5 106 212 335 450;6 118 236 375 500
7 125 250 425 560;8 132 265 450 630;9 140 280 500 670;10 150 300 530 710;12 160 335 600 800;14 180 355 670 900
16 190 375 710 1000;18 200 400 800 1120;20 212 425 850 1180;22 224 450 900 1250;24 236 475 950 1320
28 250 500 1060 1500;32 265 530 1120 1600;36 280 560 1250 1800;40 300 600 1320 1900;44 315 630 1400 2000`;

type Row = readonly [e: number, c: number, screwCrest: number, nutCrest: number];
let rows: Map<number, Row> | null = null;
const readRows = (): Map<number, Row> =>
  new Map(
    ROWS.split(/;|\n/).map((line) => {
      const [p = 0, e = 0, c = 0, screw = 0, nut = 0] = line.split(' ').map(Number);
      return [p, [e, c, screw, nut]];
    }),
  );

/** Clearance at the root, mm (ISO 2901): 0.15, 0.25, 0.5 or 1. */
export const rootClearance = (p: number): Ratio =>
  p < 2 ? ratio(15, 100) : p <= 5 ? ratio(1, 4) : p <= 12 ? ratio(1, 2) : ratio(1);

const um = (n: number): Ratio => ratio(n, 1000);

/**
 * Limits of trapezoidal threads by ISO 2903 (classes 7e 8e 8c 9c and 7H 8H 9H), mm to 0.001. Pitch diameter tolerances
 * by the formula and rounding of ISO 965-1, checked on printed rows of class 7e. Several starts widen the pitch
 * diameter tolerance, by two steps of R40 for each start up to five: 1.12, 1.25, 1.4, 1.6 (from memory).
 */
export const iso2903 = (thread: Thread, classId: string): LimitsResult => {
  const m = /^([789])([ecH])$/.exec(classId);
  if (!m) return refused('class-unreadable');
  const [grade, position] = [Number(m[1]), m[2]];
  if (classId === '7c' || classId === '9e') return refused('class-not-in-standard');
  const basic = basicSizes(thread);
  const P = pitchLength(thread);
  if (!basic || !P) return refused('no-major-diameter');
  const p = toNumber(P);
  const row = (rows ??= readRows()).get(p);
  if (!row) return refused('pitch-not-in-standard');
  const range = diameterRange(toNumber(basic.major));
  if (!range || range.over < 5.6) return refused('diameter-not-in-standard');
  const single = 90 * p ** 0.4 * Math.sqrt(range.over * range.to) ** 0.1;
  const grade6 = r40At(r40Index(single) + 2 * (Math.min(thread.starts, 5) - 1));
  const [e, c, screwCrest, nutCrest] = row;
  const clearance = mul(2, rootClearance(p));
  const source = thread.starts > 1 ? 'iso2903-multi-start-from-memory' : 'iso2903-formula';
  const common = { ok: true, unit: 'mm', minorFlat: null, source } as const;

  if (position === 'H') {
    const tolerance = atGrade('TD2', grade, p, grade6);
    if (tolerance === null) return refused('no-grade-at-this-pitch');
    return {
      ...common,
      kind: 'internal',
      major: band(mm3(add(basic.major, clearance)), null),
      pitch: band(mm3(basic.pitch), mm3(add(basic.pitch, um(tolerance)))),
      minor: band(mm3(basic.minor), mm3(add(basic.minor, um(nutCrest)))),
    };
  }
  const tolerance = atGrade('Td2', grade, p, grade6);
  if (tolerance === null) return refused('no-grade-at-this-pitch');
  const es = position === 'e' ? e : c;
  const pitchMax = sub(basic.pitch, um(es));
  const root = sub(basic.minor, clearance);
  return {
    ...common,
    kind: 'external',
    major: band(mm3(sub(basic.major, um(screwCrest))), mm3(basic.major)),
    pitch: band(mm3(sub(pitchMax, um(tolerance))), mm3(pitchMax)),
    // Td3 = 1.25 Td2 + |es|, the first part to whole µm.
    minor: band(mm3(sub(root, um(printed(1.25 * tolerance) + es))), mm3(root)),
  };
};
