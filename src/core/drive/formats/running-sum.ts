/** Where a running sum stands after so many additions. */
export interface RunningSum {
  readonly sum: number;
  /** The addition from which on it stands still; null while it grows. */
  readonly stalledAt: number | null;
}

/**
 * A single-precision running sum, s = fround(s + r) from 0, after so many additions: bit for bit what one addition
 * after another gives, in as many steps as there are binades. Between two powers of two the spacing of the numbers
 * is one, so every addition adds the same rounded amount from the second on (the first may still turn an odd last
 * bit into an even one where r lies halfway); such a stretch is one multiplication, exact in double precision.
 * Source: IEEE 754-2019, 4.3.1; own derivation.
 * @param r above 0, itself a single-precision number
 * @param additions whole, 0 or more
 */
export const runningSum = (r: number, additions: number): RunningSum => {
  let [sum, done] = [0, 0];
  while (done < additions) {
    const first = Math.fround(sum + r);
    if (first === sum) return { sum, stalledAt: done };
    const second = Math.fround(first + r);
    const step = first - sum;
    const top = 2 ** (Math.floor(Math.log2(sum)) + 1);
    // The last ones before the power of two are done singly: beyond it the numbers lie twice as far apart.
    const room = Math.floor((top - sum) / Math.max(step, r)) - 3;
    const stretch = sum > 0 && second - first === step ? Math.min(room, additions - done) : 0;
    if (stretch > 1) {
      sum += stretch * step;
      done += stretch;
    } else {
      sum = first;
      done += 1;
    }
  }
  return { sum, stalledAt: null };
};

/** More additions than any sum takes to stand still: each of 24 or so binades has at most 2^24 numbers. */
const EVER = 2 ** 31;

/** The addition at which a single-precision running sum of r begins to stand still. */
export const stallOf = (r: number): number => runningSum(r, EVER).stalledAt ?? EVER;
