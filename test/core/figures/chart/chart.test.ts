import { describe, expect, it } from 'vitest';
import { RAMP_LEAD, RAMP_RULE, RAMP_TEST } from '../../../../src/core/figures';
import {
  chart,
  grooveRoom,
  type Chart,
  type ChartRow,
  type ChartThread,
  type GrooveId,
} from '../../../../src/core/figures/chart';
import { snapshot, type Context, type Inputs } from '../../../../src/core/context';
import type { MachineProfile } from '../../../../src/core/machine';
import { ratio } from '../../../../src/core/quantity';
import { is, pitchJob, PROFILE_A, QUIET } from '../support';

const inputs = (
  machine: Partial<MachineProfile> = {},
  room: string | null = null,
  more: Partial<Context> = {},
): Inputs => ({
  machine: { ...PROFILE_A, ...machine },
  job: pitchJob('1.5', { room: room === null ? null : is(room, 'mm') }),
  context: { ...QUIET, ...more },
});
const pitches = (...mm: string[]): ChartThread[] =>
  mm.map((p) => ({ key: p, thread: { kind: 'pitch', pitch: is(p, 'mm') }, starts: 1 }));
const named = (...ids: string[]): ChartThread[] =>
  ids.map((id) => ({ key: id, thread: { kind: 'catalogue', id }, starts: 1 }));
const row = (c: Chart, key: string): ChartRow => {
  const found = c.rows.find((r) => r.key === key);
  if (!found) throw new Error(key);
  return found;
};
const groove = (c: Chart, key: string, id: GrooveId): unknown => {
  const answer = row(c, key).grooves[id];
  return answer.kind === 'highest' ? Number(answer.rpm) : answer.kind;
};
const line = (c: Chart, id: string) => c.lines.find((l) => l.id === id)?.points ?? [];

/**
 * The lowest of the columns step, motor, edge and carriage, by hand from 60·f/K and the like at 0.8 of each electronic
 * limit: motor 0.8·800·3.175 ÷ (2·L) = 1016 ÷ L, counter 0.8·200 000·60 ÷ 4096 = 2343.75, carriage 25·60 ÷ L. Rounded down.
 */
const LOWEST: readonly (readonly [string, number, string])[] = [
  ['0.25', 2343, 'counter'],
  ['0.5', 2032, 'motor-speed'],
  ['1', 1016, 'motor-speed'],
  ['1.5', 677, 'motor-speed'],
  ['2', 508, 'motor-speed'],
  ['3', 338, 'motor-speed'],
  ['6', 169, 'motor-speed'],
];
const A = chart(inputs(), [
  ...pitches(...LOWEST.map(([p]) => p)),
  ...named('iso-coarse:M10', 'iso-coarse:M6', 'iso-coarse:M3', 'unc:1/2-13', 'tr:Tr20x4'),
]);

