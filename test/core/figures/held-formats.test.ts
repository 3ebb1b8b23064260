import { describe, expect, it } from 'vitest';
import { blankJob, type Job } from '../../../src/core/job';
import { readProfile, storeProfile } from '../../../src/core/machine';
import { ratio } from '../../../src/core/quantity';
import { is, pitchJob, PROFILE_A, sheet } from './support';

/** 1.5 mm on 8 tpi, 6400 steps, 4096 counts: 375/508, as in the worked examples G15 to G21 (own calculations). */
const THREE = { ratioHeld: 'decimal', ratioDigits: is('3', 'count') } as const;
const bits = (n: string) => ({ ratioBits: is(n, 'count') });
const m10 = (more: Partial<Job> = {}): Job => ({
  ...blankJob(),
  thread: { kind: 'catalogue', id: 'iso-coarse:M10' },
  ...more,
});
const held = (machine: Parameters<typeof sheet>[0], job?: Job) => sheet(machine, job).get('ratioHeld');

describe('the ratio in each form', () => {
  it('three decimals: 738/1000, −256 ppm, too much for a leadscrew', () => {
    const f = held(THREE);
    expect(f.value).toMatchObject({ exact: false, held: { top: 369n, bottom: 500n }, grows: 'travel' });
    expect(f.value?.ppm).toBeCloseTo(-256, 9);
    // 256 × 300 ÷ 1000.
    expect(f.value?.judged).toMatchObject({ as: 'strictest', length: 300, allowed: 6 });
    expect(f.value?.judged?.um).toBeCloseTo(-76.8, 9);
    expect(f.standing).toBe('over');
  });
  it('fixed point of 16 bits: +0.98 ppm rounded, −19.7 cut off; both close', () => {
    const [rounded, cut] = (['fixed-rounded', 'fixed-truncated'] as const).map((ratioHeld) =>
      held({ ratioHeld, ...bits('16') }),
    );
    expect(rounded?.value?.ppm).toBeCloseTo(0.9765625, 6);
    expect(cut?.value?.ppm).toBeCloseTo(-19.694, 3);
    expect([rounded?.standing, cut?.standing]).toEqual(['near', 'near']);
  });
  it('a running sum over 300 mm, 200 revs: too much', () => {
    const f = held({ ratioHeld: 'float32-sum' });
    let sum = 0;
    for (let n = 0; n < 819_200; n += 1) sum = Math.fround(sum + Math.fround(375 / 508));
    expect(f.value?.ppm).toBeCloseTo((sum / ((819_200 * 375) / 508) - 1) * 1e6, 6);
    expect([f.standing, f.value?.grows]).toEqual(['over', 'counts']);
    expect(f.why.notes).toContain('held-sum');
  });
  it('a rate is never enough, and the nut stays closed', () => {
    const s = sheet({ ratioHeld: 'rate' });
    expect(s.get('ratioHeld')).toMatchObject({ value: null, standing: 'over', missing: [] });
    expect(s.get('nutRule').value).toMatchObject({ kind: 'keep-closed', reason: 'inexact-ratio' });
  });
  it('a number too small for the form is nothing held: too much', () => {
    const f = held({ ratioHeld: 'decimal', ratioDigits: is('1', 'count') }, pitchJob('0.05'));
    expect(f).toMatchObject({ value: null, standing: 'over', why: { notes: ['held-nothing'] } });
  });
  it('whole steps a rev: off by part of a step, close', () => {
    const f = held({ ratioHeld: 'rev-count' });
    expect(f.value).toMatchObject({ exact: false, grows: 'rev' });
    expect(f.value?.judged?.um).toBeCloseTo(0.37795 * 0.49609375, 5);
    expect(f.standing).toBe('near');
  });
  it('exact where it fits, in decimals too', () => {
    // 12 mm on 8 tpi is no decimal; 2.54 mm on it is 4/5 × 25/16 = 1.25.
    expect(held(THREE, pitchJob('2.54'))).toMatchObject({
      standing: 'within',
      value: { exact: true, ppm: 0 },
    });
  });
  it('names what it needs', () => {
    expect(held({ ratioHeld: 'decimal' }).missing).toEqual(['machine.ratioDigits']);
    expect(held({ ratioHeld: 'fixed-rounded' }).missing).toEqual(['machine.ratioBits']);
    expect(held({ ratioHeld: null }).missing).toEqual(['machine.ratioHeld']);
  });
});

