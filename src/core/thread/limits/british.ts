import { add, less, mul, ratio, sub, toNumber, ZERO, type Ratio } from '../../quantity';
import { basicSizes, pitchLength } from '../forms';
import type { Thread } from '../thread';
import { inch4, mm3, printedTo } from './rounded';
import { band, refused, type LimitsResult } from './types';

const [CLOSE, MEDIUM, FREE] = [2 / 3, 1, 3 / 2];
const BS84: Readonly<Record<string, { readonly external: boolean; readonly times: number }>> = {
  'bolt-close': { external: true, times: CLOSE },
  'bolt-medium': { external: true, times: MEDIUM },
  'bolt-free': { external: true, times: FREE },
  'nut-close': { external: false, times: CLOSE },
  'nut-medium': { external: false, times: MEDIUM },
  'nut-normal': { external: false, times: FREE },
};

/** Tolerance on the minor diameter of Whitworth nuts, inch (BS 84 table of formulas; from memory). */
const nutMinor = (P: Ratio): Ratio => {
  const extra = less(ratio(1, 26), P) ? (less(ratio(1, 22), P) ? 7 : 5) : 4;
  return add(mul(ratio(1, 5), P), ratio(extra, 1000));
};

/**
 * Limits of BSW and BSF by BS 84, inch to 0.0001. All from memory of that standard's formulas: effective diameter
 * T = 0.002 D^⅓ + 0.003 √L + 0.005 √P with L = D, times ⅔, 1 or 3/2; medium and free bolts of 3/4 in and under carry
 * an allowance of 0.3 T.
 */
export const bs84 = (thread: Thread, classId: string): LimitsResult => {
  const cls = BS84[classId];
  if (!cls) return refused('class-not-in-standard');
  if (thread.starts > 1) return refused('multi-start-not-covered');
  const basic = basicSizes(thread);
  const P = pitchLength(thread);
  if (!basic || !P) return refused('no-major-diameter');
  const d = toNumber(basic.major);
  const rootP = Math.sqrt(toNumber(P));
  const T = 0.002 * Math.cbrt(d) + 0.003 * Math.sqrt(d) + 0.005 * rootP;
  const t = cls.times * T;
  const common = { ok: true, unit: 'in', minorFlat: null, source: 'bs84-formula-from-memory' } as const;
  const [major, pitch, minor] = [inch4(basic.major), inch4(basic.pitch), inch4(basic.minor)];
  if (!cls.external) {
    return {
      ...common,
      kind: 'internal',
      major: band(major, null),
      pitch: band(pitch, add(pitch, printedTo(t, 4))),
      minor: band(minor, inch4(add(minor, nutMinor(P)))),
    };
  }
  const allowance = classId !== 'bolt-close' && d <= 0.75 ? printedTo(0.3 * T, 4) : ZERO;
  const below = (size: Ratio, tolerance: number): ReturnType<typeof band> => {
    const largest = sub(size, allowance);
    return band(sub(largest, printedTo(tolerance, 4)), largest);
  };
  return {
    ...common,
    kind: 'external',
    major: below(major, t + 0.01 * rootP),
    pitch: below(pitch, t),
    minor: below(minor, t + (classId === 'bolt-close' ? 0.013 : 0.02) * rootP),
  };
};

/**
 * Limits of BA threads by BS 93:1951 (formulas as in Machinery's Handbook 31 p. 2115), mm to 0.001, for 0 to 16 BA.
 * Close bolts are for 0 to 10 BA. Refused: the smaller sizes, which that standard's limits don't cover.
 */
export const bs93 = (thread: Thread, classId: string): LimitsResult => {
  if (thread.starts > 1) return refused('multi-start-not-covered');
  const basic = basicSizes(thread);
  const p = pitchLength(thread);
  if (!basic || !p) return refused('no-major-diameter');
  const number = Number(thread.size);
  if (!(number <= 16)) return refused('diameter-not-in-standard');
  const of = (hundredths: number, plus: number): Ratio =>
    add(mul(ratio(hundredths, 100), p), ratio(plus, 1000));
  const common = { ok: true, unit: 'mm', minorFlat: null, source: 'bs93-formula' } as const;
  if (classId === 'nut') {
    return {
      ...common,
      kind: 'internal',
      major: band(basic.major, null),
      pitch: band(basic.pitch, mm3(add(basic.pitch, of(12, 30)))),
      minor: band(basic.minor, mm3(add(basic.minor, mul(ratio(375, 1000), p)))),
    };
  }
  const close = classId === 'bolt-close';
  if (!close && classId !== 'bolt-normal') return refused('class-not-in-standard');
  if (close && number > 10) return refused('class-not-in-standard');
  const allowance = close || number > 10 ? ZERO : ratio(25, 1000);
  const below = (size: Ratio, tolerance: Ratio): ReturnType<typeof band> => {
    const largest = sub(size, allowance);
    return band(mm3(sub(largest, tolerance)), largest);
  };
  return {
    ...common,
    kind: 'external',
    major: below(basic.major, of(close ? 15 : number > 10 ? 25 : 20, 0)),
    pitch: below(basic.pitch, close ? of(8, 20) : of(10, 25)),
    minor: below(basic.minor, close ? of(16, 40) : of(20, 50)),
  };
};
