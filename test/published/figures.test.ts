import { describe, expect, it } from 'vitest';
import { ratio, toNumber } from '../../src/core/quantity';
import { DIFFERS } from './figures/differs';
import { agrees, sourceText, type Figure } from './figures/figure';
import { TABLES } from './tables';

/** How a figure that doesn't meet is shown. */
const shown = (f: Figure): string => {
  const ours = typeof f.ours === 'object' ? toNumber(f.ours) : f.ours;
  return `${f.name}: printed ${f.printed}, ours ${ours}`;
};

describe('printed figures, to their last digit', () => {
  it.each(TABLES.map((t) => [sourceText(t.source), t] as const))('%s', (_, { source, figures }) => {
    const off = figures.filter((f) => !agrees(f) && !(`${source.publisher}: ${f.name}` in DIFFERS));
    expect(off.map(shown)).toEqual([]);
  });

  it('differences that are known go on differing', () => {
    const found = TABLES.flatMap(({ source, figures }) =>
      figures.filter((f) => !agrees(f)).map((f) => `${source.publisher}: ${f.name}`),
    );
    expect(Object.keys(DIFFERS).filter((name) => !found.includes(name))).toEqual([]);
    expect(found).toHaveLength(Object.keys(DIFFERS).length);
  });

  it('half a last digit is the most that meets', () => {
    const figure = (ours: number): Figure => ({ family: '', name: '', printed: '8.50', ours });
    expect([8.4951, 8.5049].every((x) => agrees(figure(x)))).toBe(true);
    expect([8.4949, 8.5051].some((x) => agrees(figure(x)))).toBe(false);
    expect(agrees({ ...figure(0), ours: ratio(1701, 200) })).toBe(true);
    expect(agrees({ ...figure(0), ours: ratio(85051, 10_000) })).toBe(false);
    expect(agrees({ ...figure(0), ours: 'none' })).toBe(false);
  });
});
