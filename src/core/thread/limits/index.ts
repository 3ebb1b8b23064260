import { familyById, type LimitSystem } from '../catalogue';
import type { Thread } from '../thread';
import { asmeB11 } from './asme-b1-1';
import { bs84, bs93 } from './british';
import { iso965 } from './iso965';
import { refused, type LimitsResult } from './types';

export type { Band, LimitRefusal, Limits, LimitSource, LimitsResult, Refused } from './types';

const SYSTEMS: Readonly<Record<LimitSystem, (thread: Thread, classId: string) => LimitsResult>> = {
  iso965,
  'asmeB1.1': asmeB11,
  bs84,
  bs93,
};

/**
 * Limits of size of a thread in a class of its own standard: exact ratios of the standard's last printed digit, in the
 * thread's own unit. Refused with a code, never extrapolated: see LimitRefusal.
 * @param classId as in Family.externalClasses and internalClasses: "6g", "2B", "bolt-medium"
 */
export const limits = (thread: Thread, classId: string): LimitsResult => {
  const family = familyById(thread.family);
  if (!family?.system) return refused('no-limits-known');
  return SYSTEMS[family.system](thread, classId);
};
