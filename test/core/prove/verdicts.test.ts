import { describe, expect, it } from 'vitest';
import { COMMISSIONING } from '../../../src/core/context';
import { choicesOf, makeTest, RULES, testsOf, type Decision } from '../../../src/core/prove';
import type { Stated } from '../../../src/core/quantity';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { decide, given, is, test } from './support';
import { inputsOf } from '../checks/support';

/** Heron: 1200 lines × 4 = 4800 counts a turn, screw of 3 mm, 6000 steps a screw turn, 0.5 µm a step; M10, lead 1.5 mm. */
const verdict = ({ result, code }: Decision): string => `${result} ${code}`;
const n = (text: string): Stated => is(text, 'count');
const turns = (text: string): Stated => is(text, 'turns');
const mm = (text: string): Stated => is(text, 'mm');
const rpm = is('160', 'rpm');

describe('the list of tests', () => {
  it('is the fifteen in order; change gears leave out what belongs to motor, encoder and controller', () => {
    expect(testsOf(inputsOf()).map((t) => t.id)).toEqual([...COMMISSIONING]);
    const geared = testsOf(inputsOf({ machine: { driveKind: 'change-gears' } })).map((t) => t.id);
    expect(geared).not.toContain('counts');
    expect(geared).toContain('travel');
    const closed = testsOf(inputsOf({ machine: { halfNut: 'always-closed' } })).map((t) => t.id);
    expect(closed).not.toContain('re-entry');
  });

  it('without a reading decides nothing, and says what it lacks', () => {
    for (const id of COMMISSIONING) {
      const d = decide(id, {});
      expect([id, d.result, d.lacks.length > 0]).toEqual([id, 'undecided', true]);
    }
  });

  it('nothing is ever wedged, and spindle turned by hand is isolated first', () => {
    expect(test('drift').cautions(given({}))).toContain('nothing-wedged');
    for (const id of ['direction', 'counts', 'there-and-back', 'screw-turns', 'screw-travel', 'backlash'])
      expect(test(id).cautions(given({}))[0]).toBe('isolate-spindle');
    expect(test('ramp').cautions(given({}))).toContain('no-reverse');
    expect(test('ramp').cautions(given({}, {}, { chuckMount: 'locked' }))).not.toContain('no-reverse');
  });
});

describe('what is looked at', () => {
  const all = { tension: 'ok', screws: 'ok', teeth: 'ok', 'nut-free': 'ok', 'end-play': 'ok' };
  it('all right, one not, one not looked at', () => {
    expect(verdict(decide('look-over', {}, all))).toBe('passed seen-ok');
    const one = decide('look-over', {}, { ...all, screws: 'not-ok' });
    expect([verdict(one), one.points]).toEqual(['failed seen-not-ok', ['screws']]);
    const { teeth: _, ...rest } = all;
    expect(decide('look-over', {}, rest).lacks).toEqual(['teeth']);
  });

  it('direction: both right, or what to turn round', () => {
    const at = (up: string, to: string) => decide('direction', {}, { 'counts-go': up, 'carriage-goes': to });
    expect(verdict(at('up', 'to-headstock'))).toBe('passed direction-right');
    expect(at('up', 'to-tailstock').points).toEqual(['turn-motor']);
    // Both the wrong way round: the channels are swapped, and with them right the motor follows.
    expect(at('down', 'to-tailstock').points).toEqual(['swap-channels']);
    expect(at('down', 'to-headstock').points).toEqual(['swap-channels', 'turn-motor']);
    expect(at('nowhere', 'nowhere').points).toEqual(['no-counts']);
    expect(at('up', 'nowhere').points).toEqual(['not-enabled']);
    expect(verdict(at('up', 'sideways'))).toBe('undecided lacking');
  });

  it('picking up: ten times on one line', () => {
    const at = (line: string, times: string) => verdict(decide('re-entry', { times: n(times) }, { line }));
    expect(at('one', '10')).toBe('passed one-line');
    expect(at('one', '9')).toBe('undecided too-few-times');
    expect(at('more', '2')).toBe('failed lines-apart');
  });
});

