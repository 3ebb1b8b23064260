import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nutRule, type NutRule } from '../../../src/core/cut';
import { lead, ratio, type Ratio } from '../../../src/core/quantity';

const tpi = (n: number, d = 1): Ratio => ratio(127 * d, 5 * n);
const rule = (screw: Ratio, thread: Ratio, teeth: number | null, lines = teeth ?? 1): NutRule =>
  nutRule({
    lead: lead(thread),
    nutPitch: screw,
    halfNut: true,
    dial: teeth === null ? null : { teeth, lines },
    exactRatio: true,
  });

/** Own calculations for metric screws: regression tests. */
describe('where the half-nut may be closed', () => {
  it.each([
    [ratio(7, 4), 12n, 7n],
    [ratio(2), 3n, 2n],
    [ratio(7, 10), 30n, 7n],
    [ratio(9, 2), 2n, 3n],
    [ratio(5, 4), 12n, 5n],
  ])('thread %o on a 3 mm screw', (thread, a, b) => {
    expect(rule(ratio(3), thread, Number(b))).toMatchObject({ kind: 'lines', a, b });
  });
  it('anywhere where the lead divides the screw pitch', () => {
    for (const thread of [ratio(1, 2), ratio(3, 4), ratio(1), ratio(3, 2), ratio(3)])
      expect(rule(ratio(3), thread, null)).toMatchObject({ kind: 'anywhere', b: 1n });
  });
  it('nowhere for 1.5 mm on 8 tpi: 127 spindle revs between', () => {
    expect(rule(tpi(8), ratio(3, 2), 16)).toMatchObject({
      kind: 'keep-closed',
      reason: 'gear-misses',
      a: 127n,
      b: 60n,
    });
  });
  it('nowhere for 20 tpi on 3 mm', () => {
    expect(rule(ratio(3), tpi(20), 14)).toMatchObject({ kind: 'keep-closed', a: 300n, b: 127n });
  });
  it('nowhere for a worm, an inexact ratio, or a machine without half-nut', () => {
    const dial = { teeth: 16, lines: 8 };
    const base = { lead: lead(ratio(1)), nutPitch: ratio(3), halfNut: true, dial, exactRatio: true };
    expect(nutRule({ ...base, lead: lead(ratio(1), true) })).toMatchObject({ reason: 'irrational' });
    expect(nutRule({ ...base, exactRatio: false })).toMatchObject({ reason: 'inexact-ratio' });
    expect(nutRule({ ...base, halfNut: false })).toMatchObject({ reason: 'no-half-nut' });
    expect(nutRule({ ...base, lead: lead(ratio(2)), dial: null })).toMatchObject({ reason: 'no-dial' });
  });
});

/**
 * A carriage on a screw that turns with the spindle, in whole micro-units: the nut can be closed at its pitches, the
 * tool must come down in the groove. Nothing of the rule's algebra is used.
 */
const goodLinesBySimulation = (screw: number, thread: number, teeth: number, lines: number): number[] => {
  const good: number[] = [];
  for (let line = 0; line < lines; line += 1) {
    // The dial's line stands at this many teeth; the nut engages only where that is a whole tooth.
    if ((line * teeth) % lines !== 0) continue;
    const tooth = (line * teeth) / lines;
    // The line comes back each turn of the dial: it is good only if the groove is met every time.
    const meets = Array.from({ length: 200 }, (_, turn) => tooth + turn * teeth).every(
      (pitches) => (pitches * screw) % thread === 0,
    );
    if (meets) good.push(line === 0 ? lines : line);
  }
  return good.sort((a, b) => a - b);
};

describe('against a simulated carriage', () => {
  it('the same lines, over random screws, threads and dials', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: 4, max: 60 }),
        fc.integer({ min: 1, max: 24 }),
        (screw, thread, teeth, lines) => {
          const r = rule(ratio(screw, 10), ratio(thread, 10), teeth, lines);
          const simulated = goodLinesBySimulation(screw, thread, teeth, lines);
          if (r.kind === 'anywhere') expect(screw % thread).toBe(0);
          else if (r.kind === 'lines') expect(r.lines).toEqual(simulated);
          else expect(simulated).toEqual([]);
        },
      ),
      { numRuns: 3000 },
    );
  });
});
