import { add, div, mul, PI_HIGH, PI_LOW, ppm, ratio, sub, type Lead, type Ratio } from '../../quantity';
import { meshes, seatsOf, type Banjo } from './mesh';
import type { BoxRow, Stages, WheelSet, WrittenTrain } from './written';

/** A change-gear machine as the search needs it: everything in it known. */
export interface Gearing {
  readonly wheels: WheelSet;
  /** Revs of the train's first shaft per spindle rev. */
  readonly fixed: Ratio;
  /** Lever positions of a quick-change box; empty without one. */
  readonly box: readonly BoxRow[];
  /** Travel per leadscrew rev, mm. */
  readonly screwLead: Ratio;
  /** How the first shaft turns, seen beside the spindle; a tumbler gives either. null: not known. */
  readonly shaftTurns: 'same' | 'opposite' | 'either' | null;
  readonly banjo: Banjo;
  readonly mounted: WrittenTrain | null;
}

export interface Train extends WrittenTrain {
  /** Leadscrew revs per spindle rev, with fixed gearing and box. */
  readonly ratio: Ratio;
  /** Travel per spindle rev, mm. */
  readonly lead: Ratio;
  readonly exact: boolean;
  /** (lead ÷ lead wanted − 1) × 10⁶; 0 when exact. */
  readonly ppm: number;
  /** Wheels to put on, by seat from the spindle's end; a seat whose wheel is mounted already is false. */
  readonly changed: readonly (readonly boolean[])[];
  readonly changes: number;
}

/** Product of drivers ÷ product of driven wheels; idlers don't count. */
export const trainRatio = (stages: Stages): Ratio =>
  stages.reduce((r, s) => mul(r, ratio(s[0] ?? 1, s.at(-1) ?? 1)), ratio(1));

const boxRatio = (box: readonly BoxRow[], name: string | null): Ratio | null =>
  name === null ? (box.length === 0 ? ratio(1) : null) : (box.find((r) => r.name === name)?.ratio ?? null);

/** Leadscrew revs per spindle rev of a written train; null when its lever position isn't in the box's table. */
export const screwPerSpindle = (g: Pick<Gearing, 'fixed' | 'box'>, t: WrittenTrain): Ratio | null => {
  const q = boxRatio(g.box, t.box);
  return q && mul(g.fixed, trainRatio(t.stages), q);
};

/**
 * Which hand a train cuts with a right-hand leadscrew: work and screw turning in the same sense cut the screw's
 * own hand (the nut moves as a nut on the work would). Each mesh turns the sense round. null: not known, or
 * either by the tumbler. Source: geometry.
 */
export const handOf = (stages: Stages, shaftTurns: Gearing['shaftTurns']): 'right' | 'left' | null => {
  if (shaftTurns === null || shaftTurns === 'either') return null;
  const even = meshes(stages) % 2 === 0;
  return even === (shaftTurns === 'same') ? 'right' : 'left';
};

/** Seats as they can be told apart at the machine: first shaft, leadscrew, studs counted from the first shaft. */
const named = (stages: Stages): Map<string, number> => {
  const screw = meshes(stages);
  return new Map(
    seatsOf(stages).map(({ shaft, stage, teeth }) => [
      shaft === screw ? 'screw' : `${shaft}/${stage}`,
      teeth,
    ]),
  );
};

/** For each wheel of a train, whether it has to be put on. */
export const changedWheels = (stages: Stages, mounted: WrittenTrain | null): boolean[][] => {
  const now = mounted ? named(mounted.stages) : new Map<string, number>();
  const screw = meshes(stages);
  let shaft = 0;
  return stages.map((chain, stage) => {
    const here = chain.map((teeth, i) => {
      const at = shaft + i;
      return now.get(at === screw ? 'screw' : `${at}/${stage}`) !== teeth;
    });
    shaft += chain.length - 1;
    return here;
  });
};

/** What a written train cuts, beside the lead wanted. null when its lever position isn't in the table. */
export const trainFor = (g: Gearing, t: WrittenTrain, wanted: Lead): Train | null => {
  const r = screwPerSpindle(g, t);
  if (!r) return null;
  const cut = mul(r, g.screwLead);
  const off = ppm(cut, wanted.mm, wanted.pi);
  const exact = !wanted.pi && sub(cut, wanted.mm).n === 0n;
  const changed = changedWheels(t.stages, g.mounted);
  return {
    ...t,
    ratio: r,
    lead: cut,
    exact,
    ppm: exact ? 0 : off,
    changed,
    changes: changed.flat().filter(Boolean).length,
  };
};

/** Leadscrew revs per spindle rev wanted, π taken halfway between its bounds (5e-19). */
export const wantedRatio = (screwLead: Ratio, l: Lead): Ratio =>
  div(l.pi ? mul(l.mm, div(add(PI_LOW, PI_HIGH), 2)) : l.mm, screwLead);
