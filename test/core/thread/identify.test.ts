import { beforeAll, describe, expect, it } from 'vitest';
import type { Thread } from '../../../src/core/thread';
import { catalogue, threadById } from '../../../src/core/thread';
import {
  candidatesFrom,
  gaugedPitch,
  identify,
  type ThreadReadings,
} from '../../../src/core/thread/identify';

/**
 * The simulation below makes threads and readings with its own arithmetic: sizes from the bare table figures, and
 * its own picture of how crests come out. It takes nothing from the finder but the answer.
 */
interface Made {
  readonly thread: Thread;
  readonly d: number;
  readonly p: number;
  readonly angle: number;
  /** Basic minor diameter. */
  readonly minor: number;
}

/** Included angle, and major less minor ÷ pitch, as each form's standard states them. */
const FORMS: Readonly<Record<string, readonly [number, number]>> = {
  iso60: [60, 1.082532],
  unj60: [60, 0.974279],
  mj60: [60, 0.974279],
  whitworth55: [55, 1.280654],
  ba47: [47.5, 1.2],
  trapezoidal30: [30, 1],
  acme29: [29, 1],
  stubAcme29: [29, 0.6],
};

const made = (thread: Thread): Made | null => {
  const form = FORMS[thread.form];
  if (!thread.major || !form || thread.taper) return null;
  const d =
    (Number(thread.major.value.n) / Number(thread.major.value.d)) * (thread.major.unit === 'in' ? 25.4 : 1);
  const stated = Number(thread.pitch.value.n) / Number(thread.pitch.value.d);
  const p = thread.pitch.unit === 'tpi' ? 25.4 / stated : stated;
  return { thread, d, p, angle: form[0], minor: d - form[1] * p };
};

