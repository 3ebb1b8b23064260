import { describe, expect, it } from 'vitest';
import { decimalText, toNumber } from '../../src/core/quantity';
import { basicSizes } from '../../src/core/thread/forms';
import { setOverPpm, taperFigures } from '../../src/core/thread/taper';
import { printed, thread } from './printed';

describe('parallel pipe threads, ISO 228-1, mm: threadlib design tables', () => {
  it.each([
    ['g:1/16', 'internal', '- 7.723 | 7.249 7.142 | 6.843 6.561'],
    ['g:1/8', 'internal', '- 9.728 | 9.254 9.147 | 8.848 8.566'],
    ['g:1/2', 'internal', '- 20.955 | 19.935 19.793 | 19.172 18.631'],
    ['g:7/8', 'internal', '- 30.201 | 29.181 29.039 | 28.418 27.877'],
    ['g:2', 'internal', '- 59.614 | 58.315 58.135 | 57.296 56.656'],
    ['g:2-1/4', 'internal', '- 65.710 | 64.448 64.231 | 63.392 62.752'],
    ['g:1/8', 'A', '9.728 9.514 | 9.147 9.040'],
    ['g:1/8', 'B', '9.728 9.514 | 9.147 8.933'],
    ['g:3/4', 'A', '26.441 26.157 | 25.279 25.137'],
    ['g:3/4', 'B', '26.441 26.157 | 25.279 24.995'],
    ['g:1-3/4', 'B', '53.746 53.386 | 52.267 51.907'],
    ['g:5-1/2', 'A', '151.130 150.696 | 149.651 149.434'],
  ])('%s %s', (id, cls, row) => {
    expect(printed(thread(id), cls).startsWith(row)).toBe(true);
  });
  it('refuses classes of other standards', () => {
    expect(printed(thread('g:1/2'), '6g')).toBe('class-not-in-standard');
  });
});

describe('taper threads', () => {
  it('are gauged by length, not by limits of diameter', () => {
    expect(printed(thread('r:1/2'), 'A')).toBe('taper-gauged-by-length');
    expect(printed(thread('npt:1/2-14'), '2A')).toBe('taper-gauged-by-length');
  });
  it('stand at 1° 47′ 24″ to the axis (ISO 7-1) and lose 488 ppm of axial pitch by set-over (cosine)', () => {
    const t = taperFigures(thread('r:1/2'));
    if (!t) throw new Error();
    expect(t.sideDegrees).toBeCloseTo(1 + 47 / 60 + 24 / 3600, 3);
    expect(setOverPpm(t.taper)).toBeCloseTo(-488, 0);
  });
  it('parallel threads have no taper figures', () => {
    expect(taperFigures(thread('g:1/2'))).toBeNull();
  });
  /**
   * ASME B1.20.1 explains its lengths: L2 holds two threads that are imperfect at the crest, so two pitches short of its
   * end the full crest is the outside of the pipe. E1 lies L1/16 above E0 by definition of the taper.
   */
  it.each(['npt:1/8-27', 'npt:1/2-14', 'npt:1-11.5', 'npt:4-8', 'npt:24-8'])('%s lies on its taper', (id) => {
    const t = thread(id);
    const f = taperFigures(t);
    const b = basicSizes(t);
    if (!f?.smallEndPitch || !b || !t.major) throw new Error();
    const p = 1 / toNumber(t.pitch.value);
    const e0 = toNumber(f.smallEndPitch);
    expect(toNumber(b.pitch)).toBeCloseTo(e0 + toNumber(f.gaugeLength) / 16, 12);
    expect(e0 + (toNumber(f.usefulLength) - 2 * p) / 16 + 0.8 * p).toBeCloseTo(toNumber(t.major.value), 9);
  });
});

