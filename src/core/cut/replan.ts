import { grooveArea, type Point } from './chip';
import { settingAt } from './dial';
import type { Handwheel } from './handwheels';
import type { DialSetting, PlannedPass } from './pass';

/** What a reading makes of the plan: the passes from here to the finished thread. */
export interface Rest {
  /** Whole divisions still to go on the slide that feeds. */
  readonly divisions: number;
  readonly slide: 'cross' | 'top';
  readonly wheel: Handwheel;
  /** The pass that the dials stand at; null: nothing known, so that divisions count from where they stand now. */
  readonly at: PlannedPass | null;
  /** Passes of the plan that were still to come. */
  readonly left: readonly PlannedPass[];
  /** Least radial depth of a pass, mm. */
  readonly least: number;
  /** The tool's point, as the chip's area depends on it. */
  readonly point: Point;
  /** Passes at the last setting. */
  readonly springs: number;
}

/** Area of the chip between two depths, mm². */
const chipOf = (point: Point, from: number, to: number): number =>
  grooveArea(point, to) - grooveArea(point, from);

/** The largest chip that the plan still allowed, or else the last one taken; null where depth or chip isn't known. */
const mostChip = ({ left, at }: Rest): number | null => {
  if (!at) return null;
  const chips = left.filter((p) => p.kind === 'cut').map((p) => p.chip);
  const most = Math.max(0, ...chips) || at.chip;
  return most > 0 ? most : null;
};

/** Depth at the dials, mm; from a plan or from nothing. */
const depthAt = (at: PlannedPass | null): number => at?.depth ?? 0;

/** Where no chip is known, no pass takes more than so many times the least. Common practice for the last ones. */
const LEASTS = 2;

/** The most divisions that each pass may take in turn, the chip held; never fewer than the least. */
const greedy = (rest: Rest, least: number): number[] => {
  const chip = mostChip(rest);
  const { divisions, point, wheel } = rest;
  const start = depthAt(rest.at);
  const area = (from: number, to: number): number =>
    chipOf(point, start + from * wheel.radial, start + to * wheel.radial);
  const steps: number[] = [];
  for (let from = 0; from < divisions;) {
    let to = from + (chip === null ? LEASTS * least : least);
    while (chip !== null && to < divisions && area(from, to + 1) <= chip * (1 + 1e-9)) to += 1;
    steps.push(Math.min(to, divisions) - from);
    from = to;
  }
  return steps;
};

/** Fills up the last pass from those before it, so that none is below the least; there must be enough for that. */
const filled = (steps: readonly number[], least: number): number[] => {
  const out = [...steps];
  for (let i = out.length - 1; i > 0; i -= 1) {
    const lack = Math.max(0, least - (out[i] as number));
    out[i] = (out[i] as number) + lack;
    out[i - 1] = (out[i - 1] as number) - lack;
  }
  return out;
};

/** Steps as alike as whole divisions allow, the larger first. */
const alike = (divisions: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => Math.floor(divisions / count) + (i < divisions % count ? 1 : 0));

/** Passes of one chip area, cut to whole divisions; null where one would fall below the least or above the chip. */
const even = (rest: Rest, count: number, least: number): number[] | null => {
  const per = rest.wheel.radial;
  const start = depthAt(rest.at);
  const end = start + rest.divisions * per;
  const chip = mostChip(rest);
  const marks = Array.from({ length: count + 1 }, (_, i) =>
    Math.round((Math.sqrt(start ** 2 + (i / count) * (end ** 2 - start ** 2)) - start) / per),
  );
  const steps = marks.slice(1).map((m, i) => m - (marks[i] as number));
  const heavy = (s: number, i: number): boolean => {
    const from = start + (marks[i] as number) * per;
    return chip !== null && chipOf(rest.point, from, from + s * per) > chip * (1 + 1e-9);
  };
  return steps.every((s, i) => s >= least && (s === least || !heavy(s, i))) ? steps : null;
};

/** How the divisions are shared out: none below the least unless all of it is; no chip above the plan's but by a least. */
const shared = (rest: Rest): number[] => {
  const least = Math.max(1, Math.ceil(rest.least / rest.wheel.radial - 1e-9));
  if (rest.divisions <= least) return rest.divisions > 0 ? [rest.divisions] : [];
  const most = greedy(rest, least);
  const count = most.length;
  // Fewer passes rather than any that rubs.
  if (rest.divisions < count * least) return alike(rest.divisions, count - 1);
  if (mostChip(rest) === null) return alike(rest.divisions, count);
  return even(rest, count, least) ?? filled(most, least);
};

/** The slide that doesn't feed stands where the plan's last pass leaves it. */
const resting = ({ at, left, slide }: Rest): DialSetting | null => {
  const last = left.at(-1) ?? at;
  return (slide === 'cross' ? last?.top : last?.cross) ?? null;
};

/**
 * The passes that remain, set on from what the dials read now: one chip area where that goes, in whole divisions whose
 * sum is exact, none below the least unless everything left is. The rule for a first pass is never applied again. Then
 * the spring passes. Numbers count on.
 */
export const replan = (rest: Rest): readonly PlannedPass[] => {
  const { at, slide, wheel, point } = rest;
  const start = (slide === 'cross' ? at?.cross : at?.top)?.divisions ?? 0;
  const other = resting(rest);
  const pass = (n: number, kind: PlannedPass['kind'], divisions: number, from: number): PlannedPass => {
    const depth = depthAt(at) + divisions * wheel.radial;
    const setting = settingAt(wheel, start + divisions);
    return {
      n: (at?.n ?? 0) + n,
      kind,
      cross: slide === 'cross' ? setting : other,
      top: slide === 'top' ? setting : other,
      depth,
      step: depth - from,
      chip: kind === 'cut' ? chipOf(point, from, depth) : 0,
    };
  };
  const passes: PlannedPass[] = [];
  let sum = 0;
  let depth = depthAt(at);
  for (const step of shared(rest)) {
    sum += step;
    const next = pass(passes.length + 1, 'cut', sum, depth);
    passes.push(next);
    depth = next.depth;
  }
  for (let i = 0; i < rest.springs; i += 1) passes.push(pass(passes.length + 1, 'spring', sum, depth));
  return passes;
};
