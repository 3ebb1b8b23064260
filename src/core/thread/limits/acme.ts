import { add, less, max, mul, ratio, roundTo, sub, toNumber, type Ratio } from '../../quantity';
import { isPreferredAcme } from '../families/power';
import { basicSizes, pitchLength } from '../forms';
import type { Thread } from '../thread';
import { inch4, printedTo } from './rounded';
import { band, refused, type LimitsResult } from './types';

/** Factors of √D for the allowance, of √D and √P for the pitch diameter tolerance, by class (ASME B1.5). */
const CLASSES: Readonly<Record<string, readonly [allowance: number, d: number, p: number]>> = {
  '2G': [0.008, 0.006, 0.03],
  '3G': [0.006, 0.0028, 0.014],
  '4G': [0.004, 0.002, 0.01],
};

/**
 * Limits of general purpose Acme (ASME B1.5, classes 2G 3G 4G) and stub Acme (ASME B1.8, class 2G) screws and nuts,
 * inch to 0.0001, for the standard's preferred diameters and pitches: its tolerances are tabulated for those pairs.
 * From memory: all of stub Acme, and the allowances of 3G and 4G. Single start: refused for more.
 */
const general =
  (stub: boolean) =>
  (thread: Thread, classId: string): LimitsResult => {
    const [member = '', name = ''] = classId.split('-');
    const factors = CLASSES[name];
    if (!factors || (stub && name !== '2G') || (member !== 'screw' && member !== 'nut')) {
      return refused('class-not-in-standard');
    }
    if (thread.starts > 1) return refused('multi-start-not-covered');
    const basic = basicSizes(thread);
    const P = pitchLength(thread);
    if (!basic || !P) return refused('no-major-diameter');
    if (!isPreferredAcme(thread.size, thread.pitch.value.n.toString()))
      return refused('pitch-not-in-standard');
    const [rootD, rootP] = [Math.sqrt(toNumber(basic.major)), Math.sqrt(toNumber(P))];
    const pitchTol = factors[1] * rootD + factors[2] * rootP;
    const allowance = printedTo(factors[0] * rootD, 4);
    // 10 tpi and coarser.
    const clearance = less(P, ratio(1, 10)) ? ratio(10, 1000) : ratio(20, 1000);
    const crestTol = inch4(max(mul(ratio(5, 100), P), ratio(5, 1000)));
    const common = {
      ok: true,
      unit: 'in',
      minorFlat: null,
      source: stub
        ? 'asmeB1.8-formula-from-memory'
        : name === '2G'
          ? 'asmeB1.5-formula'
          : 'asmeB1.5-formula-from-memory',
    } as const;
    const [major, pitch, minor] = [inch4(basic.major), inch4(basic.pitch), basic.minor];
    if (member === 'nut') {
      const root = add(major, clearance);
      return {
        ...common,
        kind: 'internal',
        major: band(root, add(root, clearance)),
        pitch: band(pitch, add(pitch, printedTo(pitchTol, 4))),
        minor: band(inch4(minor), inch4(add(minor, crestTol))),
      };
    }
    const pitchMax = sub(pitch, allowance);
    const rootMax = sub(minor, clearance);
    // Tolerance at the root: one and a half times that of the pitch diameter; stub Acme the same as it.
    const rootTol = printedTo((stub ? 1 : 1.5) * pitchTol, 6);
    return {
      ...common,
      kind: 'external',
      major: band(sub(major, crestTol), major),
      pitch: band(sub(pitchMax, printedTo(pitchTol, 4)), pitchMax),
      // Halves to the even digit, as printed rows show.
      minor: band(roundTo(sub(inch4(rootMax), rootTol), 4, 'even'), inch4(rootMax)),
    };
  };

export const asmeB15 = general(false);
export const asmeB18 = general(true);

/** Root of a buttress screw below the crest, and of its nut beyond the major diameter, × P (ASME B1.9). */
const BUTTRESS_ROOT: Ratio = ratio(132542, 100_000);
const BUTTRESS_NUT_ROOT: Ratio = ratio(12542, 100_000);

/**
 * Limits of buttress threads 7°/45° by ASME B1.9 (from memory of its formulas), inch to 0.0001. Class 2 pitch diameter
 * tolerance 0.002 D^⅓ + 0.0173 √P for an engagement of ten pitches; class 3 is two thirds of it and is also the
 * allowance on every screw. Crests have the same tolerance; roots are limited on one side.
 */
export const asmeB19 = (thread: Thread, classId: string): LimitsResult => {
  const m = /^(screw|nut)-([23])$/.exec(classId);
  if (!m) return refused('class-not-in-standard');
  if (thread.starts > 1) return refused('multi-start-not-covered');
  const basic = basicSizes(thread);
  const P = pitchLength(thread);
  if (!basic || !P) return refused('no-major-diameter');
  const class2 = 0.002 * Math.cbrt(toNumber(basic.major)) + 0.0173 * Math.sqrt(toNumber(P));
  const class3 = (class2 * 2) / 3;
  const tolerance = printedTo(m[2] === '3' ? class3 : class2, 4);
  const common = { ok: true, unit: 'in', minorFlat: null, source: 'asmeB1.9-formula-from-memory' } as const;
  const [major, pitch, minor] = [inch4(basic.major), inch4(basic.pitch), inch4(basic.minor)];
  if (m[1] === 'nut') {
    return {
      ...common,
      kind: 'internal',
      major: band(inch4(add(basic.major, mul(BUTTRESS_NUT_ROOT, P))), null),
      pitch: band(pitch, add(pitch, tolerance)),
      minor: band(minor, add(minor, tolerance)),
    };
  }
  const allowance = printedTo(class3, 4);
  const below = (size: Ratio): ReturnType<typeof band> =>
    band(sub(sub(size, allowance), tolerance), sub(size, allowance));
  return {
    ...common,
    kind: 'external',
    major: below(major),
    pitch: below(pitch),
    minor: band(null, inch4(sub(sub(basic.major, allowance), mul(BUTTRESS_ROOT, P)))),
  };
};
