import { describe, expect, it } from 'vitest';
import { checkState, itemById, type ItemId } from '../../../src/core/checks';
import { is, record, sheetOf, stateAfter, type Parts } from './support';

/** The state and reason of an item recorded with a reading, all else known (Heron, M10, 160 rpm). */
const judged = (id: ItemId, reading: ReturnType<typeof is>, parts: Parts = {}) => {
  const s = stateAfter(id, parts, parts, reading);
  return [s.state, s.finding?.why];
};
const WITHIN = ['done', 'reading-within'];

describe('readings held to what this job needs', () => {
  it('gap: 1.5 mm × 160/60 × 0.5 s × 1.5 = 3 mm (s = v·t with a safety factor)', () => {
    expect(judged('gap', is('3', 'mm'))).toEqual(WITHIN);
    expect(judged('gap', is('2.999', 'mm'))).toEqual(['failed', 'reading-low']);
    expect(judged('gap', is('0.12', 'in'))).toEqual(WITHIN);
    expect(judged('gap', is('0.118', 'in'))).toEqual(['failed', 'reading-low']);
    expect(judged('gap', is('50', 'mm'), { machine: { wholeStopTime: null } })).toEqual([
      'unknown',
      'inputs-missing',
    ]);
  });

  it('run-in: backlash 0.12 + three pitches of 1.5 = 4.62 mm; three pitches, not leads, with two starts', () => {
    expect(judged('run-in', is('4.62', 'mm'))).toEqual(WITHIN);
    expect(judged('run-in', is('4.61', 'mm'))).toEqual(['failed', 'reading-low']);
    expect(judged('run-in', is('4.62', 'mm'), { job: { starts: 2 } })).toEqual(WITHIN);
    expect(judged('run-in', is('100', 'mm'), { machine: { backlash: null } })).toEqual([
      'unknown',
      'inputs-missing',
    ]);
  });

  it('whole stopping time: longer than planned is too much, and a longer plan puts it right without a new test', () => {
    expect(judged('stop-time', is('500', 'ms'))).toEqual(WITHIN);
    expect(judged('stop-time', is('501', 'ms'))).toEqual(['failed', 'reading-high']);
    const replanned = stateAfter(
      'stop-time',
      {},
      { machine: { wholeStopTime: is('0.6', 's') } },
      is('0.55', 's'),
    );
    expect(replanned.state).toBe('done');
  });

  it('backlash and end float: no more than the 0.12 mm entered', () => {
    for (const id of ['backlash', 'end-float'] as const) {
      expect(judged(id, is('0.12', 'mm'))).toEqual(WITHIN);
      expect(judged(id, is('0.13', 'mm'))).toEqual(['failed', 'reading-high']);
      expect(judged(id, is('0.01', 'mm'), { machine: { backlash: null } })[0]).toBe('unknown');
    }
  });

  it('blank M10 6g: 9.732 to 9.968 mm (ISO 965-2:1998, table of limits for external threads)', () => {
    expect(judged('blank', is('9.732', 'mm'))).toEqual(WITHIN);
    expect(judged('blank', is('9.968', 'mm'))).toEqual(WITHIN);
    expect(judged('blank', is('9.731', 'mm'))).toEqual(['failed', 'reading-low']);
    expect(judged('blank', is('9.969', 'mm'))).toEqual(['failed', 'reading-high']);
    const bare = { job: { thread: { kind: 'pitch', pitch: is('1.5', 'mm') } } } as const;
    expect(judged('blank', is('40', 'mm'), bare)).toEqual(['done', undefined]);
  });

  it('blank 1/2-13 UNC 2A: 0.4876 to 0.4985 in, also read in millimetres (ASME B1.1, limits of size)', () => {
    const unc = { job: { thread: { kind: 'catalogue', id: 'unc:1/2-13' } } } as const;
    expect(judged('blank', is('0.4985', 'in'), unc)).toEqual(WITHIN);
    expect(judged('blank', is('0.4986', 'in'), unc)).toEqual(['failed', 'reading-high']);
    expect(judged('blank', is('12.661', 'mm'), unc)).toEqual(WITHIN);
    expect(judged('blank', is('0.4875', 'in'), unc)).toEqual(['failed', 'reading-low']);
  });

  it('ten turns of 1200 lines × 4 edges: 48 000 counts, a mark’s width apart; lines taken for counts stand out', () => {
    expect(judged('ten-turns', is('48000', 'count'))).toEqual(WITHIN);
    expect(judged('ten-turns', is('48008', 'count'))).toEqual(WITHIN);
    expect(judged('ten-turns', is('47991', 'count'))).toEqual(['failed', 'reading-low']);
    expect(judged('ten-turns', is('12000', 'count'))[0]).toBe('failed');
    expect(stateAfter('ten-turns', {}, {}, null).state).toBe('done');
  });

  it('drift: a single count at rest is a fault', () => {
    expect(judged('drift', is('0', 'count'))).toEqual(WITHIN);
    expect(judged('drift', is('1', 'count'))).toEqual(['failed', 'reading-high']);
  });

  it('wires for 60°: 0.56 to 0.90 of the pitch, 0.84 to 1.35 mm at 1.5 mm; 55° is not judged', () => {
    expect(judged('gauge', is('0.84', 'mm'))).toEqual(WITHIN);
    expect(judged('gauge', is('0.866', 'mm'))).toEqual(WITHIN);
    expect(judged('gauge', is('0.83', 'mm'))).toEqual(['failed', 'reading-low']);
    expect(judged('gauge', is('1.36', 'mm'))).toEqual(['failed', 'reading-high']);
    const whitworth = { job: { thread: { kind: 'catalogue', id: 'bsw:1/2-12' } } } as const;
    expect(judged('gauge', is('0.1', 'mm'), whitworth)).toEqual(['done', undefined]);
  });

  it('torque: close beyond half of pull-out, too much beyond all of it', () => {
    expect(judged('torque', is('50', 'percent'))).toEqual(WITHIN);
    expect(judged('torque', is('51', 'percent'))).toEqual(['done', 'reading-close']);
    expect(judged('torque', is('101', 'percent'))).toEqual(['failed', 'reading-high']);
  });

  it('groove: never narrower than the stopping room said to be in it', () => {
    expect(judged('groove', is('4', 'mm'))).toEqual(WITHIN);
    expect(judged('groove', is('3.9', 'mm'))).toEqual(['failed', 'reading-low']);
  });
});

