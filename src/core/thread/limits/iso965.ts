import { add, mul, ratio, roundTo, sub, toNumber, type Ratio } from '../../quantity';
import { basicSizes, formOf, H60, pitchLength } from '../forms';
import { LARGEST_FOR_PITCH } from '../families/iso';
import type { Thread } from '../thread';
import {
  atGrade,
  diameterRange,
  hasGrade,
  pitchKey,
  pitchRow,
  type DiameterRange,
  type PitchRow,
  type Tolerance,
} from './iso965-tables';
import { band, refused, type LimitsResult, type LimitSource, type Refused } from './types';

/** A tolerance class as ISO 965-1 writes it, taken apart: grades of pitch and crest diameter, and position. */
interface IsoClass {
  readonly kind: 'external' | 'internal';
  readonly pitchGrade: number;
  readonly crestGrade: number;
  readonly pitchPosition: string;
  readonly crestPosition: string;
}

/** Reads "6g", "4g6g", "6H", "4H5H"; null for anything else. Positions e f g h and G H only. */
const readIsoClass = (id: string): IsoClass | null => {
  const m = /^([3-9])([efghGH])(?:([4-8])([efghGH]))?$/.exec(id);
  if (!m) return null;
  const [, g1 = '', p1 = '', g2 = g1, p2 = p1] = m;
  const internal = p1 === 'G' || p1 === 'H';
  if (internal !== (p2 === 'G' || p2 === 'H')) return null;
  return {
    kind: internal ? 'internal' : 'external',
    pitchGrade: Number(g1),
    crestGrade: Number(g2),
    pitchPosition: p1,
    crestPosition: p2,
  };
};

const um = (n: number): Ratio => ratio(n, 1000);

const deviation = (row: PitchRow, position: string): number | null => {
  if (position === 'h' || position === 'H') return 0;
  if (position === 'g' || position === 'G') return row.g;
  return position === 'f' ? row.f : row.e;
};

/** Td2 grade 6 by the standard's formula, µm: 90 P^0.4 d^0.1, d the geometric mean of the range (ISO 965-1 annex). */
const td2Formula = (p: number, range: DiameterRange): number =>
  90 * p ** 0.4 * Math.sqrt(range.over * range.to) ** 0.1;

interface PitchTolerance {
  readonly grade6: number;
  readonly source: LimitSource;
}

/** Td2 grade 6 for a diameter and pitch (mm), µm, from the table, else by formula inside ISO 261's bounds. */
const td2Grade6 = (d: number, p: number, key: string): PitchTolerance | Refused => {
  const range = diameterRange(d);
  if (!range) return refused('diameter-not-in-standard');
  const cell = range.td2.get(key);
  if (cell !== undefined) return { grade6: cell, source: 'iso965-table' };
  const largest = LARGEST_FOR_PITCH.find(([pitch]) => p === Number(pitch))?.[1];
  if (largest === undefined) return refused('pitch-not-in-standard');
  if (d > largest) return refused('pitch-too-fine-for-diameter');
  // A pitch coarser than any tabulated for the range has no place in the standard either.
  const coarsest = Math.max(...range.td2.values());
  const value = td2Formula(p, range);
  if (value > coarsest * 1.03) return refused('pitch-not-in-standard');
  return { grade6: value, source: 'iso965-formula' };
};

const grade = (what: Tolerance, g: number, p: number, grade6: number): number | Refused => {
  if (!hasGrade(what, g)) return refused('class-not-in-standard');
  return atGrade(what, g, p, grade6) ?? refused('no-grade-at-this-pitch');
};

/**
 * Limits of size by ISO 965-1 (tables 1 to 5), diameters as ISO 965-2 prints them, mm to 0.001. The minor diameter of
 * an external thread is d3 of a rounded root: for M, d − es − 1.226869 P at most
 * and Td2 + 0.038675 P less at least.
 * Refused: a class that cannot be read or is not defined at the pitch, pitches and diameters outside the standard.
 */
export const iso965 = (thread: Thread, classId: string): LimitsResult => {
  const cls = readIsoClass(classId);
  if (!cls) return refused('class-unreadable');
  const basic = basicSizes(thread);
  const P = pitchLength(thread);
  if (!basic || !P) return refused('no-major-diameter');
  const p = toNumber(P);
  const row = pitchRow(pitchKey(P));
  if (!row) return refused('pitch-not-in-standard');
  const t6 = td2Grade6(toNumber(basic.major), p, pitchKey(P));
  if ('ok' in t6) return t6;

  const external = cls.kind === 'external';
  const pitchTol = grade(external ? 'Td2' : 'TD2', cls.pitchGrade, p, t6.grade6);
  if (typeof pitchTol !== 'number') return pitchTol;
  const crestTol = grade(external ? 'Td' : 'TD1', cls.crestGrade, p, external ? row.td : row.td1);
  if (typeof crestTol !== 'number') return crestTol;
  const pitchDev = deviation(row, cls.pitchPosition);
  const crestDev = deviation(row, cls.crestPosition);
  if (pitchDev === null || crestDev === null) return refused('no-deviation-at-this-pitch');

  const round = (x: Ratio): Ratio => roundTo(x, 3);
  const common = { ok: true, kind: cls.kind, unit: 'mm', source: t6.source } as const;
  if (external) {
    const majorMax = round(sub(basic.major, um(crestDev)));
    const pitchMax = round(sub(basic.pitch, um(pitchDev)));
    const pitchMin = sub(pitchMax, um(pitchTol));
    // A root of radius r in a 60° groove lies r from the sharp apex, and the apex H/2 inside the pitch line.
    const root = formOf(thread).rootRadius;
    const rootMax = root && round(sub(sub(basic.pitch, um(pitchDev)), mul(sub(H60, mul(2, root.max)), P)));
    // Printed tables take the whole tolerance, rounded, from the rounded largest root: Td2 and what the radii differ.
    const rootTol = root && round(add(um(pitchTol), mul(2, sub(root.max, root.min), P)));
    return {
      ...common,
      major: band(sub(majorMax, um(crestTol)), majorMax),
      pitch: band(pitchMin, pitchMax),
      minor: band(rootMax && rootTol && sub(rootMax, rootTol), rootMax),
      minorFlat: thread.form === 'iso60' ? round(sub(basic.minor, um(pitchDev))) : null,
    };
  }
  const pitchMin = round(add(basic.pitch, um(pitchDev)));
  const minorMin = round(add(basic.minor, um(crestDev)));
  return {
    ...common,
    major: band(round(add(basic.major, um(pitchDev))), null),
    pitch: band(pitchMin, add(pitchMin, um(pitchTol))),
    minor: band(minorMin, add(minorMin, um(crestTol))),
    minorFlat: null,
  };
};