describe('what is counted', () => {
  // 4800 ÷ 600 = 8 counts is what a marked line resolves; by indicator 4800 ÷ 3600, so 2.
  const counts = (text: string, mark = 'line') =>
    decide('counts', { turns: turns('10'), counts: n(text) }, { mark });
  it('counts over ten turns, at both sides of what the mark resolves', () => {
    expect(verdict(counts('48000'))).toBe('passed counts-agree');
    expect(verdict(counts('48008'))).toBe('passed counts-agree');
    expect(verdict(counts('48009'))).toBe('failed counts-differ');
    expect(verdict(counts('47992'))).toBe('passed counts-agree');
    expect(verdict(counts('47991'))).toBe('failed counts-differ');
    expect(verdict(counts('48003', 'indicator'))).toBe('failed counts-differ');
    expect(verdict(counts('48002', 'indicator'))).toBe('passed counts-agree');
    expect(counts('-48001')).toMatchObject({ code: 'counts-backwards', points: ['swap-channels'] });
    // 8 of 48 000 is 167 ppm: 12 000 is a quarter, seen as −750 000 and no finer.
    expect(counts('12000').ppm).toEqual({ kind: 'seen', ppm: -750_000n, uncertainty: 170n });
    expect(counts('48000').settles?.value.n).toBe(167n);
  });

  it('counts per turn that are a fraction stay one: 1000 lines over 50/60 teeth are 10 000/3', () => {
    const machine = {
      encoderLines: is('1000', 'lines'),
      spindlePulley: is('50', 'teeth'),
      encoderPulley: is('60', 'teeth'),
    };
    const d = decide('counts', { turns: turns('10'), counts: n('33333') }, {}, machine);
    expect(verdict(d)).toBe('passed counts-agree');
    expect([d.expected?.value.n, d.expected?.value.d]).toEqual([100_000n, 3n]);
  });

  it('not known lines leave it not known', () => {
    const d = decide('counts', { turns: turns('10'), counts: n('48000') }, {}, { encoderLines: null });
    expect([verdict(d), d.missing]).toEqual(['undecided not-known', ['machine.encoderLines']]);
  });

  it('there and back: nothing left over but what the mark resolves, after a hundred turns', () => {
    const at = (left: string, over = '100') =>
      verdict(decide('there-and-back', { turns: turns(over), counts: n(left) }));
    expect([at('8'), at('-8')]).toEqual(['passed counts-return', 'passed counts-return']);
    expect([at('9'), at('-9')]).toEqual(['failed counts-left', 'failed counts-left']);
    expect(at('0', '99')).toBe('undecided too-few-turns');
    expect(at('50', '99')).toBe('failed counts-left');
  });

  const still = { low: n('0'), middle: n('0'), full: n('0'), switched: n('0') };
  const seen = { inverter: 'fitted', dither: 'one-count' };
  it('drift: none, with one count to and fro; said on the carriage', () => {
    expect(verdict(decide('drift', still, seen))).toBe('passed no-drift');
    expect(verdict(decide('drift', still, { ...seen, dither: 'more' }))).toBe('failed dithers');
    const d = decide('drift', { ...still, full: n('-3') }, seen);
    // 3 × 1.5 ÷ 4800 mm.
    expect([verdict(d), d.difference?.value.n, d.difference?.value.d]).toEqual(['failed drifted', 3n, 3200n]);
    expect(decide('drift', { ...still, switched: n('1') }, seen).points[0]).toBe('contactors');
    expect(decide('drift', { switched: n('0') }, seen).lacks).toEqual(['low', 'middle', 'full']);
    expect(verdict(decide('drift', { switched: n('0') }, { ...seen, inverter: 'none' }))).toBe(
      'passed no-drift',
    );
  });

  it('screw turns are exact whatever the screw: 10 turns at 1.5 on 3 mm are 5', () => {
    const at = (screw: string) => decide('screw-turns', { spindle: turns('10'), screw: turns(screw) });
    // (1 + ½) ÷ 600 = 0.0025 turn is what the two marks resolve.
    expect(verdict(at('5'))).toBe('passed turns-agree');
    expect(verdict(at('5.0025'))).toBe('passed turns-agree');
    expect(verdict(at('5.0026'))).toBe('failed turns-differ');
    expect(verdict(at('10'))).toBe('failed turns-differ');
    expect(test('screw-turns').readings(given({}))[0]?.suggest).toEqual(['2']);
  });

  it('screw turns on an inch screw: 127 spindle turns of 1.5 mm are 60 of 8 tpi', () => {
    const bittern = { ...EXAMPLES.bittern() };
    expect(test('screw-turns').readings(given({}, {}, bittern))[0]?.suggest).toEqual(['127']);
    const d = decide('screw-turns', { spindle: turns('127'), screw: turns('60') }, {}, bittern);
    expect([verdict(d), d.difference?.value.n]).toEqual(['passed turns-agree', 0n]);
  });
});

