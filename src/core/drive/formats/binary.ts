import { mul, ratio, roundWhole, type Ratio } from '../../quantity';

/** Bits of the significand, the leading one included: IEEE 754-2019 Table 3.5. */
export const FLOAT32_BITS = 24;
export const FLOAT64_BITS = 53;

const width = (n: bigint): number => n.toString(2).length;

/**
 * The binary floating-point number of so many bits that is nearest to a value, halves to even: exactly what a
 * controller keeps of it, without rounding twice. Range of exponents not looked at: ratios of a drive lie far inside.
 * Source: IEEE 754-2019, 4.3.1. @param value above 0
 */
export const nearestFloat = (value: Ratio, bits: number): Ratio => {
  // 2^e ≤ value < 2^(e + 2): one try too high at most.
  let exponent = width(value.n) - width(value.d) - 1;
  const scaled = (e: number): Ratio => {
    const shift = bits - 1 - e;
    return shift >= 0 ? mul(value, 1n << BigInt(shift)) : mul(value, ratio(1n, 1n << BigInt(-shift)));
  };
  const top = 1n << BigInt(bits);
  let exact = scaled(exponent);
  if (exact.n >= top * exact.d) exact = scaled((exponent += 1));
  const significand = roundWhole(exact, 'even');
  const shift = bits - 1 - exponent;
  return shift >= 0 ? ratio(significand, 1n << BigInt(shift)) : ratio(significand << BigInt(-shift));
};
