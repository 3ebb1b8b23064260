import { describe, expect, it } from 'vitest';
import { figuresFor, type Sheet } from '../../../src/core/figures';
import { blankJob, type Job } from '../../../src/core/job';
import type { MachineProfile } from '../../../src/core/machine';
import { gearsOf } from '../../../src/core/machine/gearing';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio } from '../../../src/core/quantity';
import { is, QUIET, rpm } from './support';

const JOB: Job = {
  ...blankJob(),
  thread: { kind: 'catalogue', id: 'unc:1/4-20' },
  rpm: rpm(90),
  room: is('8', 'mm'),
};
const sheet = (over: Partial<MachineProfile> = {}, job: Partial<Job> = {}): Sheet =>
  figuresFor({ machine: { ...EXAMPLES.dunlin(), ...over }, job: { ...JOB, ...job }, context: QUIET });

/** Dunlin: 8 tpi screw. 20 tpi wants 8/20 = 2/5 of a screw rev to a spindle rev. */
describe('the train mounted on a change-gear machine', () => {
  it('cuts screw lead × drivers ÷ driven wheels', () => {
    const t = sheet({ gearMounted: '40/60 45/75' }).get('train').value;
    expect(t).toMatchObject({ kind: 'wheels', ratio: ratio(2, 5), cuts: ratio(127, 100) });
    // 75 is no wheel of the set.
    expect(t?.kind === 'wheels' && t.notOwned).toEqual([75]);
  });
  it('fixed wheels and the box’s lever are in it', () => {
    const t = sheet({
      spindleWheel: is('30', 'teeth'),
      shaftWheel: is('60', 'teeth'),
      quickBox: 'levers',
      boxTable: 'A=1/2 B=2',
      gearMounted: '40/65/50 @B',
    }).get('train').value;
    expect(t?.kind === 'wheels' && t.ratio).toEqual(ratio(4, 5));
  });
  it('a lever that the box hasn’t leaves it not known', () => {
    const s = sheet({ quickBox: 'levers', boxTable: 'A=1/2', gearMounted: '40/65/50 @C' });
    expect(s.get('train').value).toBeNull();
    expect(s.get('train').missing).toEqual(['machine.gearMounted']);
  });
  it('exact, near and for another lead', () => {
    const exact = sheet({ gearMounted: '40/60 45/75' }).get('ratioHeld');
    expect([exact.standing, exact.value?.exact, exact.value?.ppm]).toEqual(['within', true, 0]);
    // 1.5 mm by 63/80 for 100/127: 8001/8000.
    const mm = { thread: { kind: 'pitch', pitch: is('1.5', 'mm') } } as const;
    const near = sheet({ gearMounted: '30/50 63/80' }, mm).get('ratioHeld');
    expect(near.standing).toBe('near');
    expect(near.value?.ppm).toBeCloseTo(125, 6);
    const other = sheet().get('ratioHeld');
    expect([other.standing, other.why.notes]).toEqual(['over', ['train-other']]);
  });
  it('without it neither the ratio nor the nut rule is known', () => {
    const s = sheet({ gearMounted: null });
    expect([s.get('ratioHeld').value, s.get('nutRule').value]).toEqual([null, null]);
    expect(s.get('nutRule').missing).toEqual(['machine.gearMounted']);
  });
});

describe('the half-nut rule with change gears rests on the leads', () => {
  it('20 tpi on 8 tpi with a 16-tooth dial and 8 lines: every second line (lathe makers’ plates: even tpi 4 lines)', () => {
    const rule = sheet({ gearMounted: '40/60 45/75' }).get('nutRule').value;
    // 3.175 ÷ 1.27 = 5/2: b = 2 divides 16, so every line of 2 teeth is good.
    expect(rule).toMatchObject({ kind: 'lines', a: 5n, b: 2n, lines: [1, 2, 3, 4, 5, 6, 7, 8] });
  });
  it('a train that is only near keeps it closed', () => {
    const mm = { thread: { kind: 'pitch', pitch: is('1.5', 'mm') } } as const;
    const rule = sheet({ gearMounted: '30/50 63/80' }, mm).get('nutRule').value;
    expect(rule).toMatchObject({ kind: 'keep-closed', reason: 'inexact-ratio' });
  });
});

describe('what an electronic drive alone has', () => {
  it('is withheld, says why, and asks for nothing', () => {
    const s = sheet();
    for (const id of ['countsPerRev', 'stepsPerMotorRev', 'motorPerScrew'] as const) {
      const f = s.get(id);
      expect([f.value, f.missing, f.why.notes]).toEqual([null, [], ['change-gears']]);
    }
    expect(s.get('stepsPerCount').missing).toEqual([]);
  });
  it('its limits aren’t asked; carriage, whip, chuck, spindle and stopping room are', () => {
    const s = sheet();
    expect(s.get('limits').value?.map((l) => l.id)).toEqual([
      'carriage',
      'whip',
      'chuck',
      'spindle-range',
      'stopping-room',
    ]);
    // 1.27 mm × n/60 × 0.6 s × 1.5 ≤ 8 mm: n ≤ 419.9.
    expect(s.get('speed').value?.job.highest).toBe(419n);
    expect(s.get('speed').missing).toEqual([]);
  });
  it('while the kind of drive isn’t known, neither is what rests on it', () => {
    const s = sheet({ driveKind: null });
    expect(s.get('countsPerRev').missing).toEqual(['machine.driveKind']);
    expect(s.get('train').missing).toEqual(['machine.driveKind']);
    expect(s.get('nutRule').value).toBeNull();
  });
});

describe('the search’s own inputs', () => {
  it('come from the profile, or say what is missing', () => {
    expect(gearsOf(EXAMPLES.dunlin())).toMatchObject({
      ok: true,
      gearing: {
        fixed: ratio(1),
        screwLead: ratio(127, 40),
        box: [],
        mounted: {
          stages: [
            [20, 65],
            [20, 80],
          ],
          box: null,
        },
        banjo: { shafts: 150, least: 60, most: 140, studGap: 45, studs: 2, clearance: 15 },
      },
    });
    const less = { ...EXAMPLES.dunlin(), gearWheels: null, quickBox: 'levers', spindleWheel: null } as const;
    expect(gearsOf(less)).toEqual({ ok: false, missing: ['gearWheels', 'spindleWheel', 'boxTable'] });
  });
});