describe('the drive', () => {
  it.each(LOWEST)('%s mm: %i rpm, %s binds', (pitch, rpm, binds) => {
    const { drive } = row(A, pitch);
    expect([Number(drive.highest), drive.binds?.id]).toEqual([rpm, binds]);
  });

  it('is drawn with each limit’s own line, rounded down at every point', () => {
    expect(line(A, 'motor-speed').length).toBeGreaterThan(20);
    for (const p of line(A, 'motor-speed')) expect(p.rpm).toBe(Math.floor(1016 / p.lead));
    for (const p of line(A, 'carriage')) expect(p.rpm).toBe(Math.floor(1500 / p.lead));
    // 0.8·100 000·60·3.175 ÷ (6400·L) = 2381.25 ÷ L.
    for (const p of line(A, 'step-rate')) expect(p.rpm).toBe(Math.floor(2381.25 / p.lead));
    expect(new Set(line(A, 'counter').map((p) => p.rpm))).toEqual(new Set([2343]));
    // The chuck's mark has no margin.
    expect(new Set(line(A, 'chuck').map((p) => p.rpm))).toEqual(new Set([2500]));
    // The spindle's speeds are rules, the stopping room has lines of its own.
    expect(A.lines.map((l) => l.id)).not.toContain('spindle-range');
    expect(A.lines.map((l) => l.id)).not.toContain('stopping-room');
    expect(A.own).toEqual({ kind: 'speeds', rpm: [60, 130, 240, 480, 900].map((n) => ratio(n)) });
  });

  it('finds where another limit becomes the lowest', () => {
    const [crossing] = A.crossings;
    expect(A.crossings).toHaveLength(1);
    expect([crossing?.from, crossing?.to]).toEqual(['counter', 'motor-speed']);
    // 1016 ÷ L = 2343 (and not 2343.75): whole speeds cross a hair later.
    const at = [crossing?.after, crossing?.before].map((r) => Number(r?.n) / Number(r?.d));
    expect(at[0]).toBeLessThanOrEqual(1016 / 2343);
    expect(at[1]).toBeGreaterThanOrEqual(1016 / 2343.75);
    expect((at[1] ?? 0) - (at[0] ?? 0)).toBeLessThan(0.003);
  });

  it('ceiling is the least of the lines at every lead, and never rises', () => {
    const points = A.ceiling.flatMap((s) => s.points);
    const drives = A.lines.filter((l) => l.side === 'drive');
    for (const p of points) {
      const least = Math.min(...drives.map((l) => l.points.find((x) => x.lead === p.lead)?.rpm ?? Infinity));
      expect(p.rpm).toBe(least);
    }
    const speeds = points.map((p) => p.rpm);
    expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
    expect(A.ceiling.map((s) => s.id)).toEqual(['counter', 'motor-speed']);
  });

  it('steps where pulses bunch: one more to an edge beyond r = 1, at 4096·3.175 ÷ 6400 = 2.032 mm', () => {
    const points = line(A, 'burst');
    // 0.8·200 000·60 ÷ 4096 with one pulse to an edge, half of it with two.
    const low = points.filter((p) => p.lead <= 2.032);
    const high = points.filter((p) => p.lead > 2.032 && p.lead < 4.06);
    expect(Math.min(...low.map((p) => p.rpm))).toBe(2343);
    expect(new Set(high.map((p) => p.rpm))).toEqual(new Set([1171]));
    expect(Math.min(...high.map((p) => p.lead)) - Math.max(...low.map((p) => p.lead))).toBeLessThan(0.02);
  });

  it('takes the lead, not the pitch, of several starts', () => {
    const two = chart(inputs(), [{ key: '2', thread: { kind: 'pitch', pitch: is('1.5', 'mm') }, starts: 2 }]);
    expect(row(two, '2').drive.highest).toBe(338n);
    expect(row(two, '2').lead.mm).toEqual(ratio(3));
  });
});

describe('the spindle’s own speeds', () => {
  it('are named where the drive follows and the chuck bears them', () => {
    expect(row(A, '1').own).toEqual({ kind: 'speed', rpm: ratio(900) });
    expect(row(A, '2').own).toEqual({ kind: 'speed', rpm: ratio(480) });
    expect(row(A, '6').own).toEqual({ kind: 'speed', rpm: ratio(130) });
    const slow = chart(inputs({ motorMaxRpm: is('200', 'rpm') }), pitches('6'));
    expect(row(slow, '6').own).toEqual({ kind: 'none' });
  });
  it('a chuck not known leaves none of them known', () => {
    expect(row(chart(inputs({ chuckMaxRpm: null }), pitches('1')), '1').own).toEqual({ kind: 'not-known' });
    expect(row(chart(inputs({ spindleSpeeds: null }), pitches('1')), '1').own).toEqual({ kind: 'not-known' });
  });
  it('a range has ends', () => {
    const c = chart(
      inputs({ spindleDrive: 'range', spindleMin: is('40', 'rpm'), spindleMax: is('1800', 'rpm') }),
      pitches('1'),
    );
    expect(c.own).toEqual({ kind: 'range', rpm: [ratio(40), ratio(1800)] });
    expect(row(c, '1').own).toEqual({ kind: 'no-speeds' });
  });
});

