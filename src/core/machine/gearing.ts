import type { Gearing } from '../drive/trains/train';
import { inBase, mul } from '../quantity';
import type { FieldName, MachineProfile } from './fields';
import { banjoOf, boxOf, fixedOf, mountedOf, wheelsOf } from './gears';

/** The change-gear machine as the search for trains needs it, or the fields that it lacks. */
export type GearsOf =
  | { readonly ok: true; readonly gearing: Gearing }
  | { readonly ok: false; readonly missing: readonly FieldName[] };

export const gearsOf = (m: MachineProfile): GearsOf => {
  const wheels = wheelsOf(m);
  const fixed = fixedOf(m);
  const box = boxOf(m);
  const missing: FieldName[] = [];
  if (!m.screwPitch) missing.push('screwPitch');
  if (!m.screwStarts) missing.push('screwStarts');
  if (!wheels) missing.push('gearWheels');
  if (!m.spindleWheel) missing.push('spindleWheel');
  if (!m.shaftWheel) missing.push('shaftWheel');
  if (!box) missing.push(m.quickBox === 'levers' ? 'boxTable' : 'quickBox');
  if (!m.screwPitch || !m.screwStarts || !wheels || !fixed || !box) return { ok: false, missing };
  return {
    ok: true,
    gearing: {
      wheels,
      fixed,
      box,
      screwLead: mul(inBase(m.screwPitch), m.screwStarts.value),
      shaftTurns: m.shaftTurns,
      banjo: banjoOf(m),
      mounted: mountedOf(m),
    },
  };
};