describe('what is measured', () => {
  // Readout: steps of 5 µm and ±10 µm are 12.3 µm (k = 2).
  const travel = (got: string, goal = '200', machine = {}, over = '100') =>
    decide('travel', { turns: turns(over), travel: mm(got) }, { instrument: 'readout', goal }, machine);
  it('travel at both sides of goal and uncertainty together: 150 mm, 30 + 12.3 µm', () => {
    expect(verdict(travel('150'))).toBe('passed length-agrees');
    expect(verdict(travel('150.0423'))).toBe('passed length-agrees');
    expect(verdict(travel('150.0424'))).toBe('failed length-differs');
    expect(verdict(travel('149.9577'))).toBe('passed length-agrees');
    expect(verdict(travel('149.9576'))).toBe('failed length-differs');
    expect(travel('158.75').ppm).toEqual({ kind: 'seen', ppm: 58_330n, uncertainty: 82n });
  });

  it('a travel too short for its goal settles nothing, and says what would: 12.3 µm at 200 ppm want 61.5 mm', () => {
    const short = travel('60', '200', {}, '40');
    expect([verdict(short), short.settles?.value.n, short.settles?.value.d]).toEqual([
      'undecided too-coarse',
      123n,
      2n,
    ]);
    expect(verdict(travel('61.5', '200', {}, '41'))).toBe('passed length-agrees');
    expect(verdict(travel('70', '200', {}, '40'))).toBe('failed length-differs');
  });

  it('tries that differ widen what it allows: ±3 µm make 12.3 into 12.8 µm', () => {
    const at = (got: string) =>
      verdict(
        decide(
          'travel',
          { turns: turns('100'), travel: mm(got), repeats: mm('0.003') },
          { instrument: 'readout', goal: '200' },
        ),
      );
    expect([at('150.0428'), at('150.0429')]).toEqual(['passed length-agrees', 'failed length-differs']);
  });

  it('with counts and screw turns recorded as right, travel measures the screw', () => {
    const inputs = inputsOf();
    const passed = (id: 'counts' | 'screw-turns') =>
      makeTest(id, RULES[id], inputs, id, { result: 'passed', readings: {}, choices: {} });
    const tests = [passed('counts'), passed('screw-turns')];
    const readings = { turns: turns('100'), travel: mm('150') };
    const at = (context: object, got = readings) =>
      decide('travel', got, { instrument: 'readout' }, {}, { context });
    expect(at({ tests }).code).toBe('screw-agrees');
    expect(at({ tests: tests.slice(1) }).code).toBe('length-agrees');
    expect(at({ tests }, { ...readings, travel: mm('151') }).points[0]).toBe('screw-itself');
    expect(at({}, { ...readings, travel: mm('151') }).points[0]).toBe('finder');
  });

  it('carriage per screw turn, in inches too; a finer instrument can be entered', () => {
    const at = (got: Stated, more = {}) =>
      decide('screw-travel', { turns: turns('20'), travel: got, ...more }, { instrument: 'caliper' });
    // 60 mm ± 500 ppm and a caliper's 35.6 µm: 30 + 35.6.
    expect(verdict(at(mm('60.07')))).toBe('failed length-differs');
    expect(verdict(at(mm('60.06')))).toBe('undecided too-coarse');
    expect(verdict(at(mm('60.02'), { accuracy: mm('0.005') }))).toBe('passed length-agrees');
    expect(verdict(at(is('2.5', 'in')))).toBe('failed length-differs');
  });

  it('scratch: a pitch gauge proves the thread and nothing finer; a length is held to 1000 ppm', () => {
    const gauge = (fits: string) => decide('scratch', {}, { instrument: 'pitch-gauge', fits });
    expect(verdict(gauge('yes'))).toBe('passed gauge-fits');
    expect(verdict(gauge('no'))).toBe('failed gauge-differs');
    expect(gauge('yes').ppm).toMatchObject({ kind: 'inside' });
    const over = (pitches: string, got: string) =>
      verdict(decide('scratch', { pitches: n(pitches), travel: mm(got) }, { instrument: 'caliper' }));
    expect(over('20', '30')).toBe('undecided too-coarse');
    expect(over('24', '36')).toBe('passed length-agrees');
    expect(over('24', '36.08')).toBe('failed length-differs');
    expect(choicesOf(test('scratch'), given({})).map((c) => c.id)).toEqual(['instrument']);
  });
});

