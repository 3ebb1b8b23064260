import { describe, expect, it } from 'vitest';
import {
  limitStanding,
  RAMP_LEAD,
  RAMP_RULE,
  RAMP_TEST,
  standingOf,
  worst,
  type LimitId,
  type LimitReading,
} from '../../../src/core/figures';
import { snapshot, type CheckRecord } from '../../../src/core/context';
import { FIELD_NAMES, FIELDS, type FieldName, type MachineProfile } from '../../../src/core/machine';
import { ARRANGEMENT } from '../../../src/core/prove/stops';
import { ratio } from '../../../src/core/quantity';
import { is, pitchJob, PROFILE_A, QUIET, rpm, sheet } from './support';

const limit = (s: ReturnType<typeof sheet>, id: LimitId): LimitReading => {
  const found = s.get('limits').value?.find((l) => l.id === id);
  if (!found) throw new Error(`no limit ${id}`);
  return found;
};

/**
 * Highest speeds for one machine, worked out by hand with a calculator from 60·f/K and the like (own calculation): step
 * rate, motor, edges at 0.8 of their limit, carriage at its limit, stopping room for ISO 4755's narrow groove.
 */
const TABLE: readonly (readonly [string, number, number, number, number, string, number])[] = [
  ['0.5', 4762, 2032, 2343, 3000, '0.8', 128],
  ['1', 2381, 1016, 2343, 1500, '1.6', 128],
  ['1.5', 1587, 677, 2343, 1000, '2.5', 133],
  ['2', 1190, 508, 2343, 750, '3.4', 136],
  ['3', 793, 338, 2343, 500, '5.2', 138],
  ['6', 396, 169, 2343, 250, '11', 146],
];

describe('the limits of one machine over pitch', () => {
  it.each(TABLE)('%s mm', (pitch, step, motor, edge, carriage, room, stopping) => {
    const s = sheet({}, pitchJob(pitch, { room: is(room, 'mm') }));
    const of = (id: LimitId) => Number(limit(s, id).within);
    // The table is printed to the nearest; a speed is never rounded up past a limit.
    expect([of('step-rate'), of('motor-speed'), of('counter'), of('carriage'), of('stopping-room')]).toEqual([
      step,
      motor,
      edge,
      carriage,
      stopping,
    ]);
  });
});

describe('standing', () => {
  it('is within up to the margin, near up to the limit, over beyond it', () => {
    const at = (demand: number) => standingOf(ratio(demand), ratio(100), ratio(4, 5));
    expect([80, 81, 100, 101].map(at)).toEqual(['within', 'near', 'near', 'over']);
  });
  it('of several is the worst, and never fine with an unknown or an over', () => {
    expect(worst(['within', 'near'])).toBe('near');
    expect(worst(['within', 'unknown', 'near'])).toBe('unknown');
    expect(worst(['unknown', 'over', 'within'])).toBe('over');
    expect(worst([])).toBe('unknown');
  });
  it('at 677 rpm the motor is within, at 678 near, at 847 over', () => {
    const l = limit(sheet(), 'motor-speed');
    expect([677, 678, 846, 847].map((n) => limitStanding(l, rpm(n)))).toEqual([
      'within',
      'near',
      'near',
      'over',
    ]);
  });
});

describe('the verdict', () => {
  const known = pitchJob('1.5', { room: is('2.5', 'mm') });
  it('names what binds and what comes next', () => {
    const v = sheet({}, known).get('speed').value;
    expect([v?.job.highest, v?.job.binds?.id, v?.job.next?.id]).toEqual([
      133n,
      'stopping-room',
      'motor-speed',
    ]);
    expect([v?.drive.highest, v?.drive.binds?.id]).toEqual([677n, 'motor-speed']);
  });
  it('has no speed for the job while the stopping room is not known, whatever the drive can do', () => {
    const v = sheet({}, pitchJob('1.5', { rpm: rpm(100) })).get('speed').value;
    expect(v?.job.highest).toBeNull();
    expect(v?.drive.highest).toBe(677n);
    expect([v?.standing, v?.driveStanding]).toEqual(['unknown', 'within']);
    expect(v?.fastest).toBeNull();
    expect(v?.fastestDrive).toEqual(rpm(480));
  });
  it('finds the fastest of the spindle’s own speeds that is within everything', () => {
    const v = sheet({}, known).get('speed').value;
    expect(v?.fastest).toEqual(rpm(130));
    expect(v?.own.map((s) => s.standing)).toEqual(['within', 'within', 'over', 'over', 'over']);
  });
  it('shows over and unknown beside each other', () => {
    const s = sheet({ counterMaxEdges: null }, { ...known, rpm: rpm(900) });
    const v = s.get('speed').value;
    expect(v?.standing).toBe('over');
    expect(v?.atSet?.filter((x) => x.standing === 'unknown').map((x) => x.limit.id)).toEqual([
      'counter',
      'edge-gap',
    ]);
  });
  it('rounds a π lead towards safety', () => {
    // Carriage 25 mm/s, lead π mm: 60 × 25 ÷ π = 477.46 rpm.
    const worm = { ...known, thread: { kind: 'pitch', pitch: is('1', 'module') } } as const;
    expect(limit(sheet({}, worm), 'carriage').within).toBe(477n);
  });
  it('uses the lead of a multi-start thread', () => {
    expect(limit(sheet({}, { ...known, starts: 2 }), 'motor-speed').within).toBe(338n);
  });
});

