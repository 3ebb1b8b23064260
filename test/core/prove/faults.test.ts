import { describe, expect, it } from 'vitest';
import { withFields, type FieldName, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import {
  atOnce,
  causeSteps,
  expectedOf,
  findFaults,
  MOST_READINGS,
  patternIn,
  settingsOf,
  weigh,
  type Cause,
  type FaultTest,
  type Found,
  type Reading,
  type ThreadSet,
} from '../../../src/core/prove/faults';
import { mul, ratio, read, stated, toNumber, type Ratio, type Unit } from '../../../src/core/quantity';

const n = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new RangeError(text);
  return r.value;
};
const is = (text: string, unit: Unit) => stated(n(text), unit);
const took = (test: FaultTest, got: string, over: string, half: string): Reading => ({
  test,
  got: n(got),
  over: n(over),
  half: n(half),
});
const heron = EXAMPLES.heron(); // 3 mm, 1200 lines × 4, 200 × 10 steps, 20:60
const with_ = (field: FieldName, value: unknown, m: MachineProfile = heron): MachineProfile =>
  withFields(m, { [field]: value });
const LEAD = n('1.5');
const find = (m: MachineProfile, t: ThreadSet | null, ...readings: Reading[]): Found =>
  findFaults(m, t, expectedOf(m, LEAD), readings);
const ratioCauses = (m: MachineProfile, t: ThreadSet | null) => atOnce(causeSteps(m, t));
const travelOf = (c: Cause): Ratio => mul(c.factors.screw, c.factors.carriage);
const cause = (m: MachineProfile, t: ThreadSet | null, kind: string, q: string): Cause | undefined =>
  ratioCauses(m, t).find((c) => c.kind === kind && travelOf(c).n === n(q).n && travelOf(c).d === n(q).d);
const field = (c: Cause | undefined) => c?.changes.map((x) => x.field).join();

// The factors are worked by hand from the travel law; each also stands in the reference's list of ratios.
describe('what each wrong entry does to the travel, exactly', () => {
  it('8 tpi entered as 8 mm: 3.175/8 = 0.396875 (n²/25.4 is its inverse)', () => {
    const m = with_('screwPitch', is('8', 'mm'));
    const c = cause(m, null, 'unit', '127/320');
    expect(c?.where).toBe('profile');
    expect(c?.changes[0]?.to).toEqual(is('8', 'tpi'));
    expect(toNumber(travelOf(c as Cause))).toBeCloseTo(0.397, 3);
    expect(toNumber(travelOf(c as Cause)) * (64 / 25.4)).toBeCloseTo(1, 12);
  });
  it('3 mm that is 8 tpi: 127/120; 2.5 mm that is 10 tpi: 127/125', () => {
    expect(field(cause(heron, null, 'value', '127/120'))).toBe('screwPitch');
    expect(field(cause(with_('screwPitch', is('2.5', 'mm')), null, 'value', '127/125'))).toBe('screwPitch');
  });
  it('1000 lines that are 1024: 1.024; 500 that are 512 the same', () => {
    for (const [lines, on] of [
      ['1000', '1024'],
      ['500', '512'],
    ] as const) {
      const c = cause(with_('encoderLines', is(lines, 'lines')), null, 'value', '128/125');
      expect(c?.changes[0]?.to).toEqual(is(on, 'lines'));
    }
  });
  it('driver at 32 microsteps, 16 entered: 1/2', () => {
    const m = with_('microsteps', is('16', 'times'));
    const c = ratioCauses(m, null).find(
      (x) =>
        field(x) === 'microsteps' && x.where === 'profile' && travelOf(x).d === 2n && travelOf(x).n === 1n,
    );
    expect(c?.changes[0]?.to).toEqual(is('32', 'times'));
  });
  it('a 3:2 encoder belt turned round: 4/9; forgotten: 2/3', () => {
    const m = with_('spindlePulley', is('30', 'teeth'), with_('encoderPulley', is('20', 'teeth')));
    const turned = cause(m, null, 'swapped', '4/9');
    expect(field(turned)).toBe('spindlePulley,encoderPulley');
    expect(cause(m, null, 'belt-forgotten', '2/3')).toBeDefined();
  });
  it('mm as inch: 25.4', () => {
    expect(cause(with_('screwPitch', is('1', 'in')), null, 'unit', '5/127')?.changes[0]?.to).toEqual(
      is('1', 'mm'),
    );
  });
  it('pitch entered for a lead of three starts: 1/3; 20 tpi typed as 20 mm: 15.748', () => {
    const t = { pitch: is('20', 'tpi'), starts: 3 };
    expect(cause(heron, t, 'pitch-for-lead', '1/3')?.where).toBe('controller');
    expect(cause(heron, t, 'lead-unit', '2000/127')?.changes).toEqual([]);
  });
  it('22/7 for π: 1.000402', () => {
    const c = ratioCauses(heron, { pitch: is('1', 'module'), starts: 1 }).find((x) => x.kind === 'pi');
    expect(toNumber(travelOf(c as Cause))).toBeCloseTo(22 / 7 / Math.PI, 15);
    expect(toNumber(travelOf(c as Cause))).toBeCloseTo(1.000402, 6);
  });
  it('63/80 and 37/47 for 100/127: 1.000125 and 0.999787', () => {
    const bittern = EXAMPLES.bittern(); // 8 tpi
    const q = ratioCauses(bittern, { pitch: is('1.5', 'mm'), starts: 1 })
      .filter((x) => x.kind === 'stand-in')
      .map((x) => toNumber(travelOf(x)).toFixed(6));
    expect(q).toEqual(['1.000125', '0.999787']);
    expect(cause(heron, { pitch: is('8', 'tpi'), starts: 1 }, 'stand-in', '8000/8001')).toBeDefined();
    const box = with_('gearboxRatio', is('127/100', 'times'));
    expect(field(cause(box, null, 'stand-in', '8001/8000'))).toBe('gearboxRatio');
    expect(ratioCauses(heron, { pitch: is('1.5', 'mm'), starts: 1 }).some((x) => x.kind === 'stand-in')).toBe(
      false,
    );
  });
  it('change gears: a stage turned round, another wheel on, no counts and no controller', () => {
    const dunlin = EXAMPLES.dunlin(); // 20/65 20/80
    const all = ratioCauses(dunlin, null);
    expect(all.some((c) => c.where === 'controller')).toBe(false);
    const turned = all.find((c) => c.kind === 'turned');
    expect(turned?.changes[0]).toEqual({ field: 'gearMounted', from: '20/65 20/80', to: '65/20 20/80' });
    expect(turned?.factors.screw).toEqual(ratio(65 * 65, 400));
    const wheel = all.find((c) => c.changes[0]?.to === '20/63 20/80');
    expect(wheel?.factors.screw).toEqual(ratio(65, 63));
    expect(expectedOf(dunlin, null)).toMatchObject({
      counts: null,
      screw: ratio(1, 13),
      carriage: ratio(127, 40),
    });
  });
});

