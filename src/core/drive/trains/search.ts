import { div, mul, ONE, toNumber, type Lead, type Ratio } from '../../quantity';
import { productsOf, type Combo } from './combos';
import { fit } from './mesh';
import { changedWheels, trainFor, wantedRatio, type Gearing, type Train } from './train';
import { handOf } from './turns';
import type { Stages } from './written';

export type Order = 'error' | 'ease';

export interface SearchOptions {
  readonly hand: 'right' | 'left';
  /** Most pairs of wheels: 1 simple trains only, 2 compound, 3 two studs with two wheels each. */
  readonly pairs: 1 | 2 | 3;
  readonly order: Order;
  /** How many trains to give at most. */
  readonly keep: number;
  /** Trains further off than this aren't looked at, ppm. */
  readonly within: number;
}

export interface Found {
  readonly trains: readonly Train[];
  /** Sets of wheels near enough that can't be set up on this banjo in any order. */
  readonly dontFit: number;
}

interface Candidate {
  readonly error: number;
  readonly changes: number;
  readonly wheels: number;
  readonly teeth: number;
  readonly stages: Stages;
  readonly box: string | null;
}

/** Errors nearer to each other than this (1e-7 ppm) count as the same, so that ease decides between them. */
const SAME = 1e-13;

const byEase = (a: Candidate, b: Candidate): number =>
  a.changes - b.changes || a.wheels - b.wheels || a.stages.length - b.stages.length || a.teeth - b.teeth;
const byError = (a: Candidate, b: Candidate): number =>
  Math.abs(a.error - b.error) > SAME ? a.error - b.error : 0;
const byText = (a: Candidate, b: Candidate): number => {
  const [p, q] = [JSON.stringify([a.stages, a.box]), JSON.stringify([b.stages, b.box])];
  return p < q ? -1 : p > q ? 1 : 0;
};
const ORDERS: Record<Order, (a: Candidate, b: Candidate) => number> = {
  error: (a, b) => byError(a, b) || byEase(a, b) || byText(a, b),
  ease: (a, b) => byEase(a, b) || byError(a, b) || byText(a, b),
};

/** Every order of a short list, none twice. */
const orders = (list: readonly number[]): readonly (readonly number[])[] => {
  if (list.length < 2) return [list];
  return [...new Set(list)].flatMap((first) => {
    const rest = [...list];
    rest.splice(rest.indexOf(first), 1);
    return orders(rest).map((o) => [first, ...o]);
  });
};

/** The chains with so many idlers put in, from the wheels that are left. */
const withIdlers = (stages: Stages, count: number, left: readonly number[]): Stages[] => {
  if (count === 0) return [stages];
  const all: Stages[] = [];
  for (const z of new Set(left)) {
    const rest = [...left];
    rest.splice(rest.indexOf(z), 1);
    for (let i = 0; i < stages.length; i += 1) {
      const chain = stages[i] ?? [];
      // Two idlers belong into one chain, in either order; a compound train takes one, in any of its meshes.
      const next = stages.map((s, k) => (k === i ? [...chain.slice(0, -1), z, ...chain.slice(-1)] : s));
      if (count === 1) all.push(next);
      else all.push(...withIdlers(next, count - 1, rest));
    }
  }
  return all;
};

const MOST_IDLERS = [0, 2, 1, 0] as const;

/** Sets up drivers and driven wheels in the easiest way that the banjo and the hand allow; null when none does. */
const setUp = (
  g: Gearing,
  hand: 'right' | 'left',
  drivers: readonly number[],
  driven: readonly number[],
  left: readonly number[],
): { stages: Stages; changes: number } | null => {
  const pairs = drivers.length;
  let best: { stages: Stages; changes: number; teeth: number } | null = null;
  // Without the distance of the shafts two wheels alone can't be known to meet: an idler makes them.
  const fewest = pairs === 1 && g.banjo.shafts === null ? 1 : 0;
  for (let idlers = fewest; idlers <= (MOST_IDLERS[pairs] ?? 0) && !best; idlers += 1)
    for (const a of orders(drivers))
      for (const b of orders(driven)) {
        const plain = a.map((z, i) => [z, b[i] ?? z]);
        const turns = handOf(idlers % 2 ? [...plain, [1, 1]] : plain, g.shaftTurns);
        if (turns !== null && turns !== hand) continue;
        for (const stages of withIdlers(plain, idlers, left)) {
          const changes = changedWheels(stages, g.mounted).flat().filter(Boolean).length;
          const teeth = stages.flat().reduce((n, z) => n + z, 0);
          if (best && (changes > best.changes || (changes === best.changes && teeth >= best.teeth))) continue;
          if (fit(stages, g.banjo).fits) best = { stages, changes, teeth };
        }
      }
  return best;
};

