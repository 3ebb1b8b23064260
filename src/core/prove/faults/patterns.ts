import type { FaultTest, Weighed } from './reading';

/** What no wrong entry explains, since it is no ratio. */
export const PATTERNS = ['offset', 'runs', 'per-rev', 'speed', 'inverter'] as const;
export type Pattern = (typeof PATTERNS)[number];

/** What may be behind each, likeliest first (common practice). */
export type PatternCause =
  | 'backlash'
  | 'approach'
  | 'slip'
  | 'lost-steps'
  | 'noise'
  | 'eccentric-pulley'
  | 'eccentric-encoder'
  | 'screw-wobble'
  | 'rate-limit'
  | 'burst'
  | 'torque'
  | 'common-mode'
  | 'screen'
  | 'supply';

/** What tells them apart; the words say how. */
export type PatternTest =
  'two-lengths' | 'back-slow-fast' | 'indicator-per-turn' | 'half-speed' | 'inverter-on-still';

export const PATTERN: Readonly<Record<Pattern, { causes: readonly PatternCause[]; test: PatternTest }>> = {
  offset: { causes: ['backlash', 'approach'], test: 'two-lengths' },
  runs: { causes: ['slip', 'lost-steps', 'noise'], test: 'back-slow-fast' },
  'per-rev': {
    causes: ['eccentric-encoder', 'eccentric-pulley', 'screw-wobble'],
    test: 'indicator-per-turn',
  },
  speed: { causes: ['rate-limit', 'burst', 'torque'], test: 'half-speed' },
  inverter: { causes: ['common-mode', 'screen', 'supply'], test: 'inverter-on-still' },
};

/** Two lengths that are as good as the same. */
const SAME = 0.02;

/**
 * The pattern that the readings themselves show: the same test over the same length scatters by more than its ±
 * (k = 2), or two lengths are short by the same amount and not in proportion. null: neither.
 */
export const patternIn = (ws: readonly Weighed[]): Pattern | null => {
  const pairs = (test: FaultTest): [Weighed, Weighed][] => {
    const of = ws.filter((w) => w.test === test);
    return of.flatMap((a, i) => of.slice(i + 1).map((b): [Weighed, Weighed] => [a, b]));
  };
  const apart = (a: number, b: number, u: number): boolean => Math.abs(a - b) > 2 * u;
  let offset = false;
  for (const test of ['travel', 'carriage', 'screw', 'counts', 'back'] as const)
    for (const [a, b] of pairs(test)) {
      const differ = apart(a.value, b.value, Math.hypot(a.u, b.u));
      if (Math.abs(a.length - b.length) <= SAME * Math.max(a.length, b.length)) {
        if (differ) return 'runs';
      } else if (test === 'travel') {
        const [x, y] = [(1 - a.value) * a.length, (1 - b.value) * b.length];
        offset ||= differ && !apart(x, y, Math.hypot(a.u * a.length, b.u * b.length));
      }
    }
  return offset ? 'offset' : null;
};