describe('what a groove leaves', () => {
  // Half-width 0.92·tan 30° = 0.53, creep 0.92·tan 29.5° = 0.52, margin 0.5: of 2.5 mm 0.95 are left (by hand).
  it('0.95 of 2.5 mm at P 1.5', () => {
    const room = grooveRoom('iso-4755', ratio(3, 2));
    expect([room?.depth, room?.tool, room?.creep].map((x) => x?.toFixed(2))).toEqual([
      '0.92',
      '0.53',
      '0.52',
    ]);
    expect(room?.usable).toEqual(ratio(948, 1000));
  });
  it('allows 50 rpm at P 1.5, 31 at P 1 and nothing at P 0.5, whatever the drive can do', () => {
    const at = (id: GrooveId) =>
      ['iso-coarse:M10', 'iso-coarse:M6', 'iso-coarse:M3'].map((t) => groove(A, t, id));
    expect(at('iso-4755')).toEqual([50, 31, 'nothing-left']);
    // DIN 76-1 g1 3.2, 2.1, 1.1 and 1.8, 1.1, 0.5 (from memory) less 1.552, 1.201, 0.851: 1.648 mm is 87.9 rpm, 0.249 mm 39.8.
    expect(at('din-76-a')).toEqual([87, 71, 39]);
    expect(at('din-76-b')).toEqual([13, 'nothing-left', 'nothing-left']);
  });
  it('is for ISO metric threads alone', () => {
    expect(groove(A, 'unc:1/2-13', 'iso-4755')).toBe('no-groove');
    expect(groove(A, 'tr:Tr20x4', 'iso-4755')).toBe('no-groove');
    // A bare pitch says nothing of its form.
    expect(groove(A, '1.5', 'iso-4755')).toBe('no-groove');
  });
  it('is drawn at the standard’s pitches, rising, and far below the drive', () => {
    const iso = A.grooves.find((g) => g.id === 'iso-4755')?.points ?? [];
    expect(iso.find((p) => p.lead === 1.5)?.rpm).toBe(50);
    expect(iso.find((p) => p.lead === 1)?.rpm).toBe(31);
    expect(iso.some((p) => p.lead <= 0.5)).toBe(false);
    for (const p of iso) {
      // 60·w ÷ (P·0.5·1.5).
      const room = grooveRoom('iso-4755', ratio(Math.round(p.lead * 100), 100))?.usable;
      const w = Number(room?.n ?? 0) / Number(room?.d ?? 1);
      expect(p.rpm).toBe(Math.floor((60 * w) / (p.lead * 0.75) + 1e-9));
    }
    for (const id of ['iso-4755', 'din-76-a', 'din-76-b'] as const) {
      const speeds = (A.grooves.find((g) => g.id === id)?.points ?? []).map((p) => p.rpm);
      expect(Math.max(...speeds)).toBeLessThan(169);
    }
  });
  it('never allows more than the drive follows', () => {
    const slow = chart(inputs({ motorMaxRpm: is('20', 'rpm') }), named('iso-coarse:M10'));
    // 0.8·20·3.175 ÷ (2·1.5) = 16.9.
    expect(groove(slow, 'iso-coarse:M10', 'iso-4755')).toBe(16);
  });
  it('for two starts the same groove is half as long in time', () => {
    const two = chart(inputs(), [
      { key: 'M10', thread: { kind: 'catalogue', id: 'iso-coarse:M10' }, starts: 2 },
    ]);
    // 60·0.948 ÷ (3·0.75) = 25.3.
    expect(groove(two, 'M10', 'iso-4755')).toBe(25);
  });
  it('a room entered has its own line and column', () => {
    const c = chart(inputs({}, '2.5'), named('iso-coarse:M10'));
    // 60·2.5 ÷ (L·0.75) = 200 ÷ L.
    for (const p of c.entered ?? []) expect(p.rpm).toBe(Math.floor(200 / p.lead));
    expect(row(c, 'iso-coarse:M10').entered).toMatchObject({ kind: 'highest', rpm: 133n });
    expect(A.entered).toBeNull();
    expect(row(A, 'iso-coarse:M10').entered).toBeNull();
  });
});

