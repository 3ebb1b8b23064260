import { describe, expect, it } from 'vitest';
import { read, toNumber, type Ratio } from '../../src/core/quantity';
import { drillNamed, drills, drillsOf } from '../../src/core/thread/drills';
import { percentOfThread, tappingDrill } from '../../src/core/thread/tapping';

const value = (text: string): Ratio => {
  const r = read(text);
  if (!r.ok) throw new Error(r.error);
  return r.value;
};
const inch = (text: string): number => toNumber(value(text)) * 25.4;

describe('standard drills', () => {
  it.each([
    ['1/64', '0.015625'],
    ['27/64', '0.421875'],
    ['1 3/4', '1.75'],
  ])('fraction %s is %s in', (name, inches) => {
    expect(toNumber(drillNamed('fraction', name)?.diameter ?? value('0'))).toBeCloseTo(inch(inches), 9);
  });

  it('80 number and 26 letter drills, every list rising or falling without a repeat', () => {
    expect(drillsOf(['number'])).toHaveLength(80);
    expect(drillsOf(['letter'])).toHaveLength(26);
    const all = drills();
    expect(new Set(all.map((d) => `${d.kind} ${d.name}`)).size).toBe(all.length);
    const numbers = drillsOf(['number']).map((d) => Number(d.name));
    expect(numbers).toEqual([...numbers].sort((a, b) => b - a));
  });
});

describe('percentage of thread', () => {
  // Machinery's Handbook 31, p. 2155, tapping drills for inch threads: percentage printed to whole per cent.
  it.each([
    ['3-48, No. 47', '0.099', 48, '0.0785', 76],
    ['1/4-20, No. 7', '0.25', 20, '0.2010', 75],
    ['2-56, No. 50', '0.086', 56, '0.0700', 69],
  ])('%s', (_, major, tpi, hole, percent) => {
    expect(Math.round(percentOfThread(inch(major), inch(hole), 25.4 / tpi))).toBe(percent);
  });
});

describe('tapping drill recommended', () => {
  // Usual inch tapping drills (ASME B94.9 list as shops print it, from memory): nearest to 75 % of thread.
  it.each([
    ['0-80', '0.060', 80, '3/64'],
    ['1-64', '0.073', 64, '53'],
    ['2-56', '0.086', 56, '50'],
    ['4-40', '0.112', 40, '43'],
    ['5-40', '0.125', 40, '38'],
    ['6-32', '0.138', 32, '36'],
    ['8-32', '0.164', 32, '29'],
    ['10-24', '0.190', 24, '25'],
    ['10-32', '0.190', 32, '21'],
    ['12-24', '0.216', 24, '16'],
    ['1/4-20', '0.25', 20, '7'],
    ['1/4-28', '0.25', 28, '3'],
    ['5/16-18', '0.3125', 18, 'F'],
    ['3/8-16', '0.375', 16, '5/16'],
    ['7/16-14', '0.4375', 14, 'U'],
    ['1/2-13', '0.5', 13, '27/64'],
  ])('%s', (_, major, tpi, name) => {
    const r = tappingDrill({
      major: value(String(inch(major).toFixed(4))),
      pitch: value((25.4 / tpi).toFixed(9)),
      aim: { kind: 'percent', percent: 75 },
      from: drillsOf(['number', 'letter', 'fraction']),
    });
    expect(r.ok && r.recommended.drill.name).toBe(name);
  });

  // Metric tapping drills as metric tables print them (M10 seen in a printed table; the others ISO 2306, from memory).
  it.each([
    ['M10', '10', '1.5', '8.5'],
    ['M2', '2', '0.4', '1.6'],
    ['M2.5', '2.5', '0.45', '2.05'],
    ['M3', '3', '0.5', '2.5'],
    ['M4', '4', '0.7', '3.3'],
    ['M5', '5', '0.8', '4.2'],
    ['M6', '6', '1', '5.0'],
    ['M8', '8', '1.25', '6.8'],
    ['M12', '12', '1.75', '10.2'],
    ['M14', '14', '2', '12.0'],
    ['M20', '20', '2.5', '17.5'],
    ['M24', '24', '3', '21.0'],
    ['M8x0.75', '8', '0.75', '7.2'],
    ['M10x1.25', '10', '1.25', '8.8'],
    ['M12x1.25', '12', '1.25', '10.8'],
  ])('%s', (_, major, pitch, name) => {
    const r = tappingDrill({
      major: value(major),
      pitch: value(pitch),
      aim: { kind: 'major-less-pitch' },
      from: drillsOf(['metric']),
    });
    expect(r.ok && r.recommended.drill.name).toBe(name);
  });

  it('stays inside the limits of the minor diameter: M2.5 6H is 2.013 to 2.138 (ISO 965-2), so not 2.00', () => {
    const r = tappingDrill({
      major: value('2.5'),
      pitch: value('0.45'),
      aim: { kind: 'percent', percent: 95 },
      from: drillsOf(['metric']),
      bore: { min: value('2.013'), max: value('2.138') },
    });
    expect(r.ok && [r.recommended.drill.name, r.recommended.bore]).toEqual(['2.05', 'within']);
    expect(r.ok && r.list.map((t) => t.bore)).toEqual(['below', 'below', 'within', 'within', 'above']);
  });

  it('chooses from the custom of the thread, and names the nearest of the other sorts', () => {
    // M8: D − P = 6.75 lies within 0.007 mm of letter H (0.266 in), yet 6.8 is what is asked for.
    const m8 = tappingDrill({ major: value('8'), pitch: value('1.25'), aim: { kind: 'major-less-pitch' } });
    expect(m8.ok && m8.recommended.drill.name).toBe('6.8');
    // 6.8 mm is 0.2677 in: H 0.2660, 17/64 0.2656; No. 1, the largest of its sort, is 0.2280 and far too small.
    expect(m8.ok && m8.equivalents.map((t) => `${t.drill.kind} ${t.drill.name}`)).toEqual([
      'letter H',
      'fraction 17/64',
    ]);
    const quarter = tappingDrill({
      major: value('6.35'),
      pitch: value('1.27'),
      aim: { kind: 'percent', percent: 75 },
    });
    expect(quarter.ok && quarter.recommended.drill.name).toBe('7');
    expect(quarter.ok && quarter.equivalents.map((t) => t.drill.name)).toEqual(['5.1']);
  });

  it('a forming tap: hole D − P/2, so M6 asks for 5.5 (forming tap makers’ lists print 5.5 to 5.55)', () => {
    const r = tappingDrill({ major: value('6'), pitch: value('1'), aim: { kind: 'forming' } });
    expect(r.ok && r.recommended.drill.name).toBe('5.5');
  });

  it('refuses what no drill makes', () => {
    const ask = (major: string, pitch: string): string => {
      const r = tappingDrill({ major: value(major), pitch: value(pitch), aim: { kind: 'major-less-pitch' } });
      return r.ok ? r.recommended.drill.name : r.refusal;
    };
    expect(ask('0', '1')).toBe('not-positive');
    expect(ask('10', '0')).toBe('not-positive');
    expect(ask('250', '6')).toBe('no-drill-near');
  });
});
