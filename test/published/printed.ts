import { decimalText, type Ratio } from '../../src/core/quantity';
import { catalogue, threadById } from '../../src/core/thread/catalogue';
import { limits, type Band } from '../../src/core/thread/limits';
import type { Thread } from '../../src/core/thread/thread';

/** A thread of the catalogue; a slip in a test's id must not pass as a refusal. */
export const thread = (id: string): Thread => {
  const t = threadById(id);
  if (!t) throw new Error(`no thread ${id} among ${catalogue().length}`);
  return t;
};

/**
 * Limits as a table's row prints them, "major | pitch | minor", each largest first, "-" where there is none; or the
 * code of the refusal.
 */
export const printed = (t: Thread, classId: string): string => {
  const l = limits(t, classId);
  if (!l.ok) return l.refusal;
  const places = l.unit === 'mm' ? 3 : 4;
  const one = (x: Ratio | null): string => (x ? decimalText(x, { places, keepZeros: true }) : '-');
  const text = (b: Band): string => `${one(b.max)} ${one(b.min)}`;
  return [l.major, l.pitch, l.minor].map(text).join(' | ');
};