describe('what is not known', () => {
  const threads = named('iso-coarse:M10');
  it('a stopping time not known leaves no line and no number', () => {
    const c = chart(inputs({ wholeStopTime: null }, '2.5'), threads);
    expect(c.grooves).toEqual([]);
    expect(c.entered).toBeNull();
    expect(c.stopMissing).toEqual(['machine.wholeStopTime']);
    expect(groove(c, 'iso-coarse:M10', 'iso-4755')).toBe('not-known');
    expect(row(c, 'iso-coarse:M10').entered?.kind).toBe('not-known');
    // The drive is known all the same.
    expect(row(c, 'iso-coarse:M10').drive.highest).toBe(677n);
  });
  it.each(['motorMaxRpm', 'counterMaxEdges', 'controllerMaxSteps', 'carriageMax', 'encoderMaxRpm'] as const)(
    '%s: its line is left out and named, no ceiling, no speed',
    (field) => {
      const c = chart(inputs({ [field]: null }, '2.5'), threads);
      expect(c.unknown.flatMap((l) => l.missing)).toContain(`machine.${field}`);
      expect(c.lines.map((l) => l.id)).not.toContain(c.unknown[0]?.id);
      expect(c.ceiling).toEqual([]);
      expect(c.crossings).toEqual([]);
      const r = row(c, 'iso-coarse:M10');
      expect(r.drive.highest).toBeNull();
      expect(r.own.kind).toBe('not-known');
      expect([...Object.values(r.grooves), r.entered].map((a) => a?.kind)).toEqual(
        Array(4).fill('not-known'),
      );
    },
  );
  it('a chuck not known takes the number from every groove, not from the drive', () => {
    const c = chart(inputs({ chuckMaxRpm: null }), threads);
    expect(groove(c, 'iso-coarse:M10', 'iso-4755')).toBe('not-known');
    expect(row(c, 'iso-coarse:M10').drive.highest).toBe(677n);
    expect(c.unknown.map((l) => l.id)).toEqual(['chuck']);
  });
  it('a ramp test answers up to its own lead, and the ceiling ends there', () => {
    const gap = { encoderMaxChannel: null };
    const made = inputs(gap);
    const record = {
      id: 'r',
      item: RAMP_TEST,
      answer: 'done',
      at: QUIET.now - 1000,
      day: QUIET.day,
      hours: null,
      inputs: { ...snapshot(made, RAMP_RULE.reads), [RAMP_LEAD]: '3/2' },
      rule: RAMP_RULE.version,
      reading: ratio(400),
      cut: null,
    } as const;
    const c = chart(inputs(gap, null, { records: [record] }), pitches('1.5', '2'));
    expect(c.unknown).toEqual([]);
    expect(c.byRecord.map((l) => l.id)).toEqual(['encoder-channel']);
    expect(row(c, '1.5').drive.highest).toBe(400n);
    expect(row(c, '2').drive.highest).toBeNull();
    const leads = c.ceiling.flatMap((s) => s.points).map((p) => p.lead);
    expect(Math.max(...leads)).toBeLessThanOrEqual(1.5);
  });
  it('change gears have the lines of carriage, screw and chuck, and no electronics', () => {
    const c = chart(inputs({ driveKind: 'change-gears' }), threads);
    expect(c.lines.map((l) => l.id)).toEqual(['carriage', 'whip', 'chuck']);
  });
});