describe('trapezoidal screws, ISO 2903 class 7e, mm: Engineers Edge, external ISO metric trapezoidal', () => {
  it.each([
    ['tr:Tr8x1.5', '8.000 7.850 | 7.183 7.013 | 6.200 5.921'],
    ['tr:Tr10x1.5', '10.000 9.850 | 9.183 9.013 | 8.200 7.921'],
    ['tr:Tr10x2', '10.000 9.820 | 8.929 8.739 | 7.500 7.191'],
    ['tr:Tr12x2', '12.000 11.820 | 10.929 10.729 | 9.500 9.179'],
    ['tr:Tr12x3', '12.000 11.764 | 10.415 10.191 | 8.500 8.135'],
    ['tr:Tr14x2', '14.000 13.820 | 12.929 12.729 | 11.500 11.179'],
    ['tr:Tr16x4', '16.000 15.700 | 13.905 13.640 | 11.500 11.074'],
  ])('%s', (id, row) => {
    expect(printed(thread(id), '7e')).toBe(row);
  });
  it('refuses classes that the standard leaves out', () => {
    expect(printed(thread('tr:Tr20x4'), '7c')).toBe('class-not-in-standard');
    expect(printed(thread('tr:Tr20x4'), '6g')).toBe('class-unreadable');
  });
  it('several starts widen the pitch diameter tolerance only', () => {
    const one = printed(thread('tr:Tr20x4'), '7e').split(' | ');
    const two = printed(thread('tr:Tr20x4*2'), '7e').split(' | ');
    expect(two[0]).toBe(one[0]);
    expect(two[1]).not.toBe(one[1]);
    expect(two[1]?.split(' ')[0]).toBe(one[1]?.split(' ')[0]);
  });
});

describe('BA, mm', () => {
  /** Pitch and diameter by BS 93's own rule: 0.9 to the nth and 6 p^1.2, two significant figures each. */
  it.each(Array.from({ length: 17 }, (_, n) => n))('%d BA follows the rule of its series', (n) => {
    const t = thread(`ba:${n}`);
    const p = 0.9 ** n;
    expect(toNumber(t.pitch.value)).toBe(Number(p.toPrecision(2)));
    expect(toNumber(t.major?.value ?? t.pitch.value)).toBe(Number((6 * p ** 1.2).toPrecision(2)));
  });
  it.each([
    ['0', '1.00'],
    ['2', '0.81'],
    ['4', '0.66'],
    ['6', '0.53'],
  ])('%s BA has a pitch of %s mm (handbook table of BA threads)', (n, p) => {
    expect(decimalText(thread(`ba:${n}`).pitch.value, { places: 2, keepZeros: true })).toBe(p);
  });
  it.each([
    ['0', '5.400', '4.800'],
    ['1', '4.760', '4.220'],
    ['2', '4.215', '3.730'],
    ['3', '3.660', '3.220'],
    ['4', '3.205', '2.810'],
    ['6', '2.480', '2.160'],
    ['9', '1.665', '1.430'],
    ['11', '1.315', '1.130'],
    ['13', '1.050', '0.900'],
    ['15', '0.775', '0.650'],
    ['16', '0.675', '0.560'],
  ])("%s BA: effective %s, minor %s mm (Machinery's Handbook 31 p. 2115)", (n, effective, minor) => {
    const b = basicSizes(thread(`ba:${n}`));
    if (!b) throw new Error();
    expect(decimalText(b.pitch, { places: 3, keepZeros: true })).toBe(effective);
    expect(decimalText(b.minor, { places: 3, keepZeros: true })).toBe(minor);
  });
  /** Tolerance formulas printed in Machinery's Handbook 31 p. 2115, worked by hand for 2 BA: p 0.81, depth 0.485. */
  it('2 BA', () => {
    expect(printed(thread('ba:2'), 'bolt-close')).toBe('4.700 4.579 | 4.215 4.130 | 3.730 3.560');
    expect(printed(thread('ba:2'), 'bolt-normal')).toBe('4.675 4.513 | 4.190 4.084 | 3.705 3.493');
    expect(printed(thread('ba:2'), 'nut')).toBe('- 4.700 | 4.342 4.215 | 4.034 3.730');
  });
  it('close bolts end at 10 BA, limits at 16 BA', () => {
    expect(printed(thread('ba:11'), 'bolt-close')).toBe('class-not-in-standard');
    expect(printed(thread('ba:20'), 'bolt-normal')).toBe('diameter-not-in-standard');
  });
});
