import { inBase, toNumber, type Ratio, type Stated } from '../quantity';
import type { Job, NoseKind } from '../job';
import type { PlanDepth } from '../cut/plan';
import * as t from '../thread';
import { infeedDepth, type InfeedRefusal } from '../thread/depth';
import { noseFor, toolForm } from '../thread/tool';
import { classOf, inMm } from './thread';

export interface PlanDepthQuestion {
  readonly thread: t.Thread;
  readonly side: Job['side'];
  readonly classId: string | null;
  readonly kind: NoseKind;
  readonly noseSize: Stated | null;
  readonly blank: Stated | null;
  /** The figure Depth, mm. */
  readonly depth: number;
}

/** The pitch diameter to come to, mm: the middle of the class's limits where they are known. Null without a diameter. */
const targetOf = (q: PlanDepthQuestion): { readonly mm: number; readonly aim: PlanDepth['aim'] } | null => {
  const sizes = q.thread.taper ? null : t.basicSizes(q.thread);
  if (!sizes) return null;
  const basic = toNumber(inMm(sizes.pitch, sizes.unit));
  const l = t.limits(q.thread, classOf(q.thread, q.classId, q.side) ?? '');
  if (!l.ok || l.kind !== q.side) return { mm: basic, aim: 'basic' };
  const mm = (x: Ratio | null): number | null => x && toNumber(inMm(x, l.unit));
  const [min, max] = [mm(l.pitch.min), mm(l.pitch.max)];
  if (min !== null && max !== null) return { mm: (min + max) / 2, aim: 'middle' };
  if (min === null && max === null) return { mm: basic, aim: 'basic' };
  return { mm: Math.min(max ?? Infinity, Math.max(min ?? -Infinity, basic)), aim: 'one-limit' };
};

/**
 * Radial depth from the blank as measured to the pitch diameter aimed at: t = (OD − d₂) ÷ 2 + b, internal
 * (D₂ − bore) ÷ 2 + b, with b from the pitch line to the tool's tip (core/thread/depth). Without a measured blank, or a
 * thread with a diameter of its own, the figure Depth as it is.
 */
export const planDepth = (
  q: PlanDepthQuestion,
):
  | { readonly ok: true; readonly depth: PlanDepth }
  | { readonly ok: false; readonly refusal: InfeedRefusal } => {
  const target = targetOf(q);
  if (!q.blank || !target)
    return {
      ok: true,
      depth: { value: q.depth, from: 'nominal', start: null, target: null, aim: 'basic' },
    };
  const form = toolForm(q.thread, q.side);
  const start = toNumber(inBase(q.blank));
  const known = { from: 'measured', start, target: target.mm, aim: target.aim } as const;
  const addendum = ((q.side === 'external' ? 1 : -1) * (start - target.mm)) / 2;
  if (q.thread.form === 'square')
    return addendum > 0
      ? { ok: true, depth: { ...known, value: addendum + form.tip } }
      : { ok: false, refusal: 'nothing-to-cut' };
  const answer = infeedDepth({
    side: q.side,
    half: form.half,
    pitch: form.pitch,
    nose: noseFor(q.kind, q.noseSize && toNumber(inBase(q.noseSize)), form),
    from: start,
    targetPitchDiameter: target.mm,
  });
  return answer.ok
    ? { ok: true, depth: { ...known, value: answer.radial } }
    : { ok: false, refusal: answer.refusal };
};
