import { describe, expect, it } from 'vitest';
import { nutRule, type NutRule } from '../../../src/core/cut';
import { leadFrom, ratio, stated, type Unit } from '../../../src/core/quantity';
import { classesOf } from '../../../src/core/thread/classes';
import { FAMILIES, threadsOf } from '../../../src/core/thread';
import { classText, familyName, nutText, standardName } from '../../../src/text/threads';

/** The rule for a thread on an 8 tpi screw with a dial of 16 teeth and 8 lines. */
const on8tpi = (
  n: number,
  d: number,
  unit: Unit,
  more: Partial<Parameters<typeof nutRule>[0]> = {},
): NutRule =>
  nutRule({
    lead: leadFrom(stated(ratio(n, d), unit)),
    nutPitch: ratio(127, 40),
    halfNut: true,
    dial: { teeth: 16, lines: 8 },
    exactRatio: true,
    ...more,
  });

describe('names', () => {
  it('every family, standard and class of the catalogue has one', () => {
    for (const f of FAMILIES) {
      expect(Object.hasOwn(familyName, f.id), f.id).toBe(true);
      expect(Object.hasOwn(standardName, f.standard), f.standard).toBe(true);
      for (const t of threadsOf(f.id).slice(0, 1)) {
        const { external, internal } = classesOf(t);
        for (const c of [...external, ...internal]) expect(classText(c), c).not.toMatch(/-|^[a-z]/);
      }
    }
  });
  it('no name stands for two families, and none for a family that is not there', () => {
    expect(new Set(Object.values(familyName)).size).toBe(Object.keys(familyName).length);
    expect(Object.keys(familyName).sort()).toEqual(FAMILIES.map((f) => f.id).sort());
  });
});

/** Dial plates of 8 tpi lathes with 16-tooth gear: multiples of 8 anywhere, even tpi any line, odd tpi half the
 *  lines, half tpi a quarter; here for 8 lines (two teeth apart). */
describe('the half-nut rule in words', () => {
  it.each([
    [8, 1, 'ANY LINE'],
    [24, 1, 'ANY LINE'],
    [12, 1, 'ANY LINE'],
    [10, 1, 'LINES 2 4 6 8'],
    [11, 1, 'LINES 4 8'],
    [23, 2, 'LINE 8'],
  ] as const)('%i/%i tpi: %s', (n, d, head) => {
    expect(nutText(on8tpi(n, d, 'tpi')).head).toBe(head);
  });

  it('only on a line, where between would be wrong', () => {
    expect(nutText(on8tpi(12, 1, 'tpi')).line).toMatch(/Only on a line/);
    expect(nutText(on8tpi(24, 1, 'tpi')).line).toMatch(/or between/);
  });

  it('a single line has no number of its own: it is the line first used', () => {
    expect(nutText(on8tpi(23, 2, 'tpi')).line).toMatch(/same line/);
  });

  it('keeps the nut closed wherever closing is not known to be right, and says why', () => {
    const closed = 'KEEP THE NUT CLOSED';
    expect(nutText(null)).toEqual({ head: closed, line: 'The half-nut rule is not known.' });
    const rules = [
      on8tpi(3, 2, 'mm'),
      on8tpi(2, 1, 'module'),
      on8tpi(10, 1, 'tpi', { exactRatio: false }),
      on8tpi(10, 1, 'tpi', { dial: null }),
      on8tpi(10, 1, 'tpi', { halfNut: false }),
    ];
    const lines = rules.map((r) => nutText(r));
    for (const l of lines) expect(l.head).toBe(closed);
    expect(new Set(lines.map((l) => l.line)).size).toBe(rules.length);
  });

  it('speaks of no line where there is no dial', () => {
    expect(nutText(on8tpi(24, 1, 'tpi', { dial: null }), false).head).toBe('CLOSE ANYWHERE');
  });
});
