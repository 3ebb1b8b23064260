import { describe, expect, it } from 'vitest';
import { agrees, sourceText } from './figures/figure';
import { TABLES } from './tables';

/** What the project promises: figures in all, and for each family with publications at hand. */
const IN_ALL = 600;
const EACH = 20;

/** Families that are looked up most, by what they are counted under. */
const MAIN = {
  'iso-coarse': 'ISO metric coarse',
  'iso-fine': 'ISO metric fine and constant pitch',
  unc: 'UNC',
  unf: 'UNF',
  unef: 'UNEF',
  un: 'UN, constant pitch',
  bsw: 'BSW',
  bsf: 'BSF',
  ba: 'BA',
  g: 'G, ISO 228',
  r: 'R, ISO 7-1',
  npt: 'NPT',
  tr: 'trapezoidal Tr',
  acme: 'Acme general purpose',
  drills: 'drills',
} as const;

/**
 * Families whose standards nobody has opened for this project and for which no other publication was at hand: how
 * many figures there are. Their limits come from formulas written down from memory, and say so where they are shown.
 * A family that gets a publication leaves this list: the number must be right.
 */
const NO_PUBLICATION: Readonly<Record<string, number>> = {
  unj: 0,
  mj: 0,
  'stub-acme': 0,
  buttress: 0,
};

/** Distinct figures that meet: one printed by several sources, or in copies of one, is one. */
const counted = (): ReadonlyMap<string, ReadonlySet<string>> => {
  const byFamily = new Map<string, Set<string>>();
  for (const f of TABLES.flatMap((t) => t.figures).filter(agrees)) {
    const names = byFamily.get(f.family) ?? new Set();
    byFamily.set(f.family, names.add(f.name));
  }
  return byFamily;
};

describe('published figures checked inside the project', () => {
  const byFamily = counted();
  const of = (family: string): number => byFamily.get(family)?.size ?? 0;
  const total = [...byFamily.values()].reduce((sum, names) => sum + names.size, 0);

  it(`are ${IN_ALL} or more, shown family by family`, () => {
    const families = new Set([...Object.keys(MAIN), ...Object.keys(NO_PUBLICATION), ...byFamily.keys()]);
    const sources = new Set(TABLES.map((t) => sourceText(t.source)));
    const lines = [...families].map((f) => `${String(of(f)).padStart(5)}  ${f}`);
    console.log([...lines, `${String(total).padStart(5)}  in all, from ${sources.size} tables`].join('\n'));
    expect(total).toBeGreaterThanOrEqual(IN_ALL);
  });

  it.each(Object.entries(MAIN))(`%s (%s) has ${EACH} or more`, (family) => {
    expect(of(family)).toBeGreaterThanOrEqual(EACH);
  });

  it.each(Object.entries(NO_PUBLICATION))('%s has no publication at hand: %d figures', (family, has) => {
    expect(of(family)).toBe(has);
  });

  it('every table says who prints it, in which edition and where', () => {
    const blank = TABLES.filter(({ source: s }) => [s.publisher, s.edition, s.where].some((x) => !x.trim()));
    expect(blank).toEqual([]);
    expect(TABLES.filter((t) => t.figures.length === 0)).toEqual([]);
  });
});
