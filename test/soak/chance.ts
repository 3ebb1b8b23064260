/** Random numbers that are the same again for the same seed (mulberry32). */
export class Chance {
  constructor(private state: number) {}

  /** From 0 up to, not including, 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from `least` to `most`, both included. */
  between(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  /** One of a list that isn't empty. */
  pick<T>(list: readonly T[]): T {
    return list[this.between(0, list.length - 1)] as T;
  }

  shuffled<T>(list: readonly T[]): T[] {
    const left = [...list];
    return list.map(() => left.splice(this.between(0, left.length - 1), 1)[0] as T);
  }
}