/** The wheels of the set that are left when some are taken; null when one of them isn't there. */
const leftOf = (wheels: readonly number[], taken: readonly number[]): number[] | null => {
  const left = [...wheels];
  for (const z of taken) {
    const at = left.indexOf(z);
    if (at < 0) return null;
    left.splice(at, 1);
  }
  return left;
};

/** Where in the rising list a product first reaches the value. */
const firstAt = (list: readonly Combo[], value: number): number => {
  let [low, high] = [0, list.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((list[mid]?.product ?? 0) < value) low = mid + 1;
    else high = mid;
  }
  return low;
};

/** The best so far, in order, none beyond the wanted number. */
class Best {
  readonly list: Candidate[] = [];
  constructor(
    private readonly keep: number,
    private readonly compare: (a: Candidate, b: Candidate) => number,
  ) {}
  get full(): boolean {
    return this.list.length >= this.keep;
  }
  get worst(): Candidate | undefined {
    return this.list.at(-1);
  }
  add(c: Candidate): void {
    let [low, high] = [0, this.list.length];
    while (low < high) {
      const mid = (low + high) >> 1;
      const there = this.list[mid];
      if (there && this.compare(there, c) <= 0) low = mid + 1;
      else high = mid;
    }
    this.list.splice(low, 0, c);
    if (this.list.length > this.keep) this.list.pop();
  }
}

/** Drivers and driven wheels whose ratio is near enough, not set up yet. */
interface Near {
  readonly error: number;
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  readonly left: readonly number[];
  readonly box: string | null;
}

/**
 * Products of drivers stand in a rising list; for each product of driven wheels the near ones are found by
 * halving, so the cost grows with the number of combinations, not of pairs of them.
 */
const nearOnes = (g: Gearing, wanted: Lead, o: SearchOptions): Near[] => {
  const target = wantedRatio(g.screwLead, wanted);
  const rows: readonly { name: string | null; ratio: Ratio }[] =
    g.box.length > 0 ? g.box : [{ name: null, ratio: ONE }];
  const most = o.within * 1e-6 + SAME;
  const all: Near[] = [];
  for (let pairs = 1; pairs <= o.pairs; pairs += 1) {
    if (g.banjo.studs !== null && pairs - 1 > g.banjo.studs) break;
    const combos = productsOf(g.wheels, pairs);
    for (const { name, ratio } of rows) {
      const need = toNumber(div(target, mul(g.fixed, ratio)));
      for (const low of combos) {
        const middle = need * low.product;
        for (let i = firstAt(combos, middle * (1 - most)); i < combos.length; i += 1) {
          const high = combos[i] as Combo;
          const error = Math.abs(high.product / low.product / need - 1);
          if (error > most) {
            if (high.product > middle) break;
            continue;
          }
          const left = leftOf(g.wheels, [...high.teeth, ...low.teeth]);
          if (left) {
            const off = error < SAME ? 0 : error;
            all.push({ error: off, drivers: high.teeth, driven: low.teeth, left, box: name });
          }
        }
      }
    }
  }
  return all.sort((a, b) => a.error - b.error);
};

/**
 * The trains for a lead, in order of error or of ease, each set of drivers and driven wheels once, set up in its
 * easiest way. Doubles only choose what is looked at and order it (to 1e-7 ppm); leads and errors given are exact.
 */
export const searchTrains = (g: Gearing, wanted: Lead, o: SearchOptions): Found => {
  const best = new Best(o.keep, ORDERS[o.order]);
  let dontFit = 0;
  for (const { error, drivers, driven, left, box } of nearOnes(g, wanted, o)) {
    if (o.order === 'error' && best.full && error > (best.worst?.error ?? 0) + SAME) break;
    const found = setUp(g, o.hand, drivers, driven, left);
    if (!found) {
      dontFit += 1;
      continue;
    }
    const flat = found.stages.flat();
    const teeth = flat.reduce((n, z) => n + z, 0);
    best.add({ error, changes: found.changes, wheels: flat.length, teeth, stages: found.stages, box });
  }
  const trains = best.list.flatMap((c) => trainFor(g, { stages: c.stages, box: c.box }, wanted) ?? []);
  return { trains, dontFit };
};