describe('readings and their uncertainty', () => {
  it('two readings of ±half each: half·√(2/3) (GUM 4.3.7)', () => {
    const w = weigh(took('travel', '99.9', '100', '0.03'), expectedOf(heron, LEAD));
    expect(w?.value).toBeCloseTo(0.999, 12);
    expect(w?.u).toBeCloseTo(((0.03 / Math.sqrt(3)) * Math.SQRT2) / 100, 12);
  });
  it('counts, screw and carriage are held against the profile', () => {
    const e = expectedOf(heron, LEAD);
    expect(weigh(took('counts', '48000', '10', '10'), e)?.value).toBe(1);
    expect(weigh(took('screw', '5', '10', '0.01'), e)?.value).toBe(1);
    expect(weigh(took('carriage', '31.75', '10', '0.01'), e)?.value).toBeCloseTo(127 / 120, 12);
  });
  it('takes nothing that the profile expects nothing of, no ± and no length', () => {
    const e = expectedOf(with_('encoderLines', null), null);
    expect(weigh(took('counts', '48000', '10', '10'), e)).toBeNull();
    expect(weigh(took('screw', '5', '10', '0.01'), e)).toBeNull();
    expect(weigh(took('travel', '5', '10', '0'), e)).toBeNull();
    expect(weigh(took('travel', '5', '0', '0.1'), e)).toBeNull();
  });
});

