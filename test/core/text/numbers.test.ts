import { afterEach, describe, expect, it } from 'vitest';
import { approx, exact } from '../../../src/core/figures';
import { FIELDS, readNumber } from '../../../src/core/machine';
import { lead, leadFrom, ratio, stated, type Unit } from '../../../src/core/quantity';
import {
  amountText,
  decimal,
  plain,
  keptName,
  marked,
  rounded,
  setMark,
  showAmount,
  showLead,
  showStated,
  statedText,
  threadName,
  whole,
} from '../../../src/text/numbers';
import { refusalText, understood } from '../../../src/text/typed';

const easy = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');
const st = (n: number, d: number, unit: Unit) => stated(ratio(n, d), unit);
afterEach(() => {
  setMark('.');
});

describe('numbers as they are said', () => {
  it('plain: exact decimal, else mixed fraction, else ratio; never rounded', () => {
    expect(plain(ratio(5, 4))).toBe('1.25');
    expect(plain(ratio(10_000, 3))).toBe('3333 1/3');
    expect(plain(ratio(375, 508))).toBe('375/508');
    // 1/128 has seven decimals, 0.0078125: one more than is shown.
    expect(plain(ratio(1, 128))).toBe('1/128');
    expect(plain(ratio(-1, 4))).toBe('−0.25');
  });

  it('threads per inch are said in halves and quarters, other units in decimals', () => {
    expect(showStated(st(23, 2, 'tpi'))).toEqual({ value: '11 1/2', unit: 'tpi' });
    expect(showStated(st(8, 1, 'tpi'))).toEqual({ value: '8', unit: 'tpi' });
    expect(showStated(st(137, 10, 'tpi'))).toEqual({ value: '13.7', unit: 'tpi' });
    expect(showStated(st(5, 2, 'us'))).toEqual({ value: '2.5', unit: 'µs' });
    expect(statedText(st(5, 2, 'us'))).toBe('2.5\u00a0µs');
    expect(easy(statedText(st(1, 1, 'teeth')))).toBe('1 tooth');
    expect(statedText(st(4, 1, 'count'))).toBe('4');
  });

  it('the decimal mark follows the setting everywhere', () => {
    setMark(',');
    expect(decimal(ratio(127, 40), 3)).toBe('3,175');
    expect(showLead(leadFrom(st(3, 2, 'mm'))).tpi).toBe('16,93');
    expect(amountText(approx(0.25, 'mm'))).toBe('0,25\u00a0mm');
    const refused = readNumber(FIELDS.screwPitch, '99', 'mm');
    expect(refused.ok || easy(refusalText(refused.refusal))).toBe(
      'Between 0,25 and 25,4 mm. Check the unit.',
    );
  });

  it('names and sentences take the mark, numbers of standards and versions don’t', () => {
    const said = 'ASME B1.5 and B1.20.1, version 0.1.0: from 0.05 to 10.5 mm, M2.5, Tr10×1.5, 0=2.2 300=0.5.';
    expect(marked(said)).toBe(said);
    setMark(',');
    expect(marked(said)).toBe(
      'ASME B1.5 and B1.20.1, version 0.1.0: from 0,05 to 10,5 mm, M2,5, Tr10×1,5, 0=2,2 300=0,5.',
    );
  });

  it('a thread is kept under a name with points, and shown with the mark', () => {
    const bare = { thread: null, pitch: st(3, 2, 'mm') };
    setMark(',');
    expect([keptName(bare), threadName(bare)].map(easy)).toEqual(['1.5 mm', '1,5 mm']);
  });

  it('nothing parts thousands: it could be read as a mark', () => {
    expect(amountText({ kind: 'exact', value: ratio(1_234_567), unit: 'count', pi: false })).toBe('1234567');
    expect(whole(68_267)).toBe('68267');
  });

  it('a demand is rounded up and a limit down, so that neither flatters', () => {
    // 4096 × 1000 ÷ 60 = 68 266.67 edges/s.
    expect(easy(rounded(ratio(4_096_000, 60), 'up'))).toBe('68267');
    expect(easy(rounded(ratio(4_096_000, 60), 'down'))).toBe('68266');
    expect(rounded(ratio(10, 3), 'down')).toBe('3.333');
    expect(rounded(ratio(25, 2), 'up')).toBe('12.5');
  });
});

