import type { Banjo } from '../drive/trains/mesh';
import type { Gearing } from '../drive/trains/train';
import { readBox, readTrain, readWheels, type BoxRow, type WrittenTrain } from '../drive/trains/written';
import { div, inBase, mul, type Ratio, type Stated } from '../quantity';
import type { FieldName, MachineProfile } from './fields';

const whole = (s: Stated | null): number | null => s && Number(s.value.n);

/** The change-gear machine as the search for trains needs it, or the fields that it lacks. */
export type GearsOf =
  | { readonly ok: true; readonly gearing: Gearing }
  | { readonly ok: false; readonly missing: readonly FieldName[] };

export const banjoOf = (m: MachineProfile): Banjo => ({
  shafts: whole(m.shaftSum),
  least: whole(m.slotLeast),
  most: whole(m.slotMost),
  studGap: whole(m.studGap),
  studs: whole(m.studs),
  clearance: whole(m.wheelClearance),
});

/** Lever positions of the quick-change box; empty without one, null when it isn't known. */
export const boxOf = (m: MachineProfile): readonly BoxRow[] | null => {
  if (m.quickBox === 'none') return [];
  const read = m.quickBox === 'levers' && m.boxTable !== null ? readBox(m.boxTable) : null;
  return read?.ok ? read.value : null;
};

export const mountedOf = (m: MachineProfile): WrittenTrain | null => {
  const read = m.gearMounted === null ? null : readTrain(m.gearMounted);
  return read?.ok ? read.value : null;
};

export const wheelsOf = (m: MachineProfile): readonly number[] | null => {
  const read = m.gearWheels === null ? null : readWheels(m.gearWheels);
  return read?.ok ? read.value : null;
};

/** Revs of the train's first shaft per spindle rev; null when either wheel isn't known. */
export const fixedOf = (m: MachineProfile): Ratio | null =>
  m.spindleWheel && m.shaftWheel ? div(m.spindleWheel.value, m.shaftWheel.value) : null;

/** Whether the machine cuts threads by change gears. */
export const hasGears = (m: MachineProfile): boolean => m.driveKind === 'change-gears';

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
