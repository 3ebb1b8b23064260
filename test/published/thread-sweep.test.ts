import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { leadFrom, toNumber } from '../../src/core/quantity';
import { catalogue } from '../../src/core/thread/catalogue';
import { limits } from '../../src/core/thread/limits';
import type { Thread } from '../../src/core/thread/thread';

/**
 * A sweep over reference tables kept beside the project, where they are kept: each row against what the project gives.
 * Every difference has a name and a reason here, and must go on differing: the lists only shrink.
 */
const folder = fileURLToPath(new URL('../../../shared/reference/', import.meta.url));
const here = existsSync(`${folder}limits.csv`);

const csv = (name: string): Record<string, string>[] => {
  const [head = [], ...rows] = readFileSync(folder + name, 'utf8')
    .trim()
    .split('\n')
    .map((line) => [...line.matchAll(/("([^"]*)"|[^,]*)(,|$)/g)].map((m) => m[2] ?? m[1] ?? ''));
  return rows.map((cells) => Object.fromEntries(head.map((name, i) => [name, cells[i] ?? ''])));
};

/** A source that is left out as a whole: start of its name, family, and why. */
const LEFT_OUT: readonly (readonly [source: string, family: string, why: string])[] = [
  [
    'threadlib',
    'ISO metric',
    'deviations rounded to 10 µm and diameters up to 0.9 mm off at 6 mm pitch; five other sources agree with us',
  ],
];

/** "designation class column" of rows that differ, and why. */
const DIFFERS: Readonly<Record<string, string>> = {
  'M2x0.4 6g minor_min': 'one µm: printed 1.407, the rule that meets every other row gives 1.408',
  'M14x1 4g6g pitch_dia_min': 'slip in the source: Td2 grade 4 is 75 µm there as in the handbook, not 74',
  'M20x2 4g6g pitch_dia_min': 'slip in the source: Td2 grade 4 is 100 µm in the handbook, not 101',
  '3 BA close major_min': 'a half µm (0.15 × 0.73 = 0.1095) rounded down by the source',
  '10 BA close major_min': 'a half µm (0.15 × 0.35 = 0.0525) rounded down by the source',
  '1/2 BSW close minor_max': 'source rounds D − 2h as a whole; BS 84 prints h = 0.0534 first',
  '1/2 BSW close minor_min': 'the same',
  '1/2 BSW medium minor_min': 'the same',
  '1/2 BSW medium minor_max': 'the same',
  '3/4-10 2G *': 'not a pair of ASME B1.5: refused',
  '1-10 2G *': 'not a pair of ASME B1.5: refused',
};

/** Sizes that a source lists and the catalogue doesn't, and why. */
const ABSENT: Readonly<Record<string, string>> = {
  'UNC #9': 'no such number in ASME B1.1',
  'UNF #9': 'no such number in ASME B1.1',
  'BSPP (ISO 228) G1-3/8': 'not in ISO 228-1',
  'ISO metric fine M35x2.0': 'ISO 261 gives M35 one fine pitch, 1.5',
  'ISO metric fine M75x6.0': 'ISO 261 gives M75 pitches of 4 and finer',
};
const SWEPT = /^(UN|Unified|BS|BA|NPT|Acme|ISO 262|ISO metric (coarse|fine))/;

const norm = (designation: string): string =>
  designation
    .replace('×', 'x')
    .replace('No. ', '')
    .replace(/ (UNC|UNF|UNEF|UN)$/, '')
    .replace(/(\d) (\d)/, '$1-$2');

/** Name of a row's thread in the catalogue. */
const nameOf = (family: string, designation: string): string => {
  if (family.startsWith('BSW'))
    return { '1/4': '1/4-20 BSW', '1/2': '1/2-12 BSW', '3/4': '3/4-10 BSW' }[designation.slice(0, 3)] ?? '';
  if (family.startsWith('Acme')) {
    const d =
      { '0.2500-16': '1/4-16', '0.3125-14': '5/16-14', '0.4375-12': '7/16-12' }[designation] ?? designation;
    return `${norm(d)} Acme`;
  }
  return family.startsWith('BSPP') ? norm(designation.replace('G', 'G ')) : norm(designation);
};
const classOf = (family: string, cls: string, kind: string): string => {
  const external = kind === 'external';
  if (family.startsWith('Acme')) return `${external ? 'screw' : 'nut'}-${cls}`;
  if (family.startsWith('BA')) return cls === 'nut' ? cls : `bolt-${cls}`;
  return family.startsWith('BSW') ? `${external ? 'bolt' : 'nut'}-${cls}` : cls;
};

const byName = (): ReadonlyMap<string, Thread> => {
  const map = new Map<string, Thread>();
  for (const t of catalogue()) if (!map.has(norm(t.designation))) map.set(norm(t.designation), t);
  return map;
};

const COLUMNS = [
  'major_max',
  'major_min',
  'pitch_dia_max',
  'pitch_dia_min',
  'minor_max',
  'minor_min',
] as const;

/** Columns in which a row differs from the project by more than half its last digit; "*" where it is refused. */
const differences = (t: Thread, row: Record<string, string>): string[] => {
  const l = limits(t, classOf(row['family'] ?? '', row['class'] ?? '', row['external_internal'] ?? ''));
  if (!l.ok) return ['*'];
  const half = row['unit'] === 'mm' ? 0.00051 : 0.000051;
  const ours = [l.major.max, l.major.min, l.pitch.max, l.pitch.min, l.minor.max, l.minor.min];
  return COLUMNS.filter((column, i) => {
    const value = ours[i];
    const theirs = row[column] ?? '';
    if (theirs === '' || !value) return false;
    const off = (x: number): boolean => Math.abs(Number(theirs) - x) > half;
    // Sources print either of the two external minor diameters.
    return off(toNumber(value)) && (column !== 'minor_max' || !l.minorFlat || off(toNumber(l.minorFlat)));
  });
};

describe.skipIf(!here)('sweep over the reference tables (skipped where they are not kept)', () => {
  it('limits of size: differs where it is known to differ, and nowhere else', () => {
    const names = byName();
    const found = new Set<string>();
    const leftOut = new Set<string>();
    let compared = 0;
    for (const row of csv('limits.csv')) {
      const t = names.get(nameOf(row['family'] ?? '', row['designation'] ?? ''));
      if (!t) continue;
      const different = differences(t, row);
      const out = LEFT_OUT.find(([s, f]) => row['source']?.startsWith(s) && row['family'] === f);
      if (out) {
        if (different.length) leftOut.add(out[0]);
        continue;
      }
      compared++;
      for (const column of different) found.add(`${row['designation']} ${row['class']} ${column}`);
    }
    expect(compared).toBeGreaterThan(380);
    expect([...found].sort()).toEqual(Object.keys(DIFFERS).sort());
    expect([...leftOut]).toEqual(LEFT_OUT.map(([s]) => s));
  });

  it('designations: every size of the main families stands in the catalogue with its pitch', () => {
    const ours = catalogue().flatMap((t) => {
      if (!t.major) return [];
      const inch = t.major.unit === 'in' ? 25.4 : 1;
      return [[toNumber(t.major.value) * inch, toNumber(leadFrom(t.pitch).mm)] as const];
    });
    const missing = new Set<string>();
    let compared = 0;
    for (const row of csv('designations.csv')) {
      const d = Number(row['major_diameter']) * (row['unit'] === 'in' ? 25.4 : 1);
      const p = row['pitch_mm'] ? Number(row['pitch_mm']) : 25.4 / Number(row['tpi']);
      if (!(d > 0) || !(p > 0) || !Number.isFinite(p) || !SWEPT.test(row['family'] ?? '')) continue;
      compared++;
      // Sources round inch sizes to 0.001 mm, and one gives BA pitches unrounded.
      if (!ours.some(([a, b]) => Math.abs(a - d) < 0.02 && Math.abs(b - p) < 0.006)) {
        missing.add(`${row['family']} ${row['designation']}`);
      }
    }
    expect(compared).toBeGreaterThan(900);
    expect([...missing].sort()).toEqual(Object.keys(ABSENT).sort());
  });
});
