import { describe, expect, it } from 'vitest';
import { raisesFor, type Raise } from '../../../src/core/figures/raise';
import type { MachineProfile } from '../../../src/core/machine';
import { toNumber } from '../../../src/core/quantity';
import { is, pitchJob, PROFILE_A, QUIET } from './support';

const found = (machine: Partial<MachineProfile> = {}, pitch = '1.5') => {
  const raises = raisesFor({ machine: { ...PROFILE_A, ...machine }, job: pitchJob(pitch), context: QUIET });
  if (!raises) throw new Error('no ceiling');
  return raises;
};
const by = (raises: readonly Raise[], field: string): Raise | undefined =>
  raises.find((r) => r.field === field);

// Profile A at 1.5 mm: the motor binds at 0.8 · 800 ÷ (1.5/3.175 · 2) = 677, the carriage next at 60 · 25 ÷ 1.5 = 1000.
describe('what would raise the ceiling of profile A', () => {
  it('a motor pulley twice as large: then the carriage binds, and a step is twice as coarse', () => {
    const r = by(found().raises, 'motorPulley');
    expect([Number(r?.highest), r?.binds?.id]).toEqual([1000, 'carriage']);
    // 3.175 mm ÷ 3200 steps.
    expect(r?.step && toNumber(r.step)).toBeCloseTo(3.175 / 3200, 12);
    expect(r?.to).toEqual(is('40', 'teeth'));
  });
  it('not what doesn’t bind: neither microsteps nor the counter', () => {
    const { raises, now } = found();
    expect([now.binds?.id, now.next?.id]).toEqual(['motor-speed', 'carriage']);
    for (const field of ['microsteps', 'counterMaxEdges', 'encoderLines', 'pulseTiming', 'screwPulley'])
      expect(by(raises, field), field).toBeUndefined();
  });
  it('fewer counts or a faster counter where the counter binds, each to twice its speed', () => {
    // 0.25 mm: counter at 2343; the motor would follow 4064.
    const { raises } = found({}, '0.25');
    // The counter doubled leaves encoder and burst: 0.8 · 200 000 · 60 ÷ 4096 = 2343 for the bunched pulses too.
    expect(Number(by(raises, 'encoderLines')?.highest)).toBe(4064);
    expect(raises.map((r) => Number(r.highest))).toEqual(
      [...raises.map((r) => Number(r.highest))].sort((a, b) => b - a),
    );
  });
  it('is counted from what is known, and says what isn’t', () => {
    const { now, raises } = found({ carriageMax: null });
    expect([now.highest, Number(now.atMost), now.unknown.map((l) => l.id)]).toEqual([
      null,
      677,
      ['carriage'],
    ]);
    // Without the carriage's limit the step rate comes next: 3200 steps · …: 0.8 · 100 000 · 60 ÷ (0.47244 · 3200) = 3175,
    // the motor 1354.
    expect(Number(by(raises, 'motorPulley')?.highest)).toBe(1354);
  });
  it('whole things stay whole: a half of one microstep, of 25 lines, is not offered', () => {
    const { raises } = found({ microsteps: is('1', 'times'), encoderLines: is('25', 'lines') });
    expect(by(raises, 'microsteps')).toBeUndefined();
    expect(by(raises, 'encoderLines')).toBeUndefined();
  });
});
