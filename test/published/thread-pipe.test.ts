import { describe, expect, it } from 'vitest';
import { toNumber } from '../../src/core/quantity';
import { basicSizes } from '../../src/core/thread/forms';
import { setOverPpm, taperFigures } from '../../src/core/thread/taper';
import { printed, thread } from './printed';

describe('parallel pipe threads', () => {
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

describe('trapezoidal screws, ISO 2903', () => {
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
