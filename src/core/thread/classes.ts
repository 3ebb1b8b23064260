import { familyById, type LimitSystem } from './catalogue';
import { isoCoarse } from './families/iso';
import { uns } from './families/unified';
import type { Family } from './families/family';
import type { Thread } from './thread';

export interface Classes {
  readonly external: readonly string[];
  readonly internal: readonly string[];
  readonly externalDefault: string | null;
  readonly internalDefault: string | null;
}

/**
 * Family whose rules a thread follows. A person's own thread of the 60° form follows the rules of metric or of special
 * unified threads, as ISO 965-1 and ASME B1.1 allow; others of their own follow none.
 */
const rulesOf = (thread: Thread): Family | null => {
  const family = familyById(thread.family);
  if (family) return family;
  if (thread.form !== 'iso60' || !thread.major) return null;
  if (thread.major.unit === 'mm' && thread.pitch.unit === 'mm') return isoCoarse;
  return thread.major.unit === 'in' && thread.pitch.unit === 'tpi' ? uns : null;
};

/** The system of limits that a thread's standard uses, or null. */
export const systemOf = (thread: Thread): LimitSystem | null => rulesOf(thread)?.system ?? null;

/** Classes to offer for a thread: empty lists where no standard's limits are known. */
export const classesOf = (thread: Thread): Classes => {
  const f = rulesOf(thread);
  return {
    external: f?.externalClasses ?? [],
    internal: f?.internalClasses ?? [],
    externalDefault: f?.externalDefault ?? null,
    internalDefault: f?.internalDefault ?? null,
  };
};
