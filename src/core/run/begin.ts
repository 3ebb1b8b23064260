import type { Standing } from '../figures/standing';

/** What a cut can't begin without, in the order in which a person would see to it. */
export type BeginNeed =
  'plan' | 'speed-not-set' | 'speed-over' | 'speed-unknown' | 'checks-failed' | 'checks';

export interface BeginQuestion {
  /** Passes of the plan; null while it can't be made. */
  readonly passes: number | null;
  /** How the speed set stands against all its limits; null: none is set. */
  readonly speed: Standing | null;
  /** Of the checks before a cut: not done, and failed or recorded as not OK. */
  readonly checksLeft: number;
  readonly checksFailed: number;
}

/**
 * What is still missing before a cut can begin; empty: it can. The Checks page lets a cut begin with no check left, and
 * so does this.
 */
export const beginNeeds = (q: BeginQuestion): readonly BeginNeed[] => {
  const speed: Readonly<Record<Standing, BeginNeed | null>> = {
    within: null,
    near: null,
    over: 'speed-over',
    unknown: 'speed-unknown',
  };
  const needs: (BeginNeed | null)[] = [
    q.passes === null || q.passes < 1 ? 'plan' : null,
    q.speed === null ? 'speed-not-set' : speed[q.speed],
    q.checksFailed > 0 ? 'checks-failed' : q.checksLeft > 0 ? 'checks' : null,
  ];
  return needs.flatMap((n) => n ?? []);
};
