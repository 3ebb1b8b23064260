import type { LimitSystem } from '../catalogue';
import { systemOf } from '../classes';
import type { Thread } from '../thread';
import { asmeB15, asmeB18, asmeB19 } from './acme';
import { asmeB11 } from './asme-b1-1';
import { bs84, bs93 } from './british';
import { iso228 } from './iso228';
import { iso2903 } from './iso2903';
import { iso965 } from './iso965';
import { refused, type LimitsResult } from './types';

export type { Band, LimitRefusal, Limits, LimitSource, LimitsResult, Refused } from './types';

const SYSTEMS: Readonly<Record<LimitSystem, (thread: Thread, classId: string) => LimitsResult>> = {
  iso965,
  'asmeB1.1': asmeB11,
  bs84,
  bs93,
  iso228,
  iso2903,
  'asmeB1.5': asmeB15,
  'asmeB1.8': asmeB18,
  'asmeB1.9': asmeB19,
  taper: () => refused('taper-gauged-by-length'),
};

/**
 * Limits of size of a thread in a class of its own standard: exact ratios of the standard's last printed digit, in the
 * thread's own unit. Refused with a code, never extrapolated: see LimitRefusal.
 * @param classId as in classesOf(thread): "6g", "2B", "bolt-medium", "nut-2G"
 */
export const limits = (thread: Thread, classId: string): LimitsResult => {
  const system = systemOf(thread);
  return system ? SYSTEMS[system](thread, classId) : refused('no-limits-known');
};
