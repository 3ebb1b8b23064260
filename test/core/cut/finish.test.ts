import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { foundBy, leftToTake, targetOf, threadOfJob, wholeDivisions } from '../../../src/core/cut/finish';
import { adviceOfFeel } from '../../../src/core/cut/feel';
import { springAllowed } from '../../../src/core/cut/spring';
import { settingAt } from '../../../src/core/cut/dial';
import { countedBy, slideOf, slidesOf } from '../../../src/core/cut/handwheels';
import { blankJob } from '../../../src/core/job';
import { blankProfile } from '../../../src/core/machine';
import { ratio, stated } from '../../../src/core/quantity';
import { threadById, type Thread } from '../../../src/core/thread';

const m10 = threadById('iso-coarse:M10') as Thread;
const quarter = threadById('unc:1/4-20') as Thread;
const exactly = (value: number) => ({ value, u: 0 });

/**
 * M10×1.5 6g over wires of 0.8660 mm that read 10.520: worked by hand from ISO 965 limits 8.994 and 8.862 and the
 * three-wire formula with its lead term: E 9.2191, 0.1457 radially, 0.1674 along a top slide at 29.5°.
 */
describe('from a reading over wires to what is left', () => {
  const target = targetOf(m10, '6g', 'external');
  const found = foundBy(m10, 'external', {
    way: 'wires',
    over: { value: 10.52, u: 0.004 },
    wire: { value: 0.866, u: 0.0005 },
  });

  it('holds M10×1.5 to ISO 965’s 6g', () => {
    expect(target).toMatchObject({ min: 8.862, max: 8.994, by: 'middle', refusal: null });
    expect(target?.aim).toBeCloseTo(8.928, 9);
  });

  it('finds 9.2191 and leaves 0.1457 to take', () => {
    if (!found.ok || !target) throw new Error('not found');
    expect(found.value).toBeCloseTo(9.2191, 3);
    const left = leftToTake('external', found, target);
    expect(left.lies).toBe('to-take');
    expect(Math.abs(left.radial - 0.1457)).toBeLessThan(2e-4);
    // u² = u²(M) + 9 u²(W), doubled.
    expect(left.expanded).toBeCloseTo(2 * Math.hypot(0.004, 3 * 0.0005), 5);
    const profile = {
      ...blankProfile('Heron', 'Shed'),
      topDivision: stated(ratio(2, 100), 'mm'),
      topScale: 'from-cross-slide' as const,
    };
    const job = { ...blankJob(), infeed: 'modified-flank' as const, topSlide: stated(ratio(59, 2), 'deg') };
    const { top, feeds } = slidesOf(profile, job, m10);
    expect(feeds).toBe('top');
    expect(Math.abs((left.radial / (top?.radial ?? 0)) * 0.02 - 0.1674)).toBeLessThan(2e-4);
    // 0.1674 mm is eight divisions of 0.02 and a part: eight, so as not to go below.
    expect(wholeDivisions(left.radial, top?.radial ?? 0, left)).toBe(8);
  });

  // ASME B1.1: ¼-20 UNC 2A, 0.2127 to 0.2164 in; over wires of 0.0289 in 0.2561 to 0.2598 (three-wire formula).
  it('accepts ¼-20 2A between 0.2561 and 0.2598 in over wires of 0.0289', () => {
    const at = (inches: number): string => {
      const t = targetOf(quarter, '2A', 'external');
      const r = foundBy(quarter, 'external', {
        way: 'wires',
        over: exactly(inches * 25.4),
        wire: exactly(0.0289 * 25.4),
      });
      return t && r.ok ? leftToTake('external', r, t).lies : 'refused';
    };
    expect(['0.2560', '0.2563', '0.2597', '0.2600'].map((x) => at(Number(x)))).toEqual([
      'beyond',
      'within',
      'within',
      'to-take',
    ]);
  });

  it('says nothing of a limit that lies inside the uncertainty, and never within', () => {
    if (!target) throw new Error('no target');
    const at = (value: number, u: number | null) => leftToTake('external', { value, u }, target).lies;
    expect(at(8.996, 0.004)).toBe('unsure');
    expect(at(8.99, 0.004)).toBe('unsure');
    expect(at(8.985, 0.004)).toBe('within');
    expect(at(8.928, null)).toBe('unknown');
    expect(at(8.85, 0.004)).toBe('beyond');
    expect(leftToTake('external', { value: 8.85, u: 0.004 }, target).radial).toBe(0);
  });

  it('turns round inside: a nut’s pitch diameter has to grow', () => {
    const nut = targetOf(m10, '6H', 'internal');
    if (!nut) throw new Error('no target');
    // ISO 965: M10 6H 9.026 to 9.206.
    expect([nut.min, nut.max]).toEqual([9.026, 9.206]);
    const small = leftToTake('internal', { value: 8.9, u: 0.004 }, nut);
    expect(small.lies).toBe('to-take');
    expect(small.radial).toBeCloseTo((9.116 - 8.9) / 2, 9);
    expect(leftToTake('internal', { value: 9.3, u: 0.004 }, nut).lies).toBe('beyond');
    expect(foundBy(m10, 'internal', { way: 'wires', over: exactly(10), wire: exactly(0.866) })).toEqual({
      ok: false,
      refusal: 'internal-thread',
    });
  });

  it('aims at the basic size where no class gives limits, and calls nothing within', () => {
    const t = targetOf(m10, null, 'external');
    expect(t).toMatchObject({ min: null, max: null, by: 'basic' });
    // ISO 724: M10 has a pitch diameter of 9.026.
    expect(t?.aim).toBeCloseTo(9.026, 3);
    if (t) expect(leftToTake('external', { value: 9.026, u: 0.001 }, t).lies).toBe('unknown');
  });

  it('has nothing to measure in a bare pitch', () => {
    const pitch = { kind: 'pitch', pitch: stated(ratio(3, 2), 'mm') } as const;
    expect(threadOfJob({ thread: pitch, starts: 1 })).toBeNull();
    expect(threadOfJob({ thread: { kind: 'catalogue', id: 'iso-coarse:M10' }, starts: 2 })?.starts).toBe(2);
  });
});