describe('amounts', () => {
  it('unknown is said, not left out', () => expect(showAmount(null)).toBe('not known'));

  it('a ratio stands as it is, with its decimal beside it', () => {
    expect(easy(showAmount(exact(ratio(375, 508), 'steps/count')))).toBe('375/508 ≈ 0.73819 steps/count');
    expect(easy(showAmount(exact(ratio(25, 2), 'mm')))).toBe('12.5 mm');
  });

  it('π leads, and its decimal is five digits of it: 2π = 6.28319', () => {
    expect(easy(showAmount(exact(ratio(2), 'mm', true)))).toBe('π × 2 mm = 6.2832 mm');
  });

  it('a bound of π is not written out in full', () => {
    const long = showAmount(exact(ratio(6283185307179586478n, 10n ** 18n), 'mm'));
    expect(easy(long)).toBe('≈ 6.28319 mm');
  });

  it('an approximate amount has as many digits as are meant', () => {
    expect(easy(showAmount(approx(0.9201234, 'mm')))).toBe('0.9201 mm');
    expect(easy(showAmount(approx(75.4321, 'percent')))).toBe('75.4 %');
    expect(easy(showAmount(approx(-7.83, 'ppm')))).toBe('−7.8 ppm');
  });
});

describe('leads', () => {
  it('1.5 mm is 16.93 tpi, 8 tpi is 3.175 mm, and it is told which is exact', () => {
    expect(showLead(leadFrom(st(3, 2, 'mm')))).toEqual({
      mm: '1.5',
      tpi: '16.93',
      in: '0.05906',
      exact: { mm: true, tpi: false, in: false },
    });
    expect(showLead(leadFrom(st(8, 1, 'tpi')))).toEqual({
      mm: '3.175',
      tpi: '8',
      in: '0.125',
      exact: { mm: true, tpi: true, in: true },
    });
    expect(showLead(leadFrom(st(23, 2, 'tpi'))).tpi).toBe('11 1/2');
  });

  it('a worm of module 2 advances 2π = 6.2832 mm', () => {
    const { mm, exact: known } = showLead(lead(ratio(2), true));
    expect([mm, known.mm]).toEqual(['6.2832', false]);
  });
});

describe('the line under the pad', () => {
  const pitch = FIELDS.screwPitch.units;
  it.each([
    [st(8, 1, 'tpi'), pitch, '= 3.175 mm'],
    [st(1, 8, 'in'), pitch, '= 3.175 mm'],
    [st(127, 40, 'mm'), pitch, '= 8 tpi, = 0.125 in'],
    [st(3, 1, 'mm'), pitch, '≈ 8.47 tpi, ≈ 0.11811 in'],
    [st(254, 100, 'mm'), FIELDS.backlash.units, '= 0.1 in'],
    [st(100, 1, 'kHz'), FIELDS.controllerMaxSteps.units, '= 100000 Hz'],
    [st(60, 1, 'in/min'), FIELDS.carriageMax.units, '= 25.4 mm/s'],
    [st(1, 2, 's'), FIELDS.wholeStopTime.units, '= 500 ms'],
    [st(200, 1, 'steps'), FIELDS.fullSteps.units, ''],
    [st(0, 1, 'tpi'), pitch, ''],
  ] as const)('%o', (value, units, line) => {
    expect(easy(understood(value, units))).toBe(line);
  });
});

describe('refusals', () => {
  const why = (typed: string, field: keyof typeof FIELDS, unit: Unit): string => {
    const spec = FIELDS[field];
    if (spec.kind !== 'number') throw new Error('not a number');
    const r = readNumber(spec, typed, unit);
    return r.ok ? 'taken' : easy(refusalText(r.refusal));
  };
  it('says the range, and points at the unit where there is more than one to slip in', () => {
    expect(why('30', 'screwPitch', 'mm')).toBe('Between 0.25 and 25.4 mm. Check the unit.');
    expect(why('2', 'dialTeeth', 'teeth')).toBe('Between 4 and 200 teeth.');
    expect(why('8.5', 'dialTeeth', 'teeth')).toBe('This is a whole number.');
    expect(why('', 'dialTeeth', 'teeth')).toBe('Nothing typed yet.');
    expect(why('3/0', 'screwPitch', 'mm')).toBe('Nothing can be divided by 0.');
    expect(why('1.2.3', 'screwPitch', 'mm')).toBe('Only one decimal mark. Thousands take none.');
    expect(why('8', 'screwPitch', 'tpi')).toBe('taken');
  });
});