/** Mulberry32: a small generator with a fixed seed, so that a failure comes back. */
const generator = (seed: number): (() => number) => {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

const all = catalogue();
const candidates = candidatesFrom(all);
const things = all.map(made).filter((m): m is Made => m !== null && m.d >= 1.5 && m.d <= 80);

/** Crest of a real screw, mm under nominal: most within tolerance, some worn, some turned by eye, some plated. */
const shortfall = (p: number, random: () => number): number => {
  const kind = random();
  const tolerance = 0.18 * p ** (2 / 3) + 0.02 + 0.012 * p;
  if (kind < 0.75) return random() * tolerance;
  if (kind < 0.85) return tolerance * random() - 0.04 * p * Math.log(1 - random() * 0.9);
  if (kind < 0.94) return random() * 0.15 * p;
  return -0.01 - 0.015 * random();
};

/** Bore of a real hole, mm over basic minor: a tapping drill or a bored size, some far too large, some plated. */
const excess = (p: number, random: () => number): number => {
  const kind = random();
  if (kind < 0.8) return random() * 0.2 * p;
  if (kind < 0.93) return (0.2 + 0.15 * random()) * p;
  return -0.01 - 0.015 * random();
};

describe.each([
  [
    'a caliper, and crests counted over a length',
    900,
    0.02,
    (_: number, turns: number) => 0.1 / turns,
    'external',
  ],
  ['a worn caliper and a pitch gauge', 600, 0.05, (p: number) => p / 150, 'external'],
  ['a bore, and a pitch gauge', 600, 0.03, (p: number) => p / 150, 'internal'],
] as const)('what is this thread? simulated: %s', (_, N, uD, uPitch, side) => {
  const random = generator(20240607);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  let shown = 0;
  let clear = 0;
  let firstWhenClear = 0;
  let listed = 0;

  beforeAll(() => {
    for (let i = 0; i < N; i += 1) {
      const thing = things[Math.floor(random() * things.length)];
      if (!thing) continue;
      const { d, p, angle, minor } = thing;
      const size = side === 'external' ? d - shortfall(p, random) : minor + excess(p, random);
      const turns = Math.max(6, Math.min(25, Math.floor((1.5 * d) / p)));
      const [uP, uA] = [uPitch(p, turns), 2];
      const withAngle = random() < 0.4;
      const readings: ThreadReadings = {
        side,
        diameter: { value: size + uD * normal(), u: uD },
        pitch: { value: p + uP * normal(), u: uP },
        angle: withAngle ? { value: angle + uA * normal(), u: uA } : null,
      };
      const answer = identify(readings, candidates);
      if (!answer.ok) throw new Error(answer.refusal);
      // A thread listed twice over (the same figures in two series) is found when either is.
      const same = (t: Thread): boolean => {
        const m = made(t);
        return m !== null && Math.abs(m.d - d) < 1e-9 && Math.abs(m.p - p) < 1e-9 && m.angle === angle;
      };
      if (answer.matches.some((m) => same(m.candidate.thread))) shown += 1;
      listed += answer.matches.length;

      // Nearest rival, in the standard deviations of this simulation: crest and caliper, counted pitch, angle.
      const sCrest = Math.hypot(uD, side === 'external' ? 0.06 * p ** (2 / 3) + 0.02 : 0.09 * p);
      const across = (r: Made): number => (side === 'external' ? r.d - d : r.minor - minor);
      let nearest = Infinity;
      for (const r of things) {
        if (r.d === d && r.p === p && r.angle === angle) continue;
        const z2 =
          (across(r) / sCrest) ** 2 + ((r.p - p) / uP) ** 2 + (withAngle ? ((r.angle - angle) / uA) ** 2 : 0);
        if (z2 < nearest) nearest = z2;
      }
      if (nearest > 9) {
        clear += 1;
        const first = answer.matches[0];
        if (first && same(first.candidate.thread)) firstWhenClear += 1;
      }
    }
  });

  it('shows the true thread in 99 % of cases or more', () => {
    expect(shown / N).toBeGreaterThanOrEqual(0.99);
  });
  it('puts it first in 90 % or more where the nearest rival is over 3 standard deviations away', () => {
    expect(clear).toBeGreaterThan(N / 10);
    expect(firstWhenClear / clear).toBeGreaterThanOrEqual(0.9);
  });
  it('does so without showing everything', () => {
    expect(listed / N).toBeLessThan(8);
  });
});

const known = (id: string): Thread => {
  const t = threadById(id);
  if (!t) throw new Error(id);
  return t;
};
const read = (value: number, u: number): { value: number; u: number } => ({ value, u });
const screw = (diameter: number, pitch: number, angle: number | null = null): ThreadReadings => ({
  side: 'external',
  diameter: read(diameter, 0.02),
  pitch: read(pitch, 0.008),
  angle: angle === null ? null : read(angle, 1.5),
});
const names = (r: ThreadReadings, of = candidates): string[] => {
  const answer = identify(r, of);
  if (!answer.ok) throw new Error(answer.refusal);
  return answer.matches.map((m) => m.candidate.thread.designation);
};

describe('what is this thread? single cases', () => {
  it('1/4-20 with the flank angle unknown: Unified and Whitworth together, and what parts them', () => {
    const answer = identify(screw(6.29, 1.27), candidates);
    if (!answer.ok) throw new Error(answer.refusal);
    const together = answer.matches.filter((m) => m.together).map((m) => m.candidate.thread.designation);
    expect(together).toEqual(expect.arrayContaining(['1/4-20 UNC', '1/4-20 BSW']));
    const angled = identify(screw(6.29, 1.27, 55), candidates);
    expect(angled.ok && angled.matches[0]?.candidate.thread.designation).toBe('1/4-20 BSW');
  });

  it('60° against 55° of the same size and pitch: the flank angle is the thing to measure', () => {
    const two = candidatesFrom([known('unc:1/4-20'), known('bsw:1/4-20')]);
    const answer = identify(screw(6.29, 1.27), two);
    // 5° against a gauge good to 1.5°; the pitch diameters differ by (0.6495 − 0.6403) × 1.27 = 0.012 mm only.
    expect(answer.ok && answer.next.map((n) => [n.kind, n.difference.toFixed(3)])).toEqual([
      ['angle', '5.000'],
      ['over-wires', '0.012'],
    ]);
  });

  it('1/2-13 against 1/2-12: says over how many pitches to count', () => {
    const two = candidatesFrom([known('unc:1/2-13'), known('bsw:1/2-12')]);
    const answer = identify({ side: 'external', diameter: read(12.6, 0.02), pitch: null, angle: null }, two);
    if (!answer.ok) throw new Error(answer.refusal);
    expect(answer.next[0]?.kind).toBe('pitch-over-length');
    // 25.4/12 − 25.4/13 = 0.1628 mm a pitch; two pitches differ by more than three times 0.1 mm.
    expect(answer.next[0]?.pitches).toBe(2);
  });

  it('three threads alike in all that was measured are shown as three, equally likely', () => {
    const one = known('iso-coarse:M10');
    const own = ['a', 'b'].map((id): Thread => ({ ...one, id, designation: id }));
    const three = candidatesFrom([one, ...own]);
    const answer = identify(screw(9.9, 1.5), three);
    if (!answer.ok) throw new Error(answer.refusal);
    expect(answer.matches.map((m) => m.together)).toEqual([true, true, true]);
    for (const m of answer.matches) expect(m.probability).toBeCloseTo(1 / 3, 9);
    expect(answer.next).toEqual([]);
  });

  it('two starts against one: count the ends of thread', () => {
    const one = known('iso-coarse:M10');
    const answer = identify(screw(9.9, 1.5), candidatesFrom([one, { ...one, id: 'two', starts: 2 }]));
    expect(answer.ok && answer.next[0]).toMatchObject({ kind: 'starts', difference: 1 });
  });

  it.each([
    // M10×1.5: 6g crest 9.732 to 9.968 (ISO 965-2); then worn, turned by eye, plated.
    [9.9, 'as-cut'],
    [9.66, 'under'],
    [9.45, 'far-under'],
    [10.03, 'over'],
  ])('M10 at %s mm is still M10, and its crest %s', (diameter, crest) => {
    const answer = identify(screw(diameter, 1.5), candidatesFrom([known('iso-coarse:M10')]));
    expect(answer.ok && answer.fits).toBe(true);
    expect(answer.ok && answer.matches[0]?.crest).toBe(crest);
    expect(names(screw(diameter, 1.5))).toContain('M10×1.5');
  });

  it('a hole: bore 8.5, pitch 1.5 is M10', () => {
    const r: ThreadReadings = {
      side: 'internal',
      diameter: read(8.5, 0.03),
      pitch: gaugedPitch(1.5),
      angle: null,
    };
    expect(names(r)[0]).toBe('M10×1.5');
  });

  it('a parallel and a taper pipe thread of one size: measure the taper', () => {
    const [g, r] = ['G', 'R'].map((d) =>
      all.find((t) => t.designation === `${d} 1/2` || t.designation === `${d}1/2`),
    );
    if (!g || !r) throw new Error('no pipe threads');
    const answer = identify(screw(20.9, 25.4 / 14), candidatesFrom([g, r]));
    if (!answer.ok) throw new Error(answer.refusal);
    expect(answer.matches.map((m) => m.together)).toEqual([true, true]);
    // 1 in 16 on diameter (ISO 7-1).
    expect(answer.next[0]).toMatchObject({ kind: 'taper', difference: 1 / 16 });
  });

  it('says so when nothing fits', () => {
    for (const odd of [screw(10, 4.4), screw(9.9, 1.5, 90)]) {
      // A worm has no diameter of its own to disagree with, so those are left out.
      const sized = candidates.filter((c) => c.major !== null);
      const answer = identify(odd, sized);
      expect(answer.ok && answer.fits).toBe(false);
    }
    const alone = identify(screw(14, 1.5), candidatesFrom([known('iso-coarse:M10')]));
    expect(alone.ok && alone.fits).toBe(false);
    expect(identify(screw(10, 1.5), [])).toEqual({ ok: true, matches: [], fits: false, next: [] });
  });

  it('takes no reading without its uncertainty, and none that is no length', () => {
    const none = { side: 'external', diameter: null, pitch: null, angle: null } as const;
    const refusal = (r: ThreadReadings): string => {
      const answer = identify(r, candidates);
      return answer.ok ? 'accepted' : answer.refusal;
    };
    expect(refusal(none)).toBe('nothing-measured');
    expect(refusal({ ...none, diameter: { value: 10, u: null } })).toBe('uncertainty-unknown');
    expect(refusal({ ...none, pitch: read(1.5, 0) })).toBe('uncertainty-unknown');
    expect(refusal({ ...none, pitch: read(-1.5, 0.1) })).toBe('not-positive');
    expect(refusal({ ...none, angle: read(Number.NaN, 1) })).toBe('not-positive');
  });
});
