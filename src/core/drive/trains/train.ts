import { add, div, mul, PI_HIGH, PI_LOW, ppm, sub, type Lead, type Ratio } from '../../quantity';
import type { Banjo } from './mesh';
import { screwPerSpindle } from './turns';
import { meshes, seatsOf } from './seats';
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
