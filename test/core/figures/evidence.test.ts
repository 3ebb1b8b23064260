import { describe, expect, it } from 'vitest';
import { rampCovers, RAMP_LEAD, RAMP_RULE, RAMP_TEST, limitStanding } from '../../../src/core/figures';
import { EVENT_KINDS, snapshot, type CheckRecord, type Context } from '../../../src/core/context';
import { ratio } from '../../../src/core/quantity';
import { is, pitchJob, PROFILE_A, QUIET, rpm, sheet } from './support';

const DAY = 86_400_000;
const base = sheet().inputs;
const record = (over: Partial<CheckRecord> = {}, lead: string | null = '3/2'): CheckRecord => ({
  id: 'r',
  item: RAMP_TEST,
  answer: 'done',
  at: QUIET.now - DAY,
  day: '2027-01-14',
  hours: null,
  inputs: { ...snapshot(base, RAMP_RULE.reads), ...(lead === null ? {} : { [RAMP_LEAD]: lead }) },
  rule: RAMP_RULE.version,
  reading: rpm(400),
  cut: null,
  ...over,
});
const covers = (records: CheckRecord[], lead = ratio(3, 2), context: Partial<Context> = {}) =>
  rampCovers({ ...base, context: { ...QUIET, ...context, records } }, lead);

describe('what a ramp record covers', () => {
  it('its own lead and every smaller one, to the hair', () => {
    expect(covers([record()])).toEqual(rpm(400));
    expect(covers([record()], ratio(1, 10))).toEqual(rpm(400));
    expect(covers([record()], ratio(1_500_001, 1_000_000))).toBeNull();
    expect(covers([record({}, '254/115')], ratio(254, 115))).toEqual(rpm(400));
  });

  it('nothing without a record, a pass, a reading, or a lead that can be read', () => {
    expect(covers([])).toBeNull();
    expect(covers([record({ answer: 'not-ok' })])).toBeNull();
    expect(covers([record({ reading: null })])).toBeNull();
    for (const lead of [null, '', '3', '3/0', '-3/2', '3/2/1x', '1.5', '1e9/1', '/2', '3/'])
      expect([lead, covers([record({}, lead)])]).toEqual([lead, null]);
    expect(covers([record({ item: 'torque' })])).toBeNull();
  });

  it('the newest counts, passed or failed, and an older one never comes back', () => {
    const slow = record({ reading: rpm(200) });
    expect(covers([record(), slow])).toEqual(rpm(200));
    expect(covers([slow, record()])).toEqual(rpm(400));
    expect(covers([record(), record({ answer: 'not-ok' })])).toBeNull();
    expect(covers([record({}, '6/1'), record({}, '1/1')])).toBeNull();
  });

  it('lapses after 180 days, and not the millisecond before', () => {
    const at = (ago: number) => covers([record({ at: QUIET.now - ago })]);
    expect(at(180 * DAY - 1)).toEqual(rpm(400));
    expect(at(180 * DAY)).toBeNull();
  });

  it('is not known to hold when the clock went back, or the rule was corrected', () => {
    expect(covers([record({ at: QUIET.now + 1 })])).toBeNull();
    expect(covers([record({ rule: RAMP_RULE.version - 1 })])).toBeNull();
  });

  it('lapses after work on wiring, firmware, driver or belt and after a crash; not after what leaves the drive alone', () => {
    const after = EVENT_KINDS.filter(
      (kind) => covers([record()], ratio(1), { events: [{ kind, at: QUIET.now - 1 }] }) === null,
    );
    expect([...after].sort()).toEqual(['belt', 'crash', 'driver', 'firmware', 'wiring']);
    const before = { events: [{ kind: 'wiring', at: QUIET.now - 2 * DAY }] } as const;
    expect(covers([record()], ratio(1), before)).toEqual(rpm(400));
  });

  it('lapses when any one of the things it rests on is changed or forgotten', () => {
    for (const path of RAMP_RULE.reads) {
      const field = path.slice(8) as keyof typeof PROFILE_A;
      const machine = { ...base.machine, [field]: PROFILE_A[field] ? null : is('2', 'count') };
      const inputs = { ...base, machine, context: { ...QUIET, records: [record()] } };
      expect([path, rampCovers(inputs, ratio(1))]).toEqual([path, null]);
    }
    const idle = { ...base, machine: { ...base.machine, chuckMaxRpm: null, carriageMax: null, name: 'B' } };
    expect(rampCovers({ ...idle, context: { ...QUIET, records: [record()] } }, ratio(1))).toEqual(rpm(400));
  });
});

describe('what the record does to the speed', () => {
  const gaps = { carriageMax: null, encoderMaxChannel: null, encoderMaxRpm: null };
  const job = pitchJob('1.5', { room: is('25', 'mm'), rpm: rpm(100) });

  it('answers for the supporting limits that aren’t known, and is the highest speed where it is the least', () => {
    expect(sheet(gaps, job).get('speed').value?.job.highest).toBeNull();
    const v = sheet(gaps, job, { records: [record()] }).get('speed');
    expect([v.value?.job.highest, v.value?.job.binds?.need, v.standing, v.missing]).toEqual([
      400n,
      'supporting',
      'within',
      [],
    ]);
    const half = sheet(gaps, job, { records: [record({ reading: ratio(801, 2) })] }).get('speed').value;
    expect(half?.job.highest).toBe(400n);
  });

  it('over its speed is over, with no near before it', () => {
    const l = sheet(gaps, job, { records: [record()] })
      .get('limits')
      .value?.find((x) => x.id === 'carriage');
    if (!l) throw new Error('no carriage limit');
    expect([l.limit, l.answeredTo]).toEqual([null, rpm(400)]);
    expect([399, 400, 401].map((n) => limitStanding(l, rpm(n)))).toEqual(['within', 'within', 'over']);
  });

  it('never loosens a limit that is known', () => {
    const s = sheet({ carriageMax: is('5', 'mm/s') }, job, { records: [record({ reading: rpm(2000) })] });
    const l = s.get('limits').value?.find((x) => x.id === 'carriage');
    expect([l?.within, l?.answeredTo]).toEqual([200n, null]);
    expect(s.get('speed').value?.job.highest).toBe(200n);
  });

  it('never answers for a required limit', () => {
    for (const field of [
      'controllerMaxSteps',
      'counterMaxEdges',
      'motorMaxRpm',
      'chuckMaxRpm',
      'wholeStopTime',
    ] as const) {
      const v = sheet({ [field]: null }, job, { records: [record()] }).get('speed');
      expect([field, v.value?.job.highest, v.standing, v.missing]).toEqual([
        field,
        null,
        'unknown',
        [`machine.${field}`],
      ]);
    }
  });
});
