import { add, sub, type Ratio } from '../quantity';
import type { Limits } from './limits';
import { basicSizes } from './forms';
import type { Thread } from './thread';

export interface Diameters {
  readonly major: Ratio;
  readonly pitch: Ratio;
  readonly minor: Ratio;
}

/**
 * The outlines of most and least material within a class's limits, in the thread's own unit. Where the standard leaves a
 * root open it is drawn as far from the pitch line as the basic profile has it. Null where pitch or crest have no limits.
 */
export const drawnBand = (
  thread: Thread,
  l: Pick<Limits, 'kind' | 'major' | 'pitch' | 'minor'>,
): { readonly most: Diameters; readonly least: Diameters } | null => {
  const basic = basicSizes(thread);
  const { major, pitch, minor } = l;
  if (!basic || !pitch.min || !pitch.max) return null;
  const below = (p: Ratio): Ratio => sub(p, sub(basic.pitch, basic.minor));
  const above = (p: Ratio): Ratio => add(p, sub(basic.major, basic.pitch));
  if (l.kind === 'external') {
    if (!major.min || !major.max) return null;
    return {
      most: { major: major.max, pitch: pitch.max, minor: minor.max ?? below(pitch.max) },
      least: { major: major.min, pitch: pitch.min, minor: minor.min ?? below(pitch.min) },
    };
  }
  if (!minor.min || !minor.max) return null;
  return {
    most: { major: major.min ?? above(pitch.min), pitch: pitch.min, minor: minor.min },
    least: { major: major.max ?? above(pitch.max), pitch: pitch.max, minor: minor.max },
  };
};