describe('what is not known', () => {
  it('an even spread of pulses has no bursts; not knowing it keeps them', () => {
    const ids = (m: Partial<MachineProfile>) =>
      sheet(m)
        .get('limits')
        .value?.map((l) => l.id) ?? [];
    expect(ids({ pulseTiming: 'spread' })).not.toContain('burst');
    expect(ids({ pulseTiming: null })).toContain('burst');
  });
  it('the step input is known by its frequency or its pulse times, the tighter one', () => {
    expect(limit(sheet({ stepInputMax: null }), 'step-input').limit).toEqual(ratio(200_000));
    expect(limit(sheet({ pulseHigh: null }), 'step-input').limit).toEqual(ratio(200_000));
    expect(limit(sheet({ stepInputMax: is('50', 'kHz') }), 'step-input').limit).toEqual(ratio(50_000));
    expect(limit(sheet({ stepInputMax: null, pulseLow: null }), 'step-input').limit).toBeNull();
  });
  it('names exactly the missing fields', () => {
    expect(limit(sheet({ counterMaxEdges: null }), 'counter').missing).toEqual(['machine.counterMaxEdges']);
    expect(limit(sheet({ screwPulley: null }), 'motor-speed').missing).toEqual(['machine.screwPulley']);
    expect(limit(sheet(), 'stopping-room').missing).toEqual(['job.room']);
  });

  /** Fields without which every limit of this machine is still known, and why. */
  const NOT_NEEDED: Partial<Record<FieldName, string>> = {
    stepInputMax: 'the pulse times say the same',
    pulseHigh: 'the step frequency says the same',
    pulseLow: 'the step frequency says the same',
    pulseTiming: 'not known counts as pulses on each edge',
    servoPulses: 'a stepper has none',
    spindleMin: 'the spindle has fixed speeds',
    spindleMax: 'the spindle has fixed speeds',
  };
  const NO_LIMIT = [
    'name',
    'workshop',
    'colour',
    'notes',
    'gearboxLever',
    'halfNut',
    'threadDial',
    'dialTeeth',
  ];
  const NO_LIMIT_TOO = ['dialLines', 'overload', 'ratioHeld', 'ratioTopMax', 'ratioBottomMax'];
  // A servo's, or a way that does as well as the motor's data.
  const NO_LIMIT_EITHER = [
    ...['backlash', 'chuckMount', 'motorPeak', 'torqueCurve'],
    ...['servoEncoder', 'servoGearMax', 'ratioDigits', 'ratioBits', 'coast'],
  ];
  const NO_LIMIT_OF_STOP: readonly FieldName[] = ARRANGEMENT;
  const GEARS = FIELD_NAMES.filter((f) => ['gears', 'dials'].includes(FIELDS[f].group));
  const limited = FIELD_NAMES.filter(
    (f) => ![...NO_LIMIT, ...NO_LIMIT_TOO, ...NO_LIMIT_EITHER, ...NO_LIMIT_OF_STOP, ...GEARS].includes(f),
  );
  it.each(limited.filter((f) => FIELD_NAMES.includes(f) && PROFILE_A[f] !== undefined))(
    'without %s the highest speed for the job is not known, or it is said why it is',
    (field) => {
      const v = sheet({ [field]: null }, pitchJob('1.5', { room: is('2.5', 'mm') })).get('speed').value;
      if (NOT_NEEDED[field]) expect(v?.job.highest).not.toBeNull();
      else expect(v?.job.highest).toBeNull();
    },
  );
});

describe('a ramp test answers for supporting limits', () => {
  const record = (inputs: ReturnType<typeof sheet>['inputs'], lead: string, to: number): CheckRecord => ({
    id: 'r',
    item: RAMP_TEST,
    answer: 'done',
    at: QUIET.now - 1000,
    day: QUIET.day,
    hours: null,
    inputs: { ...snapshot(inputs, RAMP_RULE.reads), [RAMP_LEAD]: lead },
    rule: RAMP_RULE.version,
    reading: rpm(to),
    cut: null,
  });
  const gap = { encoderMaxChannel: null } as const;
  const with_ = (r: CheckRecord, machine: Partial<MachineProfile> = gap, more = {}) =>
    limit(sheet(machine, pitchJob('1.5'), { records: [r], ...more }), 'encoder-channel');
  const made = record(sheet(gap).inputs, '3/2', 400);

  it('at its lead and below, up to its speed', () => {
    const l = with_(made);
    expect(l.within).toBeNull();
    expect([400, 401].map((n) => limitStanding(l, rpm(n)))).toEqual(['within', 'over']);
  });
  it('not at a larger lead', () => {
    expect(limitStanding(with_(record(sheet(gap).inputs, '5/4', 400)), rpm(100))).toBe('unknown');
  });
  it('not after the drive was changed, nor after its interval, nor when it failed', () => {
    expect(limitStanding(with_(made, { ...gap, microsteps: is('8', 'times') }), rpm(100))).toBe('unknown');
    expect(limitStanding(with_({ ...made, at: QUIET.now - 181 * 86_400_000 }), rpm(100))).toBe('unknown');
    expect(limitStanding(with_({ ...made, answer: 'not-ok' }), rpm(100))).toBe('unknown');
    const events = [{ kind: 'wiring', at: QUIET.now - 10 }] as const;
    expect(limitStanding(with_(made, gap, { events }), rpm(100))).toBe('unknown');
  });
  it('never for a required limit', () => {
    const l = limit(sheet({ counterMaxEdges: null }, pitchJob('1.5'), { records: [made] }), 'counter');
    expect(limitStanding(l, rpm(100))).toBe('unknown');
  });
});