describe('the ramp test', () => {
  const ramp = (parts: Parts, after: Parts = parts) => {
    const s = stateAfter('ramp-test', parts, after, is('200', 'rpm'));
    return [s.state, s.finding?.why];
  };
  const starts = (n: number): Parts => ({ job: { starts: n } });

  it('covers its own lead and smaller ones, not larger ones', () => {
    expect(ramp({})).toEqual(['done', 'ramp-covers']);
    expect(ramp(starts(2), {})).toEqual(['done', 'ramp-covers']);
    expect(ramp({}, starts(2))).toEqual(['unknown', 'ramp-lead-larger']);
  });

  it('covers speeds up to the one it reached', () => {
    const faster = { job: { rpm: is('201', 'rpm').value } };
    const reached = { job: { rpm: is('200', 'rpm').value } };
    expect(ramp({}, reached)).toEqual(['done', 'ramp-covers']);
    expect(ramp({}, faster)).toEqual(['failed', 'ramp-below-speed']);
    expect(ramp({}, { job: { rpm: null } })).toEqual(['unknown', 'inputs-missing']);
  });

  it('leaves the torque margin to be answered by a figure where it doesn’t cover', () => {
    const made = record(itemById('ramp-test'), sheetOf(), 'done', is('100', 'rpm'));
    const torque = checkState(itemById('torque'), sheetOf({ context: { records: [made] } }));
    expect([torque.state, torque.answerable]).toEqual(['not-done', true]);
  });
});

describe('what answers itself', () => {
  const found = (id: ItemId, parts: Parts = {}) => {
    const s = checkState(itemById(id), sheetOf(parts));
    return [s.state, s.finding?.why, s.finding?.limit, s.answerable];
  };

  it('speed limits name the one that binds', () => {
    expect(found('drive-limits')).toEqual(['done', 'limits-kept', expect.anything(), false]);
    // 1.5/3 × 3 motor revs a spindle rev: 900 motor rpm are passed above 600 rpm.
    expect(found('drive-limits', { job: { rpm: is('601', 'rpm').value } }).slice(0, 3)).toEqual([
      'failed',
      'limits-broken',
      'motor-speed',
    ]);
    expect(found('drive-limits', { machine: { motorMaxRpm: null } }).slice(0, 3)).toEqual([
      'unknown',
      'limits-not-known',
      'motor-speed',
    ]);
    expect(found('chuck-limit', { machine: { chuckMaxRpm: is('150', 'rpm') } }).slice(0, 3)).toEqual([
      'failed',
      'limits-broken',
      'chuck',
    ]);
    expect(found('drive-limits', { job: { rpm: null } }).slice(0, 2)).toEqual(['unknown', 'inputs-missing']);
  });

  it('an unknown gate holds a physical check open, and says what is missing', () => {
    const s = stateAfter('nut-rule', {}, { machine: { dialTeeth: null } });
    expect([s.state, s.answerable, s.finding?.missing]).toEqual(['unknown', false, ['machine.dialTeeth']]);
    // An emergency stop is of category 0 or 1, which both take the power away: IEC 60204-1, 9.2.3.4.2.
    expect(found('stop-at-rest', { machine: { stopCuts: 'input' } })[1]).toBe('stop-by-software');
    expect(found('stop-at-rest', { machine: { stopCuts: 'input' } })[0]).toBe('failed');
    expect(found('stop-at-rest', { machine: { stopCuts: 'enable' } })[0]).not.toBe('failed');
    expect(found('stop-at-rest', { machine: { stopCuts: 'none' } }).slice(0, 2)).toEqual([
      'failed',
      'no-stop-fitted',
    ]);
    expect(
      stateAfter('overload', { machine: { overload: 'none' } }, { machine: { overload: 'none' } }),
    ).toMatchObject({
      state: 'done',
      standing: 'near',
    });
  });

  it('a ratio that can’t be held closely enough fails by itself', () => {
    // π × 1 mm on this machine is 5π/12 = 1.30900 steps a count; the nearest of one digit each is 9/7, 1.8 % off.
    const worm = { kind: 'pitch', pitch: is('1', 'module') } as const;
    const machine = { ratioTopMax: is('9', 'count'), ratioBottomMax: is('9', 'count') };
    expect(found('ratio-held', { job: { thread: worm }, machine }).slice(0, 2)).toEqual([
      'failed',
      'ratio-off',
    ]);
    expect(found('ratio-held')[1]).toBe('ratio-exact');
  });

  it('never throws, whatever stands in the inputs', () => {
    const broken = sheetOf({ machine: { screwPitch: is('0', 'tpi') } });
    expect(checkState(itemById('ratio-held'), broken).state).toBe('unknown');
    expect(checkState(itemById('nut-rule'), broken).state).toBe('unknown');
  });
});
