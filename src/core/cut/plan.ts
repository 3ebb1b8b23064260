import type { Infeed, Job, PassHold, PassRule } from '../job';
import { settingAt, divisionsFor, type Dial } from './dial';
import { grooveArea, type Point } from './chip';
import { shiftBound, shifts, type Travel } from './infeed';
import type { SpeedRange } from './materials';
import type { PassTime } from './pass-time';
import type { DialSetting, PlannedPass } from './pass';

/** What of a job the plan can take as usual where nothing is chosen. */
export type PlanChoice = Extract<
  keyof Job,
  | 'infeed'
  | 'topSlide'
  | 'passRule'
  | 'passHold'
  | 'firstPass'
  | 'leastPass'
  | 'passCount'
  | 'chipArea'
  | 'springPasses'
>;

/** What the depth was reckoned from and to. Lengths in mm. */
export interface PlanDepth {
  /** Radial, from first touch to the target. */
  readonly value: number;
  /** `measured`: from the blank to `target`; `nominal`: the figure Depth, from the nominal diameter to the basic one. */
  readonly from: 'measured' | 'nominal';
  readonly start: number | null;
  readonly target: number | null;
  /** Middle of the class's limits, the basic size within the one limit there is, or the basic size alone. */
  readonly aim: 'middle' | 'one-limit' | 'basic';
}

/** The cut, pass by pass, with all that is set before the first. Lengths in mm, angles in degrees, times in s. */
export interface CutPlan {
  readonly passes: readonly PlannedPass[];
  readonly depth: PlanDepth;
  /** Depth at the last setting, never past `depth.value`. */
  readonly reached: number;
  readonly infeed: Infeed;
  readonly rule: PassRule;
  readonly hold: PassHold;
  /** Of what is held: mm, a count, or mm². */
  readonly held: number;
  readonly least: number;
  readonly springs: number;
  /** The slide that goes deeper at each pass, and the depth of one of its divisions. */
  readonly slide: 'cross' | 'top';
  readonly division: number;
  /** Of the cross-slide's dial; null where the plan doesn't set it. */
  readonly reads: 'diameter' | 'radius' | null;
  /** Top slide from square to the axis, and as its own scale says it; null with straight infeed. */
  readonly angle: number | null;
  readonly scale: number | null;
  /** To which end its handle is swung, which way the carriage travels while it cuts. */
  readonly handle: Travel;
  readonly travel: Travel;
  /** How far along the axis the top slide has brought the tool at full depth, and what it shaves off the trailing flank. */
  readonly creep: number;
  readonly shaved: number;
  readonly point: Point;
  /** Starts of the thread: each pass is taken in each. */
  readonly starts: number;
  /** Passes that the rule alone would have made. */
  readonly byRule: number;
  /** Threading speeds, m/min and rpm; null while material or diameter isn't known. `max` null: of carbide. */
  readonly speed: PlanSpeed | null;
  readonly time: PassTime | null;
  /** What was taken as usual, since nothing is chosen. */
  readonly assumed: readonly PlanChoice[];
}

export interface PlanSpeed {
  readonly tool: 'hss' | 'carbide';
  readonly speed: SpeedRange | { readonly min: number; readonly max: null };
  readonly rpm: { readonly min: number; readonly max: number | null };
  /** Cutting speed at the rpm set; null while none is. */
  readonly atSet: number | null;
}

export interface PassesQuestion {
  readonly marks: readonly number[];
  readonly springs: number;
  readonly infeed: Infeed;
  readonly point: Point;
  /** Depth of one division of the dial that feeds, mm. */
  readonly division: number;
  readonly cross: Dial | null;
  readonly top: Dial | null;
}

/** The top slide's settings of an alternate flank infeed: rounded, but never past what the finished groove allows. */
const shiftSettings = ({ marks, division, point, top }: PassesQuestion): readonly (DialSetting | null)[] => {
  const depths = marks.map((m) => m * division);
  const end = depths.at(-1) ?? 0;
  if (!top) return marks.map(() => null);
  return shifts(point.half, depths).map((s, i) => {
    const bound = divisionsFor(top, shiftBound(point.half, end, depths[i] ?? 0).ahead, 'down');
    return settingAt(top, Math.min(bound, divisionsFor(top, s, 'nearest')));
  });
};

/** The passes as they are set on the handwheels, spring passes last. */
export const passesOf = (q: PassesQuestion): readonly PlannedPass[] => {
  const { marks, infeed, division, point, cross, top } = q;
  const shifted = infeed === 'alternate-flank' ? shiftSettings(q) : [];
  const along = infeed === 'flank' || infeed === 'modified-flank';
  const cuts = marks.map((mark, i): PlannedPass => {
    const depth = mark * division;
    const before = (marks[i - 1] ?? 0) * division;
    return {
      n: i + 1,
      kind: 'cut',
      cross: !along && cross ? settingAt(cross, mark) : null,
      top: along && top ? settingAt(top, mark) : (shifted[i] ?? null),
      depth,
      step: depth - before,
      chip: grooveArea(point, depth) - grooveArea(point, before),
    };
  });
  const last = cuts.at(-1);
  if (!last) return [];
  const springs = Array.from({ length: q.springs }, (_, i): PlannedPass => ({
    ...last,
    n: last.n + i + 1,
    kind: 'spring',
    step: 0,
    chip: 0,
  }));
  return [...cuts, ...springs];
};