describe('ranking', () => {
  const heads = (f: Found) => f.groups.map((g) => g[0]?.causes.map((c) => field(c) || c.kind).join('+'));

  it('says that the profile agrees, and what could hide in the readings', () => {
    const f = find(heron, { pitch: is('1', 'module'), starts: 1 }, took('travel', '100.02', '100', '0.05'));
    expect(f.agrees).toBe(true);
    expect(f.groups.flat().some((r) => r.causes[0]?.kind === 'pi')).toBe(true);
    expect(f.groups.flat().every((r) => r.causes.length === 1)).toBe(true);
  });
  it('31.75 for 30 on a 3 mm screw: the screw of 8 tpi first; both ways it came about', () => {
    const f = find(heron, null, took('travel', '31.75', '30', '0.03'));
    expect(f.agrees).toBe(false);
    expect(f.groups[0]?.[0]?.causes[0]?.changes[0]?.to).toEqual(is('8', 'tpi'));
    expect(f.groups[0]?.[0]?.fits).toBe(true);
  });
  it('a quarter of the travel: edges, lines, microsteps are shown together, and counts are the next test', () => {
    const f = find(heron, null, took('travel', '25', '100', '0.05'));
    const first = f.groups[0]?.map((r) => field(r.causes[0])) ?? [];
    expect(first).toEqual(expect.arrayContaining(['edgesPerLine', 'encoderLines', 'microsteps']));
    expect(f.next?.test).toBe('counts');
    expect(f.next?.bits).toBeGreaterThan(0.5);
  });
  it('counts tell edges from microsteps; what then is left is told by looking', () => {
    const f = find(heron, null, took('travel', '25', '100', '0.05'), took('counts', '12000', '10', '13'));
    expect(heads(f)[0]).toBe('edgesPerLine');
    expect(f.groups[0]?.map((r) => field(r.causes[0]))).toContain('encoderLines');
    expect(f.groups[0]?.map((r) => field(r.causes[0]))).not.toContain('microsteps');
    expect(f.next).toBeNull();
  });
  it('127/120 on a 2 mm screw: travel alone can’t tell one slip from two; the carriage per screw turn can', () => {
    const m = with_('screwPitch', is('2', 'mm'));
    const f = find(m, null, took('travel', '31.75', '30', '0.03'));
    expect(f.groups[0]?.[0]?.causes[0]?.changes[0]?.to).toEqual(is('12', 'tpi'));
    const t = find(m, null, took('travel', '31.75', '30', '0.03'), took('carriage', '20', '10', '0.03'));
    expect(t.groups.flat().every((r) => toNumber(r.factors.carriage) === 1)).toBe(true);
  });
  it('two slips together: 1024 for 1000 lines and 8 tpi for 3 mm are 2032/1875', () => {
    const m = with_('encoderLines', is('1000', 'lines'));
    const f = find(
      m,
      null,
      took('counts', '40960', '10', '5'),
      took('carriage', '31.75', '10', '0.02'),
      took('travel', '108.373', '100', '0.02'),
    );
    const [head] = f.groups[0] ?? [];
    expect(head?.causes.map(field).sort()).toEqual(['encoderLines', 'screwPitch']);
    const q = mul(head?.factors.screw ?? 0, head?.factors.carriage ?? 0);
    expect(q).toEqual(ratio(2032, 1875));
  });
  it('short by the backlash over a short way: backlash is among the causes, there and back the test', () => {
    const f = find(heron, null, took('travel', '9.88', '10', '0.02'));
    expect(f.groups.flat().some((r) => r.causes[0]?.kind === 'backlash' && r.fits)).toBe(true);
    const g = find(heron, null, took('travel', '9.88', '10', '0.02'), took('back', '0.12', '10', '0.02'));
    expect(g.groups[0]?.[0]?.causes[0]?.kind).toBe('backlash');
  });
  it('shares add up to no more than one, and nothing is ranked without readings', () => {
    const f = find(heron, null, took('travel', '50', '100', '0.5'));
    const sum = f.groups.flat().reduce((s, r) => s + r.share, 0);
    expect(sum).toBeGreaterThan(0.3);
    expect(sum).toBeLessThanOrEqual(1);
    expect(find(heron, null)).toMatchObject({ groups: [], next: null, agrees: false });
  });
  it('more readings than are weighed are left out, not misjudged', () => {
    const many = Array.from({ length: MOST_READINGS + 3 }, () => took('travel', '50', '100', '0.1'));
    expect(find(heron, null, ...many).weighed.length).toBe(MOST_READINGS);
  });
});

describe('patterns that are no ratio', () => {
  const e = expectedOf(heron, LEAD);
  const seen = (...rs: Reading[]) => patternIn(rs.flatMap((r) => weigh(r, e) ?? []));
  it('short by the same over 10 mm and 100 mm: an offset', () =>
    expect(seen(took('travel', '9.8', '10', '0.02'), took('travel', '99.8', '100', '0.02'))).toBe('offset'));
  it('in proportion: none', () =>
    expect(seen(took('travel', '9.8', '10', '0.02'), took('travel', '98', '100', '0.02'))).toBeNull());
  it('the same length twice, further apart than the ±: runs', () =>
    expect(seen(took('travel', '99.8', '100', '0.02'), took('travel', '99.6', '100', '0.02'))).toBe('runs'));
  it('one reading shows none', () => expect(seen(took('travel', '99.8', '100', '0.02'))).toBeNull());
});

describe('what the settings rest on', () => {
  it('changes with what the ratio is made of, not with what cancels or has nothing to do with it', () => {
    const was = settingsOf(heron);
    for (const [f, v] of [
      ['encoderLines', is('1000', 'lines')],
      ['screwPitch', is('8', 'tpi')],
      ['microsteps', is('8', 'times')],
      ['motorPulley', is('30', 'teeth')],
    ] as const)
      expect(settingsOf(with_(f, v))).not.toEqual(was);
    expect(settingsOf(with_('backlash', is('1', 'mm')))).toEqual(was);
    const both = with_('encoderLines', is('2400', 'lines'), with_('microsteps', is('20', 'times')));
    expect(settingsOf(both)).toEqual(was);
    const dunlin = EXAMPLES.dunlin();
    expect(settingsOf(with_('gearMounted', '20/60 20/80', dunlin))).not.toEqual(settingsOf(dunlin));
  });
});
