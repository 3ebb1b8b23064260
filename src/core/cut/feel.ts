/** What a gauge or a mating part said by hand. It gives no size, and none is made up from it. */
export const FELT = ['goes', 'tight', 'does-not-go'] as const;
export type Felt = (typeof FELT)[number];
export const TRIED = ['nut', 'gauges'] as const;
/** With the part it is to fit, or with go and no-go gauges (ring for a screw, plug for a nut). */
export type Tried = (typeof TRIED)[number];
export const NO_GO = ['binds', 'runs-on'] as const;
/** The no-go gauge binds within its turns, or runs on past them. */
export type NoGo = (typeof NO_GO)[number];

/** `fits`: done as far as this can tell; `no-go-next`: half an answer; `least-more`: one least pass, then again. */
export type FeelAdvice = 'fits' | 'gauged' | 'no-go-next' | 'least-more' | 'beyond' | 'contradicts';

/**
 * What to do by what was felt. A go gauge that stops while the no-go runs on says that lead, flank angle or a burr is at
 * fault, not the size. Common practice with ISO 1502 gauges.
 */
export const adviceOfFeel = (tried: Tried, felt: Felt, noGo: NoGo | null): FeelAdvice => {
  if (tried === 'nut') return felt === 'goes' ? 'fits' : 'least-more';
  if (noGo === 'runs-on') return felt === 'goes' ? 'beyond' : 'contradicts';
  if (felt !== 'goes') return 'least-more';
  return noGo === null ? 'no-go-next' : 'gauged';
};
