import { describe, expect, it } from 'vitest';
import { add, ratio, stated, sub } from '../../src/core/quantity';
import { basicSizes } from '../../src/core/thread/forms';
import { limits } from '../../src/core/thread/limits';
import { printed, thread } from './printed';

/** The formulas' own order: a wider class holds the narrower one's tolerance (ASME B1.1: 1.5, 1, 0.75 of class 2A). */
describe('classes of one thread', () => {
  it.each(['unc:1/4-20', 'unc:1-8', 'unf:7/16-20'])('%s: 1A is wider than 2A, 2A than 3A', (id) => {
    const width = (cls: string): number => {
      const l = limits(thread(id), cls);
      if (!l.ok || !l.pitch.max || !l.pitch.min) throw new Error(cls);
      const w = sub(l.pitch.max, l.pitch.min);
      return Number(w.n) / Number(w.d);
    };
    expect(width('1A')).toBeGreaterThan(width('2A'));
    expect(width('2A')).toBeGreaterThan(width('3A'));
  });
  it('a class that is not the standard’s', () => {
    expect(printed(thread('unc:1/4-20'), '4A')).toBe('class-not-in-standard');
    expect(printed(thread('unc:1/4-20'), '6g')).toBe('class-not-in-standard');
  });
});

describe('Acme classes', () => {
  it('pitches outside the standard’s list, stub classes and multi-starts are refused', () => {
    expect(printed(thread('acme:3/4-10'), 'screw-2G')).toBe('pitch-not-in-standard');
    expect(printed(thread('stub-acme:1/2-10'), 'screw-3G')).toBe('class-not-in-standard');
    expect(printed(thread('acme:1/2-10*2'), 'screw-2G')).toBe('multi-start-not-covered');
  });
});

/** Over wires 1 1/4-5: M = D − 1.60082 P + 3.16568 W for 55° needs E = D − 0.640327 P (Machinery's Handbook 31 p. 2131). */
describe('basic sizes', () => {
  it('1 in by 8 Whitworth over 0.090 in wires is 1.0848 in', () => {
    const b = basicSizes(thread('bsw:1-8'));
    if (!b) throw new Error();
    const overWires = add(sub(b.pitch, ratio(960491, 8_000_000)), ratio(316568 * 9, 10_000_000));
    expect(Number(overWires.n) / Number(overWires.d)).toBeCloseTo(1.0848, 4);
  });
  it('M10 and M20: ISO 724 prints d2 9.026 and 18.376, D1 8.376 and 17.294', () => {
    expect(printed(thread('iso-coarse:M10'), '6H')).toContain('9.026');
    expect(printed(thread('iso-coarse:M10'), '6H').endsWith('8.376')).toBe(true);
    expect(printed(thread('iso-coarse:M20'), '6H')).toContain('18.376');
    expect(printed(thread('iso-coarse:M20'), '6H').endsWith('17.294')).toBe(true);
  });
  it('a worm has no diameter of its own', () => {
    expect(basicSizes(thread('worm-module:1.5'))).toBeNull();
    expect(limits({ ...thread('iso-coarse:M10'), major: null }, '6g')).toEqual({
      ok: false,
      refusal: 'no-major-diameter',
    });
    expect(basicSizes({ ...thread('iso-coarse:M10'), major: stated(ratio(12), 'mm') })?.major.n).toBe(12n);
  });
});
