/**
 * The largest spread within any window of `size` neighbours, each given by its lowest and highest. Two queues of
 * candidates, so each push costs the same however long the window.
 */
export class SlidingRange {
  worst = 0;
  /** Number of the push at which the worst window ended. */
  at = 0;
  private pushed = 0;
  private readonly low: Extremes;
  private readonly high: Extremes;

  /** @param size neighbours in a window, 1 or more */
  constructor(size: number) {
    this.low = new Extremes(size);
    this.high = new Extremes(size);
  }

  push(min: number, max: number): void {
    this.low.push(this.pushed, -min);
    this.high.push(this.pushed, max);
    this.pushed += 1;
    const range = this.high.top + this.low.top;
    if (range > this.worst) {
      this.worst = range;
      this.at = this.pushed;
    }
  }
}

/** The highest of the last `size` values, in a ring. */
class Extremes {
  private readonly index: Float64Array;
  private readonly value: Float64Array;
  private head = 0;
  private length = 0;
  constructor(private readonly size: number) {
    this.index = new Float64Array(size);
    this.value = new Float64Array(size);
  }
  get top(): number {
    return this.value[this.head] ?? 0;
  }
  push(at: number, value: number): void {
    const { index, value: values, size } = this;
    if (this.length > 0 && (index[this.head] ?? 0) <= at - size) {
      this.head = (this.head + 1) % size;
      this.length -= 1;
    }
    while (this.length > 0 && (values[(this.head + this.length - 1) % size] ?? 0) <= value) this.length -= 1;
    const slot = (this.head + this.length) % size;
    index[slot] = at;
    values[slot] = value;
    this.length += 1;
  }
}
