import { ratio, type Ratio } from './ratio';

/** A ratio as it is kept on disk and in files: two whole numbers as text. */
export interface StoredRatio {
  readonly n: string;
  readonly d: string;
}

const WHOLE = /^-?\d{1,40}$/;

export const toStored = (r: Ratio): StoredRatio => ({ n: r.n.toString(), d: r.d.toString() });

/** Reads a stored ratio; null for anything else, including a zero denominator or more than 40 digits. */
export const fromStored = (x: unknown): Ratio | null => {
  if (typeof x !== 'object' || x === null) return null;
  const { n, d } = x as Record<string, unknown>;
  if (typeof n !== 'string' || typeof d !== 'string' || !WHOLE.test(n) || !WHOLE.test(d)) return null;
  const den = BigInt(d);
  return den > 0n ? ratio(BigInt(n), den) : null;
};