describe('what moves', () => {
  it('backlash: the largest of three places goes to the machine; uneven wear and more than entered are said', () => {
    const at = (a: string, b: string, c: string) =>
      decide('backlash', { head: mm(a), middle: mm(b), tail: mm(c) }, { instrument: 'indicator' });
    const d = at('0.10', '0.11', '0.10');
    expect(d).toMatchObject({ result: 'passed', code: 'measured', points: [], sets: { field: 'backlash' } });
    expect(d.sets?.value).toEqual(mm('0.11'));
    expect(at('0.12', '0.11', '0.11').sets).toBeNull();
    // 19.2 µm by indicator.
    expect(at('0.119', '0.10', '0.10').points).toEqual([]);
    expect(at('0.12', '0.10', '0.10').points).toEqual(['uneven-wear']);
    expect(at('0.13', '0.12', '0.12').points).toEqual(['more-than-entered']);
    expect(at('0.01', '0.01', '0.01').code).toBe('too-coarse');
  });

  const go = (spread: string, cycles = '20', machine = {}, choice = 'indicator') =>
    verdict(
      decide('repeat', { cycles: n(cycles), rpm, spread: mm(spread) }, { instrument: choice }, machine),
    );
  it('repeats within two steps and the readings: 1 + 19.2 µm', () => {
    expect(go('0.0202')).toBe('passed repeated');
    expect(go('0.0203')).toBe('failed not-repeated');
    expect(go('0.01', '19')).toBe('undecided too-few-times');
    // Four full steps are 20 µm here: a caliper can't see one lost.
    expect(go('0.01', '20', {}, 'caliper')).toBe('undecided too-coarse-for-jump');
    expect(go('0.01', '20', { microsteps: is('8', 'times') })).toBe('passed repeated');
  });

  const ramp = (spread: string, seen = {}) =>
    decide(
      'ramp',
      { rpm, spread: mm(spread) },
      { start: 'kept', stop: 'kept', reverse: 'not-used', instrument: 'indicator', ...seen },
    );
  it('the ramp: kept at start, stop and reverse, and back to the indicator', () => {
    expect(verdict(ramp('0.0202'))).toBe('passed ramp-kept');
    expect(verdict(ramp('0.0203'))).toBe('failed not-repeated');
    expect(verdict(ramp('0', { stop: 'lost' }))).toBe('failed ramp-lost');
    expect(ramp('0', { stop: '' }).lacks).toEqual(['stop']);
  });
});

describe('what stops', () => {
  const runs = (longest: string, many = 10) =>
    Object.fromEntries(Array.from({ length: many }, (_, i) => [`run-${i + 1}`, mm(i ? '1' : longest)]));
  it('ten dummy runs: 2 mm at 160 rpm and 1.5 mm is 0.5 s; nine decide nothing; more than 10 s is no stopping time', () => {
    const at = (longest: string, many?: number) => decide('stopping-time', { rpm, ...runs(longest, many) });
    expect(at('2')).toMatchObject({ result: 'passed', code: 'measured', points: [], sets: null });
    const late = at('2.01');
    expect(late.sets?.value).toEqual(is('0.51', 's'));
    expect(late.points).toEqual(['more-than-entered']);
    expect(at('1.5').sets?.value).toEqual(is('0.38', 's'));
    expect(at('2', 9).lacks).toEqual(['run-10']);
    expect([verdict(at('40')), verdict(at('40.05'))]).toEqual(['passed measured', 'failed out-of-range']);
  });

  it('coast: the most of three', () => {
    const at = (a: string, b: string, c: string) =>
      decide('coast', { rpm, 'coast-1': turns(a), 'coast-2': turns(b), 'coast-3': turns(c) });
    expect(at('7', '8.5', '6')).toMatchObject({ points: ['more-than-entered'], sets: { field: 'coast' } });
    expect(at('7', '8.5', '6').sets?.value).toEqual(turns('8.5'));
    expect(at('7', '8', '6').sets).toBeNull();
    expect(decide('coast', { rpm, 'coast-1': turns('7') }).lacks).toEqual(['coast-2', 'coast-3']);
  });
});
