import type { CutPlan } from '../../core/cut/plan';
import { inBase, toNumber } from '../../core/quantity';
import { bothAngles } from '../../core/thread/groove';
import type { GrooveCut, GrooveTool } from '../../elements/groove-path';

/** The plan's passes as they lie in the drawing: headstock left, right positive. */
export const grooveOf = (
  plan: CutPlan,
): { readonly tool: GrooveTool; readonly cuts: readonly GrooveCut[] } => {
  const { leading, trailing } = bothAngles(plan.point.half);
  const toLeft = plan.travel === 'headstock';
  const ahead = toLeft ? -1 : 1;
  const cutting = plan.passes.filter((p) => p.kind === 'cut');
  const perDepth = plan.reached > 0 ? plan.creep / plan.reached : 0;
  return {
    tool: {
      left: toLeft ? leading : trailing,
      right: toLeft ? trailing : leading,
      flat: plan.point.flat,
      radius: plan.point.radius,
    },
    cuts: cutting.map((p) => {
      // Along a flank the tool still has to come forward; by turns it stands ahead of its last place.
      const stands =
        plan.infeed === 'alternate-flank' && p.top
          ? toNumber(inBase(p.top.reading))
          : (p.depth - plan.reached) * perDepth;
      return { depth: p.depth, at: ahead * stands };
    }),
  };
};
