/**
 * How many steps follow from so many further counts. The model calls it for each look at the counter; counts are
 * whole and may be 0. Anything that holds a ratio can stand here.
 */
export interface StepSource {
  step(counts: number): number;
}

/** How a controller holds steps per count. */
export type FormatSpec =
  | { readonly kind: 'fraction'; readonly top: number; readonly bottom: number }
  | { readonly kind: 'float32-product'; readonly ratio: number }
  | { readonly kind: 'float32-sum'; readonly ratio: number }
  | { readonly kind: 'float64-sum'; readonly ratio: number }
  /** A whole number of steps shared out over the counts of a rev, and set right at each index. */
  | { readonly kind: 'rev-count'; readonly perRev: number; readonly counts: number };

/** Whole parts up to here leave the sum and the quotient of doubles exact. */
export const MOST_PART = 2 ** 51;

/**
 * The integer rule: add the numerator for each count, give a step for each whole denominator. Never off by a step.
 * Fixed point with f bits is the fraction round(r·2^f) ÷ 2^f, and k decimals round(r·10^k) ÷ 10^k.
 */
class IntegerRule implements StepSource {
  private rest = 0;
  constructor(
    private readonly top: number,
    private readonly bottom: number,
  ) {}
  step(counts: number): number {
    if (counts > 1 && this.top * counts > MOST_PART) {
      const half = counts >> 1;
      return this.step(half) + this.step(counts - half);
    }
    let rest = this.rest + this.top * counts;
    if (rest < this.bottom) {
      this.rest = rest;
      return 0;
    }
    // A quotient of integers below 2^52 never rounds up to the next whole number.
    const steps = Math.floor(rest / this.bottom);
    rest -= steps * this.bottom;
    this.rest = rest;
    return steps | 0;
  }
}

/** The same rule in small integers, which engines keep in registers: parts below 2^29. */
class SmallIntegerRule implements StepSource {
  private rest = 0;
  private readonly top: number;
  private readonly bottom: number;
  /** So many counts at once leave the sum a small integer. */
  private readonly most: number;
  constructor(top: number, bottom: number) {
    // What comes through a message may be a whole number that is held as a double; each add would convert it.
    this.top = top | 0;
    this.bottom = bottom | 0;
    this.most = top > 0 ? (SMALL / top) | 0 : 1;
  }
  step(counts: number): number {
    let steps = 0;
    let left = counts | 0;
    while (left > this.most) {
      steps = (steps + this.add(this.most)) | 0;
      left = (left - this.most) | 0;
    }
    return (steps + this.add(left)) | 0;
  }
  private add(counts: number): number {
    const rest = (this.rest + Math.imul(this.top, counts)) | 0;
    if (rest < this.bottom) {
      this.rest = rest;
      return 0;
    }
    const whole = (rest / this.bottom) | 0;
    this.rest = (rest - Math.imul(whole, this.bottom)) | 0;
    return whole;
  }
}
const SMALL = 2 ** 29;

/** IEEE 754 binary32 ratio × total of counts, whole part: the product is rounded, nothing accumulates. */
class Float32Product implements StepSource {
  private counts = 0;
  private given = 0;
  private readonly ratio: number;
  constructor(ratio: number) {
    this.ratio = Math.fround(ratio);
  }
  step(counts: number): number {
    this.counts += counts;
    const steps = Math.floor(Math.fround(this.ratio * Math.fround(this.counts)));
    const more = steps - this.given;
    this.given = steps;
    return more | 0;
  }
}

/** A running sum, s += r for each look at the counter; each add is rounded, and the roundings add up. */
class Float32Sum implements StepSource {
  private sum = 0;
  private given = 0;
  private readonly ratio: number;
  constructor(ratio: number) {
    this.ratio = Math.fround(ratio);
  }
  step(counts: number): number {
    this.sum = Math.fround(this.sum + Math.fround(this.ratio * counts));
    const steps = Math.floor(this.sum);
    const more = steps - this.given;
    this.given = steps;
    return more | 0;
  }
}

class Float64Sum implements StepSource {
  private sum = 0;
  private given = 0;
  constructor(private readonly ratio: number) {}
  step(counts: number): number {
    this.sum += this.ratio * counts;
    const steps = Math.floor(this.sum);
    const more = steps - this.given;
    this.given = steps;
    return more | 0;
  }
}

class RevCount implements StepSource {
  private count = 0;
  private rev = 0;
  private given = 0;
  private readonly whole: number;
  constructor(
    private readonly perRev: number,
    private readonly counts: number,
  ) {
    this.whole = Math.round(perRev);
  }
  step(counts: number): number {
    this.count += counts;
    while (this.count >= this.counts) {
      this.count -= this.counts;
      this.rev += 1;
    }
    const steps = Math.floor(this.rev * this.perRev) + Math.floor((this.count * this.whole) / this.counts);
    const more = steps - this.given;
    this.given = steps;
    return more | 0;
  }
}

export const stepSource = (f: FormatSpec): StepSource => {
  switch (f.kind) {
    case 'fraction':
      return f.top < SMALL && f.bottom < SMALL
        ? new SmallIntegerRule(f.top, f.bottom)
        : new IntegerRule(f.top, f.bottom);
    case 'float32-product':
      return new Float32Product(f.ratio);
    case 'float32-sum':
      return new Float32Sum(f.ratio);
    case 'float64-sum':
      return new Float64Sum(f.ratio);
    case 'rev-count':
      return new RevCount(f.perRev, f.counts);
  }
};
