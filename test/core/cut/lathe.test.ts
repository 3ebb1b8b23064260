import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesFrom, nutRule } from '../../../src/core/cut';
import { lead, ratio } from '../../../src/core/quantity';

/**
 * A lathe at work, in whole units so small that every length of the sweep is a whole number: the screw has
 * carried `x` units past, the carriage stands at `z`. The nut can close where carriage and screw differ by whole nut
 * pitches; the dial's wheel counts those. The tool comes into the same groove when carriage and spindle differ by whole
 * leads from how they stood at the first closing. Nothing of the rule (lowest terms, gcd, b | N) is used.
 */
const UNIT = 64n * 81n * 25n * 7n * 23n;
const MM = (n: number, d: number): bigint => {
  const units = BigInt(n) * UNIT;
  if (units % BigInt(d) !== 0n) throw new Error(`${n}/${d}`);
  return units / BigInt(d);
};
const TPI = (n: number, d = 1): bigint => MM(127 * d, 5 * n);

class Lathe {
  x = 0n;
  z = 0n;
  private teeth = 0n;
  private readonly phase: bigint;
  constructor(
    readonly pitch: bigint,
    readonly lead: bigint,
    readonly wheel: bigint,
    readonly lines: bigint,
    /** Line at the mark at the first closing. */
    readonly first: bigint,
  ) {
    this.phase = this.z - this.x;
  }
  /** Back by hand, the nut open: the wheel rolls along the screw. */
  wind(teeth: bigint): void {
    this.z -= teeth * this.pitch;
    this.teeth += teeth;
  }
  /** The spindle turns on, the nut open, until the nut could close again; the wheel is turned by the screw. */
  turn(): void {
    this.x += this.pitch;
    this.teeth += 1n;
  }
  /** With the nut closed nothing of the dial moves: the carriage goes with the screw. */
  cut(way: bigint): void {
    this.x += way;
    this.z += way;
  }
  /** What stands at the mark: a line, or null between lines. */
  get line(): bigint | null {
    const at = this.teeth * this.lines;
    if (at % this.wheel !== 0n) return null;
    return ((at / this.wheel + this.first - 1n) % this.lines) + 1n;
  }
  get inGroove(): boolean {
    return (this.z - this.x - this.phase) % this.lead === 0n;
  }
}

/**
 * Lines on which every closing fell in the groove, of those that ever came to the mark. Tooth by tooth: the spindle
 * carries the screw on, or a hand winds the carriage back, or forwards again, as the plan says.
 */
const closings = (lathe: Lathe, turns: number, plan: readonly number[]): Map<bigint, boolean> => {
  const seen = new Map<bigint, boolean>();
  const way = turns * Number(lathe.wheel);
  for (let k = 0; k < way + 2 * Number(lathe.wheel); k += 1) {
    if (k >= way) lathe.wind(-1n);
    else if (plan[k % plan.length]) lathe.wind(1n);
    else lathe.turn();
    const { line } = lathe;
    if (line === null) continue;
    seen.set(line, (seen.get(line) ?? true) && lathe.inGroove);
    // A pass on the line, in the groove or not: with the nut closed the dial stands still, and nothing is lost.
    lathe.cut(lathe.lead * 3n + 17n);
  }
  return seen;
};

// The half-nut pitch: leads of mm and inch screws with one, two or three starts.
const screws = fc
  .tuple(
    fc.constantFrom(MM(3, 1), MM(2, 1), MM(3, 2), MM(4, 1), MM(6, 1), TPI(8), TPI(6), TPI(4), TPI(10)),
    fc.constantFrom(1n, 1n, 2n, 3n),
  )
  .map(([whole, starts]) => whole / starts);
const pitches = fc.constantFrom(
  ...[0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5.5].map((p) => MM(p * 4, 4)),
  ...[4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 27, 28, 32, 36].map((n) => TPI(n)),
  TPI(23, 2),
  TPI(9, 2),
);
const dials = fc.tuple(fc.integer({ min: 8, max: 36 }), fc.integer({ min: 1, max: 16 }));

describe('lines of the dial against a lathe at work', () => {
  it('the same lines as at the lathe, from whichever line was used first', () => {
    let opened = 0;
    fc.assert(
      fc.property(
        screws,
        pitches,
        fc.constantFrom(1, 1, 1, 2, 3, 4),
        dials,
        fc.integer({ min: 1, max: 16 }),
        fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 3, maxLength: 7 }),
        (pitch, thread, starts, [wheel, lines], at, plan) => {
          const whole = thread * BigInt(starts);
          const first = ((at - 1) % lines) + 1;
          const rule = nutRule({
            lead: lead(ratio(whole, UNIT)),
            nutPitch: ratio(pitch, UNIT),
            halfNut: true,
            dial: { teeth: wheel, lines },
            exactRatio: true,
          });
          const lathe = new Lathe(pitch, whole, BigInt(wheel), BigInt(lines), BigInt(first));
          const seen = closings(lathe, 8, plan);
          const good = [...seen].filter(([, always]) => always).map(([line]) => Number(line));
          good.sort((p, q) => p - q);
          if (rule.kind === 'anywhere') {
            expect(good.length).toBe(seen.size);
            return;
          }
          if (rule.kind === 'lines') opened += 1;
          expect(rule.kind === 'lines' ? linesFrom(rule, first) : []).toEqual(good);
        },
      ),
      { numRuns: 2500, seed: 4711 },
    );
    // The sweep isn't all "keep closed".
    expect(opened).toBeGreaterThan(200);
  });
});
