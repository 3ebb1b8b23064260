import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alongTheBed,
  byCounts,
  byNut,
  byTopSlide,
  slotAngle,
  slotError,
  turnAfter,
  turnBefore,
  type Turn,
} from '../../../src/core/cut/starts';
import { nutRule } from '../../../src/core/cut';
import { lead, mul, ratio, sub, toNumber } from '../../../src/core/quantity';

describe('by spindle counts', () => {
  // Own calculation (worked example H21): 4096 counts, 3 starts, lead 6 mm; 1365 counts instead of 1365 1/3 is 0.488 µm.
  it('a third of a count at lead 6 is 0.488 µm', () => {
    const [first, second, third] = byCounts({ lead: lead(ratio(6)), starts: 3 }, ratio(4096));
    expect(first).toEqual({ start: 1, exact: ratio(0), nearest: 0n, off: 0 });
    expect(second).toMatchObject({ exact: ratio(4096, 3), nearest: 1365n });
    expect(second?.off).toBeCloseTo(-0.48828125, 8);
    expect(third).toMatchObject({ nearest: 2731n });
    expect(third?.off).toBeCloseTo(0.48828125, 8);
  });
  it('never more than half a count off, which a rounded step added up soon is', () => {
    let drifted = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.integer({ min: 50, max: 20_000 }),
        fc.constantFrom(1, 2, 3, 7),
        (starts, n, d) => {
          const counts = ratio(n, d);
          const all = byCounts({ lead: lead(ratio(12)), starts }, counts);
          const step = Math.round(n / d / starts);
          all.forEach(({ exact, nearest, off }, i) => {
            const error = toNumber(sub(nearest, exact));
            expect(Math.abs(error)).toBeLessThanOrEqual(0.5);
            // Back from the exact place to whole revs: z of them make C.
            if (i > 0) expect(mul(exact, starts)).toEqual(mul(counts, i));
            expect(off).toBeCloseTo(((error * 12) / (n / d)) * 1000, 6);
            if (Math.abs(step * i - toNumber(exact)) > 1) drifted += 1;
          });
        },
      ),
      { numRuns: 300 },
    );
    expect(drifted).toBeGreaterThan(0);
  });
  it('π in the lead changes nothing but the length of the error', () => {
    const [, second] = byCounts({ lead: lead(ratio(6), true), starts: 3 }, ratio(4096));
    expect(second).toMatchObject({ nearest: 1365n });
    expect(second?.off).toBeCloseTo(-0.48828125 * Math.PI, 6);
  });
});

describe('by the top slide along the bed', () => {
  it('a pitch each, in turns and divisions, each from the first start', () => {
    // Lead 6, 3 starts: 2 mm. Dial of 0.02 mm and 100 divisions: 100, 200 divisions, one turn and two.
    const [first, second, third] = byTopSlide(
      { lead: lead(ratio(6)), starts: 3 },
      { division: ratio(1, 50), perTurn: 100 },
    );
    expect(first?.dial).toMatchObject({ divisions: 0n, off: 0 });
    expect(second).toMatchObject({ mm: 2, dial: { divisions: 100n, turns: 1n, past: 0n, off: 0 } });
    expect(third).toMatchObject({ mm: 4, dial: { divisions: 200n, turns: 2n, past: 0n } });
  });
  it('an inch pitch on a mm dial: 1/8 in is 158.75 divisions of 0.02 mm; a quarter over is 5 µm', () => {
    const all = byTopSlide(
      { lead: lead(ratio(127, 10)), starts: 4 },
      { division: ratio(1, 50), perTurn: null },
    );
    expect(all.map((s) => s.dial?.divisions)).toEqual([0n, 159n, 318n, 476n]);
    expect(all[1]?.dial).toMatchObject({ turns: null, past: 159n });
    expect(all[1]?.dial?.off).toBeCloseTo(5, 9);
    // Two of them: 317.5, and the half goes up: 10 µm.
    expect(all[2]?.dial?.off).toBeCloseTo(10, 9);
    expect(all[3]?.dial?.off).toBeCloseTo(-5, 9);
  });
  it('never more than half a division off, and the length itself where no dial is known', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.integer({ min: 1, max: 400 }),
        fc.boolean(),
        (z, l, pi) => {
          const all = byTopSlide(
            { lead: lead(ratio(l, 7), pi), starts: z },
            { division: ratio(1, 40), perTurn: 80 },
          );
          for (const { dial, mm, start } of all) {
            expect(Math.abs(dial?.off ?? 99)).toBeLessThanOrEqual(12.5 + 1e-9);
            expect((dial?.turns ?? 0n) * 80n + (dial?.past ?? 0n)).toBe(dial?.divisions);
            expect(mm).toBeCloseTo((((start - 1) * l) / 7 / z) * (pi ? Math.PI : 1), 8);
          }
        },
      ),
      { numRuns: 200 },
    );
    expect(byTopSlide({ lead: lead(ratio(6)), starts: 2 }, null)[1]).toEqual({ start: 2, mm: 3, dial: null });
  });
  it('90° from the cross-slide, 0° from the axis', () => {
    expect([alongTheBed('from-cross-slide'), alongTheBed('from-axis')]).toEqual([90, 0]);
  });
});

