import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutPlan } from '../../../src/core/cut/plan';
import type { Figure } from '../../../src/core/figures';
import {
  INFEEDS,
  MATERIALS,
  PASS_HOLDS,
  PASS_RULES,
  TOOL_MATERIALS,
  blankJob,
  type Job,
} from '../../../src/core/job';
import type { MachineProfile } from '../../../src/core/machine';
import { inBase, ratio, stated, toNumber } from '../../../src/core/quantity';
import { is, rpm, sheet } from './support';

const DIALS: Partial<MachineProfile> = {
  crossReads: 'diameter',
  crossDivision: is('0.02', 'mm'),
  crossDivisions: is('100', 'count'),
  topDivision: is('0.01', 'mm'),
  topDivisions: is('100', 'count'),
  topScale: 'from-cross-slide',
};
const M10: Job = {
  ...blankJob(),
  thread: { kind: 'catalogue', id: 'iso-coarse:M10' },
  noseKind: 'radius',
  noseSize: is('0.1', 'mm'),
};
const figure = (job: Partial<Job> = {}, machine: Partial<MachineProfile> = {}): Figure<CutPlan> =>
  sheet({ ...DIALS, ...machine }, { ...M10, ...job }).get('plan');
const known = (job: Partial<Job> = {}, machine: Partial<MachineProfile> = {}): CutPlan => {
  const { value } = figure(job, machine);
  if (!value)
    throw new Error(
      `no plan: ${JSON.stringify(figure(job, machine).why.notes)} ${figure(job, machine).missing.join()}`,
    );
  return value;
};
const mm = (p: CutPlan, slide: 'cross' | 'top'): number => {
  const reading = p.passes.at(-1)?.[slide]?.reading;
  return reading ? toNumber(inBase(reading)) : Number.NaN;
};

describe('depth of the plan', () => {
  it('without a measured blank: 0.757772 P − r from the nominal diameter', () => {
    const p = known();
    expect(p.depth.from).toBe('nominal');
    expect(p.depth.value).toBeCloseTo(0.757772 * 1.5 - 0.1, 5);
  });
  // M10 × 1.5 6g: d2 8.994 to 8.862 (ISO 965-2), t = (OD − d2) ÷ 2 + 0.433013 P − r.
  it('from the blank as measured to the middle of the class', () => {
    const { depth } = known({ blank: is('9.85', 'mm'), classId: '6g' });
    expect([depth.from, depth.aim]).toEqual(['measured', 'middle']);
    expect(depth.target).toBeCloseTo(8.928, 3);
    expect(depth.value).toBeCloseTo((9.85 - 8.928) / 2 + 0.433013 * 1.5 - 0.1, 4);
  });
  it('inside from the bore: (D2 − bore) ÷ 2 + 0.433013 P − r', () => {
    const { depth } = known({ side: 'internal', blank: is('8.5', 'mm'), classId: '6H' });
    // M10 × 1.5 6H: D2 9.026 to 9.206 (ISO 965-2).
    expect(depth.target).toBeCloseTo(9.116, 3);
    expect(depth.value).toBeCloseTo((9.116 - 8.5) / 2 + 0.433013 * 1.5 - 0.1, 4);
  });
  it('a blank with nothing on it is refused, not planned', () => {
    expect(figure({ blank: is('8.5', 'mm') })).toMatchObject({ value: null, standing: 'over' });
  });
});