describe('whole divisions', () => {
  const length = fc.double({ min: 0.0001, max: 1, noNaN: true });

  it('never pass the target, or else stay clear of the farther limit', () => {
    fc.assert(
      fc.property(length, length, length, length, (excess, halfWidth, per, u) => {
        const target = {
          min: 9 - halfWidth,
          max: 9 + halfWidth,
          aim: 9,
          by: 'middle',
          source: null,
          refusal: null,
        };
        const left = leftToTake('external', { value: 9 + excess, u }, target as never);
        const after = 9 + excess - 2 * per * wholeDivisions(left.radial, per, left);
        return after >= 9 - 3e-6 || after >= target.min + 2 * u - 1e-9;
      }),
    );
  });

  it('leave less than one division to the target unless they pass it', () => {
    fc.assert(
      fc.property(length, length, (radial, per) => {
        const n = wholeDivisions(radial, per, { least: null, most: null });
        return n * per <= radial + 2e-6 && (n + 1) * per > radial;
      }),
    );
  });

  it('take one more where a coarse dial would stop above the limits and that stays within them', () => {
    // 0.05 on the diameter, window 0.06: from 0.029 above the middle nothing would be taken, and it stays too large.
    const coarse = { least: 0.001, most: 0.04 };
    expect(wholeDivisions(0.02, 0.025, coarse)).toBe(1);
    expect(wholeDivisions(0.02, 0.025, { ...coarse, most: 0.02 })).toBe(0);
    expect(wholeDivisions(0.02, 0.025, { ...coarse, least: 0 })).toBe(0);
  });
});

