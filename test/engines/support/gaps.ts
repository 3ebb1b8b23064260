import type { EngineName } from './engine';

/** What some journey asks of an engine's automation beside showing a page; probes.ts finds out whether it is there. */
export const ABILITIES = ['touch', 'console', 'profile'] as const;
export type Ability = (typeof ABILITIES)[number];

export interface Gap {
  readonly engine: EngineName;
  readonly can: Ability;
  readonly reason: string;
}

/**
 * What an engine's automation can't do. A journey that needs it is left out there and says so; one line too many or too
 * few turns a test red.
 */
export const GAPS: readonly Gap[] = [
  {
    engine: 'webkit',
    can: 'profile',
    reason: 'an automated session of WebKitGTK keeps no profile, so nothing is there after it was killed',
  },
  {
    engine: 'webkit',
    can: 'touch',
    reason: 'its driver plays a touch as a mouse, so pages get clicks and no touches',
  },
  {
    engine: 'webkit',
    can: 'console',
    reason:
      'its driver has no log; what went wrong is known by the app’s own log and the reports of the policy',
  },
];

/** Why this engine can't; null where it can. */
export const gapOf = (engine: EngineName, can: Ability): string | null =>
  GAPS.find((gap) => gap.engine === engine && gap.can === can)?.reason ?? null;