describe('what is set', () => {
  it('straight in: the cross-slide alone, as its dial reads diameter', () => {
    const p = known();
    expect([p.slide, p.reads, p.angle]).toEqual(['cross', 'diameter', null]);
    expect(p.passes.every((x) => x.top === null && x.cross !== null)).toBe(true);
    expect(mm(p, 'cross') / 2).toBeCloseTo(p.reached, 9);
    expect(p.depth.value - p.reached).toBeLessThan(0.01);
  });
  it('a radius dial of half the size shows half the reading', () => {
    const p = known({}, { crossReads: 'radius', crossDivision: is('0.01', 'mm') });
    expect(mm(p, 'cross')).toBeCloseTo(mm(known(), 'cross') / 2, 9);
  });
  it('along the flank: the top slide alone, depth ÷ cos 29.5°', () => {
    const p = known({ infeed: 'modified-flank' });
    expect([p.slide, p.angle, p.scale, p.handle]).toEqual(['top', 29.5, 29.5, 'tailstock']);
    expect(p.passes.every((x) => x.cross === null && x.top !== null)).toBe(true);
    expect(Math.abs(mm(p, 'top') - p.depth.value / 0.870356)).toBeLessThan(0.01);
    expect(p.creep).toBeCloseTo(p.reached * 0.565773, 4);
  });
  it('on a scale from the axis it is 60.5°, entered or not; 29.5° there would be past the flank', () => {
    const machine = { topScale: 'from-axis' } as const;
    expect(known({ infeed: 'modified-flank' }, machine).scale).toBe(60.5);
    const entered = known({ infeed: 'modified-flank', topSlide: is('60.5', 'deg') }, machine);
    expect([entered.scale, entered.angle, entered.assumed.includes('topSlide')]).toEqual([60.5, 29.5, false]);
    const wrong = figure({ infeed: 'modified-flank', topSlide: is('29.5', 'deg') }, machine);
    expect([wrong.value, wrong.standing, wrong.why.notes]).toEqual([null, 'over', ['plan-past-flank']]);
  });
  it('Whitworth, trapezoidal and Acme bring their own angles', () => {
    const at = (id: string) =>
      known({ infeed: 'modified-flank', noseKind: 'sharp', thread: { kind: 'catalogue', id } }).angle;
    expect(at('bsw:1/2-12')).toBe(27);
    expect(at('tr:Tr20x4')).toBe(14.5);
    expect(at('acme:1/2-10')).toBe(14);
  });
  it('by turns: both slides, the top one along the axis', () => {
    const p = known({ infeed: 'alternate-flank' });
    expect([p.angle, p.scale]).toEqual([90, 90]);
    expect(known({ infeed: 'alternate-flank' }, { topScale: 'from-axis' }).scale).toBe(0);
    expect(p.passes.every((x) => x.top !== null && x.cross !== null)).toBe(true);
    expect(p.passes.at(-1)?.top?.divisions).toBe(0);
  });
});

describe('what is usual is named as such', () => {
  it('of a job of which nothing is chosen: everything', () => {
    const { assumed } = known();
    expect(assumed).toEqual(['infeed', 'passRule', 'passHold', 'leastPass', 'passCount', 'springPasses']);
  });
  it('and what is chosen isn’t', () => {
    const p = known({
      infeed: 'radial',
      passRule: 'equal-area',
      passHold: 'count',
      passCount: is('8', 'count'),
      leastPass: is('0.02', 'mm'),
      springPasses: is('1', 'count'),
    });
    expect(p.assumed).toEqual([]);
    expect(p.passes.filter((x) => x.kind === 'cut')).toHaveLength(8);
    expect(p.passes.filter((x) => x.kind === 'spring')).toHaveLength(1);
  });
  it('none after carbide in stainless, not even asked for; two with high-speed steel in steel', () => {
    const rubs = figure({ toolMaterial: 'carbide', material: 'stainless', springPasses: is('2', 'count') });
    expect(rubs.value?.springs).toBe(0);
    expect(rubs.why.notes).toContain('plan-spring-rubs');
    expect(known({ toolMaterial: 'hss', material: 'mild-steel' }).springs).toBe(2);
    expect(known({ toolMaterial: 'carbide' }).springs).toBe(0);
  });
  it('tough stock and an internal thread take more passes', () => {
    const cuts = (job: Partial<Job>) => known(job).byRule;
    expect(cuts({ toolMaterial: 'hss', material: 'stainless' })).toBeGreaterThan(
      cuts({ toolMaterial: 'hss', material: 'mild-steel' }),
    );
    expect(cuts({ side: 'internal' })).toBeGreaterThan(cuts({}));
  });
});

