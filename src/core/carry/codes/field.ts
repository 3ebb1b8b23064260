/**
 * The field of 256 elements, with the polynomial x⁸ + x⁴ + x³ + x² + 1 (ISO/IEC 18004 uses the same for its own
 * correction). Adding is exclusive or.
 */
let tables: { readonly exp: Uint8Array; readonly log: Uint8Array } | undefined;

const made = () => {
  const exp = new Uint8Array(510);
  const log = new Uint8Array(256);
  let power = 1;
  for (let i = 0; i < 255; i += 1) {
    exp[i] = exp[i + 255] = power;
    log[power] = i;
    power = power & 128 ? (power << 1) ^ 0x11d : power << 1;
  }
  return { exp, log };
};

/** One over an element, 1 to 255. @throws RangeError for 0, which has none */
export const inverse = (a: number): number => {
  const { exp, log } = (tables ??= made());
  if (a === 0) throw new RangeError('no inverse');
  return exp[255 - (log[a] ?? 0)] ?? 0;
};

/** The product of two elements, 0 to 255 each. */
export const times = (a: number, b: number): number => {
  const { exp, log } = (tables ??= made());
  return a && b ? (exp[(log[a] ?? 0) + (log[b] ?? 0)] ?? 0) : 0;
};

/** Adds a multiple of a row to another of the same length, in its place. */
export const addMultiple = (to: Uint8Array, row: Uint8Array, factor: number): void => {
  if (factor === 0) return;
  for (let i = 0; i < to.length; i += 1) to[i] = (to[i] ?? 0) ^ times(row[i] ?? 0, factor);
};
