import { describe, expect, it } from 'vitest';
import { add, ratio, stated, sub } from '../../src/core/quantity';
import { basicSizes } from '../../src/core/thread/forms';
import { limits } from '../../src/core/thread/limits';
import { printed, thread } from './printed';

/** Rows as printed: the external minor diameter is left out there. */
const opens = (id: string, cls: string, row: string): void => {
  expect(printed(thread(id), cls).startsWith(`${row} |`), printed(thread(id), cls)).toBe(true);
};

describe('ASME B1.1 external limits, in: FreeCAD 1.0.0 CAM thread data as packaged by Debian', () => {
  it.each([
    ['unf:no0-80', '2A', '0.0595 0.0563 | 0.0514 0.0496'],
    ['unc:no1-64', '2A', '0.0724 0.0686 | 0.0623 0.0603'],
    ['unc:no4-40', '2A', '0.1112 0.1061 | 0.0950 0.0925'],
    ['unc:no6-32', '2A', '0.1372 0.1312 | 0.1169 0.1141'],
    ['unf:no10-32', '2A', '0.1891 0.1831 | 0.1688 0.1658'],
    ['unf:1/4-28', '2A', '0.2490 0.2425 | 0.2258 0.2225'],
    ['unc:3/8-16', '2A', '0.3737 0.3643 | 0.3331 0.3287'],
    ['unc:1/2-13', '2A', '0.4985 0.4876 | 0.4485 0.4435'],
    ['un:9/16-16', '2A', '0.5611 0.5517 | 0.5205 0.5158'],
    ['un:9/16-20', '2A', '0.5612 0.5531 | 0.5287 0.5245'],
    ['unc:1-8', '2A', '0.9980 0.9830 | 0.9168 0.9100'],
    ['unc:1-1/4-7', '2A', '1.2478 1.2314 | 1.1550 1.1476'],
    ['unf:1-1/2-12', '2A', '1.4981 1.4867 | 1.4440 1.4376'],
    ['unf:no0-80', '3A', '0.0600 0.0568 | 0.0519 0.0506'],
    ['unc:no10-24', '3A', '0.1900 0.1828 | 0.1629 0.1604'],
    ['unf:1/2-20', '3A', '0.5000 0.4919 | 0.4675 0.4643'],
    ['un:9/16-20', '3A', '0.5625 0.5544 | 0.5300 0.5268'],
    ['unc:3/4-10', '3A', '0.7500 0.7371 | 0.6850 0.6806'],
  ])('%s %s', opens);
});

describe('ASME B1.1 internal limits, in: the same', () => {
  it.each([
    ['unf:no0-80', '2B', '- 0.0600 | 0.0542 0.0519 | 0.0514 0.0465'],
    ['unc:no3-48', '2B', '- 0.0990 | 0.0885 0.0855 | 0.0845 0.0764'],
    ['unc:no6-32', '2B', '- 0.1380 | 0.1214 0.1177 | 0.1140 0.1040'],
    ['unf:1/4-28', '2B', '- 0.2500 | 0.2311 0.2268 | 0.2200 0.2110'],
    ['unc:1/2-13', '2B', '- 0.5000 | 0.4565 0.4500 | 0.4340 0.4170'],
    ['unc:1-1/2-6', '2B', '- 1.5000 | 1.4022 1.3917 | 1.3500 1.3200'],
    ['unf:1-3/8-12', '2B', '- 1.3750 | 1.3291 1.3209 | 1.3030 1.2850'],
    ['unc:no1-64', '3B', '- 0.0730 | 0.0648 0.0629 | 0.0623 0.0561'],
    ['unc:no6-32', '3B', '- 0.1380 | 0.1204 0.1177 | 0.1140 0.1040'],
    ['unf:no10-32', '3B', '- 0.1900 | 0.1726 0.1697 | 0.1641 0.1560'],
    ['unc:3/8-16', '3B', '- 0.3750 | 0.3387 0.3344 | 0.3182 0.3070'],
    ['unf:5/8-18', '3B', '- 0.6250 | 0.5934 0.5889 | 0.5730 0.5650'],
    ['unc:1-8', '3B', '- 1.0000 | 0.9254 0.9188 | 0.8797 0.8650'],
  ])('%s %s', (id, cls, row) => {
    expect(printed(thread(id), cls)).toBe(row);
  });
});

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

describe('Acme general purpose screws, class 2G, in: Dependable Acme, external thread dimensions', () => {
  it.each([
    ['acme:3/8-12', '0.3750 0.3700 | 0.3284 0.3161 | 0.2817 0.2632'],
    ['acme:3/4-6', '0.7500 0.7417 | 0.6598 0.6424 | 0.5633 0.5371'],
    ['acme:7/8-6', '0.8750 0.8667 | 0.7842 0.7663 | 0.6883 0.6615'],
    ['acme:1-1/8-5', '1.1250 1.1150 | 1.0165 0.9967 | 0.9050 0.8753'],
  ])('%s', (id, row) => {
    expect(printed(thread(id), 'screw-2G')).toBe(row);
  });
});

describe('Acme root limits, in: Acme Thread Data Sheets, L. Merrick 2009', () => {
  it.each([
    ['acme:1/4-16', 'screw-2G', '0.1618'],
    ['acme:1/4-16', 'screw-3G', '0.1702'],
    ['acme:1/4-16', 'screw-4G', '0.1722'],
    ['acme:5/16-14', 'screw-2G', '0.2140'],
    ['acme:5/16-14', 'screw-3G', '0.2231'],
    ['acme:5/16-14', 'screw-4G', '0.2254'],
    ['acme:7/16-12', 'screw-2G', '0.3253'],
    ['acme:7/16-12', 'screw-3G', '0.3354'],
    ['acme:7/16-12', 'screw-4G', '0.3379'],
  ])('%s %s smallest minor', (id, cls, minor) => {
    expect(printed(thread(id), cls).split(' ').at(-1)).toBe(minor);
  });
  it.each([
    ['acme:1/4-16', '0.1925'],
    ['acme:5/16-14', '0.2461'],
    ['acme:7/16-12', '0.3592'],
  ])('%s nut, largest minor', (id, minor) => {
    expect(printed(thread(id), 'nut-2G').split(' ').at(-2)).toBe(minor);
  });
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