describe('speed and time', () => {
  it('mild steel on 10 mm: 8 to 12 m/min is 255 to 382 rpm', () => {
    const { speed } = known({ material: 'mild-steel', rpm: rpm(200) });
    // n = 1000 v ÷ (π d).
    expect(speed?.rpm.min).toBeCloseTo(254.648, 2);
    expect(speed?.rpm.max).toBeCloseTo(381.972, 2);
    expect(speed?.atSet).toBeCloseTo(6.2832, 3);
  });
  it('of an unknown material none is made up; carbide says from where on', () => {
    expect(known().speed).toBeNull();
    expect(known({ toolMaterial: 'carbide' }).speed?.rpm.max).toBeNull();
  });
  // 60 · (30 + 4.5 + 2) ÷ (1.5 · 200) = 7.3 s.
  it('time of a pass', () => {
    const p = known({ length: is('30', 'mm'), groove: is('2', 'mm'), rpm: rpm(200) });
    expect(p.time?.cutting).toBeCloseTo(7.3, 9);
    expect(p.time?.inAll).toBeCloseTo((7.3 + 20) * p.passes.length, 6);
    expect(known({ rpm: rpm(200) }).time).toBeNull();
  });
});

describe('any job', () => {
  const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(a, { nil: null });
  const hundredth = (from: number, to: number, unit: 'mm' | 'mm2' | 'deg' | 'count', by = 100n) =>
    maybe(fc.integer({ min: from, max: to }).map((n) => stated(ratio(BigInt(n), by), unit)));
  const job = fc.record({
    thread: fc
      .constantFrom(
        'iso-coarse:M6',
        'iso-coarse:M10',
        'iso-coarse:M30',
        'unc:1/2-13',
        'bsw:1/2-12',
        'tr:Tr20x4',
      )
      .map((id) => ({ kind: 'catalogue', id }) as const),
    side: fc.constantFrom('external' as const, 'internal' as const),
    hand: fc.constantFrom('right' as const, 'left' as const),
    material: maybe(fc.constantFrom(...MATERIALS)),
    toolMaterial: maybe(fc.constantFrom(...TOOL_MATERIALS)),
    infeed: maybe(fc.constantFrom(...INFEEDS)),
    topSlide: hundredth(0, 9000, 'deg'),
    passRule: maybe(fc.constantFrom(...PASS_RULES)),
    passHold: maybe(fc.constantFrom(...PASS_HOLDS)),
    firstPass: hundredth(1, 50, 'mm'),
    leastPass: hundredth(1, 10, 'mm'),
    passCount: hundredth(1, 60, 'count', 1n),
    chipArea: hundredth(1, 30, 'mm2'),
    springPasses: hundredth(0, 3, 'count', 1n),
  });
  it('each slide’s settings rise to the depth, and what is missing or refused says so', () => {
    fc.assert(
      fc.property(job, fc.constantFrom(null, 'diameter' as const), (part, reads) => {
        const f = figure({ ...part, noseKind: 'sharp', noseSize: null }, { crossReads: reads });
        if (!f.value) {
          expect(f.missing.length > 0 || f.why.notes.length > 0).toBe(true);
          return;
        }
        const p = f.value;
        expect(p.reached).toBeLessThanOrEqual(p.depth.value + 1e-6);
        expect(p.depth.value - p.reached).toBeLessThan(p.division * 1.000001);
        const settings = p.passes.map((x) => (p.slide === 'cross' ? x.cross : x.top)?.divisions ?? -1);
        settings.forEach((d, i) => {
          expect(d).toBeGreaterThan(0);
          expect(Math.abs(d * p.division - (p.passes[i]?.depth ?? 0))).toBeLessThan(1e-9);
          if (i > 0)
            expect(d - (settings[i - 1] ?? 0)).toBeGreaterThanOrEqual(p.passes[i]?.kind === 'spring' ? 0 : 1);
        });
        if (p.hold === 'chip')
          for (const x of p.passes) expect(x.chip).toBeLessThanOrEqual(p.held * 1.000001);
      }),
      { numRuns: 250 },
    );
  });
});
