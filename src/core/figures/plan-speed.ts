import type { MaterialId, ToolMaterial } from '../job';
import { CARBIDE_FROM, cuttingSpeed, rpmAt, THREADING_SPEED } from '../cut/materials';
import { passTime, RUN_IN_LEADS, type PassTime } from '../cut/pass-time';
import type { PlanSpeed } from '../cut/plan';
import { inBase, toNumber, type Ratio, type Stated } from '../quantity';

const mm = (s: Stated): number => toNumber(inBase(s));

/** Cutting speeds as speeds of the spindle at the diameter cut; null while material or diameter isn't known. */
export const planSpeed = (q: {
  readonly material: MaterialId | null;
  readonly tool: ToolMaterial | null;
  readonly rpm: Ratio | null;
  readonly diameter: Stated | null;
}): PlanSpeed | null => {
  if (!q.diameter || (q.tool !== 'carbide' && !q.material)) return null;
  const d = mm(q.diameter);
  const atSet = q.rpm && cuttingSpeed(toNumber(q.rpm), d);
  if (q.tool === 'carbide' || !q.material)
    return {
      tool: 'carbide',
      speed: { min: CARBIDE_FROM, max: null },
      rpm: { min: rpmAt(CARBIDE_FROM, d), max: null },
      atSet,
    };
  const speed = THREADING_SPEED[q.material];
  return { tool: 'hss', speed, rpm: { min: rpmAt(speed.min, d), max: rpmAt(speed.max, d) }, atSet };
};

/** Time of a pass and of all; null while speed, lead or length isn't known. */
export const planTime = (q: {
  readonly length: Stated | null;
  readonly groove: Stated | null;
  readonly room: Stated | null;
  readonly lead: number | null;
  readonly rpm: Ratio | null;
  readonly passes: number;
  readonly starts: number;
}): PassTime | null => {
  if (!q.length || !q.lead || !q.rpm) return null;
  const out = q.groove ?? q.room;
  return passTime({
    length: mm(q.length),
    runIn: RUN_IN_LEADS * q.lead,
    runOut: out ? mm(out) : 0,
    lead: q.lead,
    rpm: toNumber(q.rpm),
    passes: q.passes,
    starts: q.starts,
  });
};
