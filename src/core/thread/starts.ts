import { decimalText, leadFrom, mul, ratio, timesStarts, type Lead } from '../quantity';
import type { Thread } from './thread';

/** Most starts that are offered; common practice, worms included. */
export const MAX_STARTS = 12;

/** Lead of a thread: starts × pitch. */
export const leadOf = (thread: Thread): Lead => timesStarts(leadFrom(thread.pitch), thread.starts);

/** Takes the starts off an id: "tr:Tr40x7*2" is the thread "tr:Tr40x7" with 2. */
export const readStarts = (id: string): readonly [base: string, starts: number] => {
  const at = id.lastIndexOf('*');
  const n = Number(id.slice(at + 1));
  return at > 0 && Number.isInteger(n) && n >= 2 && n <= MAX_STARTS ? [id.slice(0, at), n] : [id, 1];
};

/** Inches to four places, as inch standards write pitch and lead of a multi-start thread. */
const inches = (starts: number, tpi: Thread['pitch']): string =>
  decimalText(mul(starts, ratio(tpi.value.d, tpi.value.n)), { places: 4 });

const designation = (t: Thread, starts: number): string => {
  const lead = decimalText(mul(starts, t.pitch.value), { places: 6 });
  const pitch = decimalText(t.pitch.value, { places: 6 });
  if (t.pitch.unit === 'mm') {
    // ISO 2902 puts the lead first and the pitch in brackets; ISO 965-1 marks both with letters.
    return t.form === 'trapezoidal30' ? `${t.size}×${lead}(P${pitch})` : `${t.size}×Ph${lead}P${pitch}`;
  }
  if (t.pitch.unit !== 'tpi') return `${t.designation} ×${starts}`;
  const series = /[A-Z][A-Za-z ]*$/.exec(t.designation)?.[0] ?? '';
  return `${t.size}-${inches(1, t.pitch)}P-${inches(starts, t.pitch)}L ${series}`.trim();
};

/**
 * The same profile cut with several starts: pitch unchanged, lead multiplied.
 * @throws RangeError for starts that are not whole from 1 to MAX_STARTS, or a thread that has several already
 */
export const withStarts = (thread: Thread, starts: number): Thread => {
  if (!Number.isInteger(starts) || starts < 1 || starts > MAX_STARTS)
    throw new RangeError(`${starts} starts`);
  if (thread.starts !== 1) throw new RangeError('already multi-start');
  if (starts === 1) return thread;
  return { ...thread, id: `${thread.id}*${starts}`, designation: designation(thread, starts), starts };
};