describe('by closing the half-nut elsewhere', () => {
  const pitches = (l: ReturnType<typeof ratio>, z: number, screw: ReturnType<typeof ratio>) =>
    byNut({ lead: lead(l), starts: z }, screw, null)?.map((s) => s.pitches);

  // Own calculations (worked examples H27 and H28).
  it('lead 6, three starts, 3 mm screw: never; 1/4 in of two starts on 8 tpi: by an odd pitch', () => {
    expect(pitches(ratio(6), 3, ratio(3))).toEqual([0n, null, null]);
    expect(pitches(ratio(127, 20), 2, ratio(127, 40))).toEqual([0n, 1n]);
  });
  it('the fewest pitches, or none at all: against trying them one by one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 2, max: 12 }),
        (screw, pitch, z) => {
          const whole = pitch * z;
          // In whole units: start i lies i·pitch past a whole number of leads.
          const tried = Array.from({ length: z }, (_, i) => {
            for (let k = 0; k <= whole; k += 1) if ((k * screw) % whole === i * pitch) return BigInt(k);
            return null;
          });
          expect(pitches(ratio(whole, 5), z, ratio(screw, 5))).toEqual(tried);
        },
      ),
      { numRuns: 1500 },
    );
  });
  it('lines: the dial there shows that start in every turn; those of start 1 are the rule’s own', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 24 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 2, max: 5 }),
        fc.integer({ min: 4, max: 36 }),
        fc.integer({ min: 1, max: 16 }),
        (screw, pitch, z, teeth, lines) => {
          const l = lead(ratio(pitch * z, 5));
          const all = byNut({ lead: l, starts: z }, ratio(screw, 5), { teeth, lines }) ?? [];
          const rule = nutRule({
            lead: l,
            nutPitch: ratio(screw, 5),
            halfNut: true,
            dial: { teeth, lines },
            exactRatio: true,
          });
          if (rule.kind === 'lines') expect(all[0]?.lines).toEqual(rule.lines);
          for (const s of all)
            for (let line = 1; line <= lines; line += 1) {
              const whole = (line * teeth) % lines === 0;
              const always =
                whole &&
                Array.from({ length: 30 }, (_, turn) => (line * teeth) / lines + turn * teeth).every(
                  (k) => (k * screw) % (pitch * z) === (s.start - 1) * pitch,
                );
              expect([s.start, line, s.lines.includes(line)]).toEqual([s.start, line, always]);
            }
        },
      ),
      { numRuns: 400 },
    );
  });
  it('never for a lead with π', () => {
    expect(byNut({ lead: lead(ratio(4), true), starts: 2 }, ratio(3), null)).toBeNull();
  });
});

describe('by slots of a faceplate', () => {
  it('a turn shared out; 0.1 mm at 60 mm radius and lead 6 is 6 × 0.1 ÷ (2π × 60) mm', () => {
    expect(slotAngle(7)).toEqual(ratio(360, 7));
    expect(slotError(6, 0.1, 60)).toBeCloseTo(1.5915, 4);
    expect(slotError(6, 0.1, 0)).toBeNull();
  });
});

describe('the order of work', () => {
  it('takes every start once in each round, and goes back the same way', () => {
    const starts = 4;
    const seen: string[] = [];
    let turn: Turn = { round: 1, start: 1 };
    for (let n = 0; n < 12; n += 1) {
      seen.push(`${turn.round}.${turn.start}`);
      const next = turnAfter(turn, starts);
      expect(turnBefore(next, starts)).toEqual(turn);
      turn = next;
    }
    expect(seen).toEqual([1, 2, 3].flatMap((r) => [1, 2, 3, 4].map((s) => `${r}.${s}`)));
    expect(turnBefore({ round: 1, start: 1 }, starts)).toEqual({ round: 1, start: 1 });
  });
});