describe('handwheels', () => {
  const profile = {
    ...blankProfile('Heron', 'Shed'),
    crossReads: 'diameter' as const,
    crossDivision: stated(ratio(1, 1000), 'in'),
    crossDivisions: stated(ratio(100), 'count'),
    topDivision: stated(ratio(1, 50), 'mm'),
  };
  const top = (part: object, job: object) =>
    slidesOf({ ...profile, ...part }, { ...blankJob(), ...job }, m10).top?.radial ?? null;
  const at = (n: number, d = 1) => ({ topSlide: stated(ratio(n, d), 'deg') });

  it('count a dial that reads diameter at half', () => {
    expect(slidesOf(profile, blankJob(), m10).cross?.radial).toBeCloseTo(0.0127, 9);
    expect(slidesOf({ ...profile, crossReads: 'radius' }, blankJob(), m10).cross?.radial).toBeCloseTo(
      0.0254,
      9,
    );
    expect(slidesOf({ ...profile, crossReads: null }, blankJob(), m10).cross).toBeNull();
  });

  it('read 60.5° from the axis as 29.5° from square', () => {
    const half = 0.02 * Math.cos((29.5 * Math.PI) / 180);
    expect(top({ topScale: 'from-axis' }, at(121, 2))).toBeCloseTo(half, 12);
    expect(top({ topScale: 'from-cross-slide' }, at(59, 2))).toBeCloseTo(half, 12);
    expect(top({}, at(59, 2))).toBeNull();
    // Nothing said of the angle: as usual for the infeed, and for none at all not known.
    expect(top({}, { infeed: 'modified-flank' })).toBeCloseTo(half, 12);
    expect(top({}, {})).toBeNull();
    // Along the axis a top slide feeds nothing in.
    expect(top({ topScale: 'from-axis' }, at(0))).toBeNull();
    expect(top({ topScale: 'from-axis' }, { ...at(60), infeed: 'alternate-flank' })).toBeNull();
  });
});

describe('by feel', () => {
  it('gives advice and no size', () => {
    expect(adviceOfFeel('nut', 'goes', null)).toBe('fits');
    expect(adviceOfFeel('nut', 'tight', null)).toBe('least-more');
    expect(adviceOfFeel('gauges', 'goes', null)).toBe('no-go-next');
    expect(adviceOfFeel('gauges', 'goes', 'binds')).toBe('gauged');
    expect(adviceOfFeel('gauges', 'goes', 'runs-on')).toBe('beyond');
    expect(adviceOfFeel('gauges', 'does-not-go', 'runs-on')).toBe('contradicts');
    expect(adviceOfFeel('gauges', 'does-not-go', 'binds')).toBe('least-more');
  });

  it('allows a spring pass with high-speed steel, never with carbide where the stock hardens', () => {
    expect(springAllowed('hss', 'stainless')).toBe(true);
    expect(springAllowed('carbide', 'stainless')).toBe(false);
    expect(springAllowed('carbide', 'mild-steel')).toBe(true);
    expect(springAllowed('carbide', null)).toBeNull();
    expect(springAllowed(null, 'brass')).toBeNull();
  });
});

describe('the slide that a plan goes on with', () => {
  const wheel = { division: stated(ratio(1, 50), 'mm'), perTurn: 100, travel: 0.02 };
  const at = (divisions: number) => settingAt(wheel, divisions);

  it('is the one that was moved', () => {
    expect(slideOf({ cross: at(20), top: null })).toBe('cross');
    expect(slideOf({ cross: null, top: at(20) })).toBe('top');
    // Along a flank the cross-slide goes back to nought each time; by turns the top slide is only shifted.
    expect(slideOf({ cross: at(0), top: at(20) })).toBe('top');
    expect(slideOf({ cross: at(20), top: at(3) })).toBe('cross');
  });

  it('counts in the divisions it was planned in, or not at all', () => {
    expect(countedBy(wheel, at(20))).toBe(true);
    expect(countedBy({ ...wheel, division: stated(ratio(1, 40), 'mm') }, at(20))).toBe(false);
    expect(countedBy({ ...wheel, division: stated(ratio(1, 50), 'in') }, at(20))).toBe(false);
  });
});
