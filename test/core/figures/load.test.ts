import { describe, expect, it } from 'vitest';
import { isOfNoSpeed, limitStanding, type LimitId, type LimitReading } from '../../../src/core/figures';
import type { MachineProfile } from '../../../src/core/machine';
import { toNumber } from '../../../src/core/quantity';
import { is, pitchJob, rpm, sheet } from './support';

const limit = (id: LimitId, machine: Partial<MachineProfile> = {}, pitch = '1.5'): LimitReading => {
  const found = sheet(machine, pitchJob(pitch))
    .get('limits')
    .value?.find((l) => l.id === id);
  if (!found) throw new Error(`no limit ${id}`);
  return found;
};

describe('torque, for profile A: 8 tpi screw through 2:1, 4 N m stepper on 48 V', () => {
  // By hand: thrust 100 + 0.1 × (30 × 9.80665 + 100) = 139.42 N; at the screw × 0.003175 ÷ (2π × 0.3) = 0.23484 N m; at
  // the motor ÷ (2 × 0.95) = 0.12360. Inertia 1e-4 + (30 × (0.003175/2π)² + π × 7850 × 0.9 × 0.022⁴/32) ÷ 4
  // = 1e-4 + (7.660e-6 + 1.6249e-4) ÷ 4 = 1.42537e-4 kg m².
  const LOAD = 0.1236;
  const INERTIA = 1.42537e-4;
  // Motor revs per spindle rev: 1.5 ÷ 3.175 × 2.
  const GEARING = 0.944882;
  const asked = (n: number): number => LOAD + (INERTIA * 2 * Math.PI * n * GEARING) / (60 * 0.5);
  // Corner 48 ÷ (2 × 0.0032 × 4.2 × 200) × 60 = 535.7 rpm; 0.7 of 4 N m below it.
  const has = (n: number): number => 2.8 * Math.min(1, 535.714 / (n * GEARING));

  it('asks and has what is reckoned by hand', () => {
    const { course } = limit('torque');
    for (const n of [100, 500, 900]) {
      expect(course?.demand(n)).toBeCloseTo(asked(n), 4);
      expect(course?.bears(n)).toBeCloseTo(has(n), 4);
    }
  });

  it('is within up to half of what there is, close up to all of it, rounded down', () => {
    const l = limit('torque');
    const [within, bearable] = [Number(l.within), Number(l.bearable)];
    expect(asked(within)).toBeLessThanOrEqual(has(within) / 2);
    expect(asked(within + 1)).toBeGreaterThan(has(within + 1) / 2);
    expect(asked(bearable)).toBeLessThanOrEqual(has(bearable));
    expect(asked(bearable + 1)).toBeGreaterThan(has(bearable + 1));
    expect([within, within + 1, bearable, bearable + 1].map((n) => limitStanding(l, rpm(n)))).toEqual([
      'within',
      'near',
      'near',
      'over',
    ]);
  });

  it('by the maker’s curve where there is one, and nothing beyond its last point', () => {
    // Straight from 0.4 N m at rest to 0.2 at 600 rpm of the motor; beyond 600 nothing.
    const l = limit('torque', { torqueCurve: '0=0.4 600=0.2', rampTime: is('60', 's') });
    // The masses hardly count in a minute: 0.1236 + 2.35e-7 n ≤ (0.4 − 0.2 n·0.944882/600) ÷ 2, n = 484.5.
    expect(Number(l.within)).toBe(484);
    expect(Number(l.bearable)).toBe(635);
  });

  it('of a servo: its rated torque bears the load, its peak the masses too', () => {
    const servo = {
      motorKind: 'servo',
      servoPulses: is('4000', 'steps'),
      motorTorque: is('0.3', 'Nm'),
      motorPeak: is('0.3', 'Nm'),
    } as const;
    // Peak: 0.1236 + 2.82068e-5 n ≤ 0.8 × 0.3: n ≤ 4126.7.
    expect(Number(limit('torque', servo).within)).toBe(4126);
    // Rated 0.15: 0.8 of it is 0.12, less than the load at any speed.
    const weak = limit('torque', { ...servo, motorTorque: is('0.15', 'Nm') });
    expect(weak.within).toBe(0n);
    expect(limitStanding(weak, rpm(10))).toBe('near');
  });

  it('is not known without one of its figures, and names it', () => {
    expect(limit('torque', { rotorInertia: null })).toMatchObject({
      within: null,
      missing: ['machine.rotorInertia'],
    });
  });
});

describe('whip', () => {
  it('of 22 mm over 900 mm, clamped and held, leaves profile A far behind', () => {
    // λ 3.9266, root 0.8 × 22 = 17.6: 60 × 15.418 ÷ (2π × 0.81) × 5122.7 × 0.0044 = 4097 rpm of the screw.
    const l = limit('whip');
    expect(Math.abs(toNumber(l.limit ?? is('0', 'rpm').value) - 4097)).toBeLessThan(3);
  });
  it('binds a long thin screw under a coarse lead', () => {
    const l = limit('whip', { screwDiameter: is('12', 'mm'), screwLength: is('1500', 'mm') }, '6');
    // 4097 × (12/22) × (900/1500)² = 804.5 rpm of the screw; × 0.8 ÷ (6 ÷ 3.175) = 340 of the spindle.
    expect(Math.abs(Number(l.within) - 340)).toBeLessThan(2);
  });
});

describe('the shortest gap of two edges', () => {
  it('at 1000 rpm of 4096 counts and 30° is 9.766 µs, not 14.6', () => {
    // (90 − 30)/360 of the channel's period; own calculation.
    const l = limit('edge-gap', { encoderPhaseError: is('30', 'deg') });
    expect(1e6 / (toNumber(l.perRpm ?? is('1', 'rpm').value) * 1000)).toBeCloseTo(9.765625, 6);
  });
  it('of perfect channels is the counter’s own limit', () => {
    expect(limit('edge-gap', { encoderPhaseError: is('0', 'deg') }).within).toBe(limit('counter').within);
  });
  it('isn’t asked of a counter that takes one channel', () => {
    const ids = sheet({ edgesPerLine: is('1', 'count') })
      .get('limits')
      .value?.map((l) => l.id);
    expect(ids).not.toContain('edge-gap');
  });
});

describe('direction', () => {
  it('is kept at any speed or at none', () => {
    const good = limit('direction');
    expect([isOfNoSpeed(good), limitStanding(good, rpm(3000))]).toEqual([true, 'within']);
    const bad = limit('direction', { directionWait: is('0', 'us') });
    expect([bad.within, limitStanding(bad, rpm(1))]).toEqual([0n, 'over']);
    // Then no speed is a speed for the job.
    expect(sheet({ directionWait: is('0', 'us') }).get('speed').value?.drive.highest).toBe(0n);
  });
  it('that is kept never binds, nor comes next', () => {
    const v = sheet({}, pitchJob('1.5', { room: is('2.5', 'mm') })).get('speed').value;
    expect([v?.job.binds?.id, v?.job.next?.id]).not.toContain('direction');
  });
});
