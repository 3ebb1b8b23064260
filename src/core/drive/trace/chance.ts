/** A small generator of even chances, xorshift32 (Marsaglia 2003): the same seed gives the same row. */
export class Chance {
  private state: number;
  constructor(seed: number) {
    this.state = seed | 0 || 0x9e3779b9 | 0;
    // The first numbers after a small seed are alike; they are thrown away.
    for (let n = 0; n < 8; n += 1) this.next();
  }

  /** Above 0, below 1. */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return ((x >>> 0) + 0.5) / 2 ** 32;
  }

  /** How many trials until the next hit, the hit counted, where each hits with chance `p`: geometric, by inversion. */
  gap(p: number): number {
    if (p <= 0) return Infinity;
    return 1 + Math.floor(Math.log(this.next()) / Math.log1p(-p));
  }
}
