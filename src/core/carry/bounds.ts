/** What may stand in a file: far above anything the app makes, so that a made-up one can't fill the memory. */
export const MOST = {
  /** Characters of the whole text. */
  size: 32_000_000,
  depth: 32,
  rows: 100_000,
  key: 200,
  text: 100_000,
} as const;

export type BoundsCode = 'deep' | 'keys' | 'numbers' | 'fractions' | 'long';

/** Keys that mean more to JavaScript than to whoever wrote them. */
const RESERVED = ['__proto__', 'constructor', 'prototype'];
const NUMERATOR = /^-?\d{1,40}$/;
const DENOMINATOR = /^[1-9]\d{0,39}$/;

const written = (x: unknown, as: RegExp): boolean => typeof x === 'string' && as.test(x);

/** What is wrong with a value out of a file, or null. Never throws; goes no deeper than is allowed. */
export const beyond = (x: unknown, depth: number = MOST.depth): BoundsCode | null => {
  if (typeof x === 'string') return x.length > MOST.text ? 'long' : null;
  if (typeof x === 'number') return Math.abs(x) <= Number.MAX_SAFE_INTEGER ? null : 'numbers';
  if (typeof x !== 'object' || x === null) return typeof x === 'boolean' || x === null ? null : 'keys';
  if (depth === 0) return 'deep';
  if (!Array.isArray(x)) {
    const keys = Object.keys(x);
    if (keys.some((k) => k.length > MOST.key || RESERVED.includes(k))) return 'keys';
    const { n, d } = x as { n?: unknown; d?: unknown };
    const isFraction = keys.includes('n') && keys.includes('d');
    if (isFraction && !(written(n, NUMERATOR) && written(d, DENOMINATOR))) return 'fractions';
  }
  for (const value of Object.values(x)) {
    const found = beyond(value, depth - 1);
    if (found) return found;
  }
  return null;
};
