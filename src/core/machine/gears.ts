import type { Banjo } from '../drive/trains/mesh';
import { readBox, readTrain, readWheels, type BoxRow, type WrittenTrain } from '../drive/trains/written';
import { div, type Ratio, type Stated } from '../quantity';
import type { MachineProfile } from './fields';

const whole = (s: Stated | null): number | null => s && Number(s.value.n);

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