describe('judged by what the thread is for', () => {
  it('M10 6g as a fastener: 38.1 µm over 15 mm allow −256 ppm; opening the nut each pass would not do', () => {
    // Td2 0.132 mm (ISO 965-1 table): 0.5 × 132 ÷ 1.7320508 = 38.105; 256 ppm × 15 mm = 3.84 µm.
    const f = held(THREE, m10({ use: 'fastener' }));
    expect(f.value?.judged).toMatchObject({ as: 'fastener', length: 15, passes: 14, cycle: 60 });
    expect(f.value?.judged?.allowed).toBeCloseTo(38.105, 3);
    expect(f.value?.judged?.um).toBeCloseTo(-3.84, 9);
    expect(f.value?.judged?.diameter).toBeCloseTo(3.84 * 1.7320508, 5);
    // 256 ppm × 1.5 mm × 60 revs × 13 pickings-up.
    expect(f.value?.judged?.shift).toBeCloseTo(-299.52, 6);
    expect(f.standing).toBe('near');
    expect(f.why.notes).toContain('held-picking-up');
  });
  it('with a nut that never opens it is within', () => {
    expect(held({ ...THREE, halfNut: 'always-closed' }, m10({ use: 'fastener' })).standing).toBe('within');
  });
  it('the length of the thread, where shorter, is the engagement', () => {
    const f = held(THREE, m10({ use: 'fastener', length: is('10', 'mm') }));
    expect(f.value?.judged?.length).toBe(10);
    // 2 × 10 ÷ 1.5 + 20 revs, rounded up.
    expect(f.value?.judged?.cycle).toBe(34);
    expect(held(THREE, m10({ use: 'fastener', length: is('40', 'mm') })).value?.judged?.length).toBe(15);
  });
  it('two decimals as a fastener: too much', () => {
    // 0.74 for 375/508: +2453 ppm; over 15 mm 36.8 µm of 38.1: close. One decimal, 0.7: −51 733 ppm.
    const two = held(
      { ratioHeld: 'decimal', ratioDigits: is('2', 'count'), halfNut: 'always-closed' },
      m10({ use: 'fastener' }),
    );
    expect(two.value?.judged?.um).toBeCloseTo(36.8, 1);
    expect(two.standing).toBe('near');
    const one = held({ ratioHeld: 'decimal', ratioDigits: is('1', 'count') }, m10({ use: 'fastener' }));
    expect(one.standing).toBe('over');
  });
  it('a fastener without limits of the diameter is judged as strictly as a leadscrew', () => {
    const f = held(THREE, pitchJob('1.5', { use: 'fastener' }));
    expect([f.value?.judged?.as, f.standing]).toEqual(['strictest', 'over']);
  });
  it('a leadscrew, or a worm, of so little error that no picking-up shows it, is within', () => {
    const fine = { ratioHeld: 'fixed-rounded', ...bits('32') } as const;
    for (const use of ['leadscrew', 'worm'] as const)
      expect(held(fine, pitchJob('1.5', { use })).standing).toBe('within');
    expect(held(fine, pitchJob('1.5')).standing).toBe('near');
    // 19.7 ppm: 5.9 of 6 µm, close even where the nut never opens.
    expect(
      held(
        { ratioHeld: 'fixed-truncated', ...bits('16'), halfNut: 'always-closed' },
        pitchJob('1.5', { use: 'leadscrew' }),
      ).standing,
    ).toBe('near');
  });
  it('an exact ratio is within whatever it is for', () => {
    for (const use of ['fastener', 'leadscrew', 'worm', null] as const)
      expect(held({}, m10({ use })).standing).toBe('within');
  });
});

describe('stored machines', () => {
  it('of before these forms read as they were, with nothing called unreadable', () => {
    for (const ratioHeld of ['integers', 'other'] as const) {
      const old: Record<string, unknown> = { ...storeProfile({ ...PROFILE_A, ratioHeld }) };
      for (const f of ['servoEncoder', 'servoGearMax', 'ratioDigits', 'ratioBits']) delete old[f];
      const read = readProfile(old);
      expect(read?.unreadable).toEqual([]);
      expect([read?.profile.ratioHeld, read?.profile.ratioTopMax?.value]).toEqual([ratioHeld, ratio(65_535)]);
    }
  });
});
