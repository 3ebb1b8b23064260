import { SlidingRange } from './sliding';

/** A turn is looked at in so many sectors; their means show what is left when the single steps are evened out. */
export const SECTORS = 32;
/** Points of the drawing at most; when they are full, neighbours are joined. */
export const MOST_BUCKETS = 1024;
/** Turns in a window at most; a longer window is looked at as far as this. */
const MOST_TURNS = 65_536;

/** What is drawn: lowest, highest and mean error over each stretch of `width` sectors; mm. */
export interface Buckets {
  readonly width: number;
  readonly count: number;
  readonly min: Float64Array;
  readonly max: Float64Array;
  readonly mean: Float64Array;
}

/** Keeps what a trace shows while it runs, in bounded memory however long it is. Errors in mm, by sectors. */
export class Recorder {
  private width = 1;
  private count = 0;
  private filled = 0;
  private readonly min = new Float64Array(MOST_BUCKETS).fill(Infinity);
  private readonly max = new Float64Array(MOST_BUCKETS).fill(-Infinity);
  private readonly mean = new Float64Array(MOST_BUCKETS);

  private readonly turn = new Float64Array(SECTORS);
  private inTurn = 0;
  turns = 0;
  /** Mean error of the first and of the last whole turn. */
  firstTurn: number | null = null;
  lastTurn = 0;
  /**
   * Most that a turn swings about the line that leads from turn to turn, from lowest to highest; and which turn.
   * Not known of a single turn.
   */
  drunken: number | null = null;
  drunkenAt = 0;
  low = Infinity;
  high = -Infinity;
  readonly windows: readonly SlidingRange[];

  /** @param windows lengths in turns within which the spread is looked for */
  constructor(windows: readonly number[]) {
    this.windows = windows.map(
      (turns) => new SlidingRange(Math.min(MOST_TURNS, Math.max(1, Math.round(turns)))),
    );
  }

  sector(min: number, max: number, mean: number): void {
    if (this.count === MOST_BUCKETS && this.filled === 0) this.halve();
    const at = this.filled === 0 ? this.count++ : this.count - 1;
    if (min < (this.min[at] ?? 0)) this.min[at] = min;
    if (max > (this.max[at] ?? 0)) this.max[at] = max;
    this.filled += 1;
    this.mean[at] = (this.mean[at] ?? 0) + (mean - (this.mean[at] ?? 0)) / this.filled;
    if (this.filled === this.width) this.filled = 0;

    this.turn[this.inTurn] = mean;
    this.inTurn += 1;
    if (this.inTurn === SECTORS) this.closeTurn();
  }

  /** Joins neighbouring buckets two by two. */
  private halve(): void {
    const half = MOST_BUCKETS / 2;
    for (let at = 0; at < half; at += 1) {
      const [a, b] = [2 * at, 2 * at + 1];
      this.min[at] = Math.min(this.min[a] ?? 0, this.min[b] ?? 0);
      this.max[at] = Math.max(this.max[a] ?? 0, this.max[b] ?? 0);
      this.mean[at] = ((this.mean[a] ?? 0) + (this.mean[b] ?? 0)) / 2;
    }
    this.min.fill(Infinity, half);
    this.max.fill(-Infinity, half);
    this.mean.fill(0, half);
    this.count = half;
    this.width *= 2;
  }

  private closeTurn(): void {
    let [min, max, sum] = [Infinity, -Infinity, 0];
    for (let s = 0; s < SECTORS; s += 1) {
      const e = this.turn[s] ?? 0;
      if (e < min) min = e;
      if (e > max) max = e;
      sum += e;
    }
    const mean = sum / SECTORS;
    this.inTurn = 0;
    this.turns += 1;
    // A slope fitted within the turn would take away part of a swing that comes once a turn.
    if (this.firstTurn !== null) this.swing((mean - this.lastTurn) / SECTORS);
    this.firstTurn ??= mean;
    this.lastTurn = mean;
    if (min < this.low) this.low = min;
    if (max > this.high) this.high = max;
    for (const w of this.windows) w.push(min, max);
  }

  /** How far the turn just closed swings about a line of so much a sector. */
  private swing(slope: number): void {
    let [low, high] = [Infinity, -Infinity];
    for (let s = 0; s < SECTORS; s += 1) {
      const off = (this.turn[s] ?? 0) - slope * s;
      if (off < low) low = off;
      if (off > high) high = off;
    }
    if (high - low <= (this.drunken ?? -1)) return;
    this.drunken = high - low;
    this.drunkenAt = this.turns;
  }

  buckets(): Buckets {
    const cut = (a: Float64Array): Float64Array => a.slice(0, this.count);
    return {
      width: this.width,
      count: this.count,
      min: cut(this.min),
      max: cut(this.max),
      mean: cut(this.mean),
    };
  }
}
