import { mul, ratio, type Ratio } from '../../quantity';
import { meshes } from './seats';
import type { Gearing } from './train';
import type { BoxRow, Stages, WrittenTrain } from './written';

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
