import type { FaultTest } from './reading';

/** Where a reading is kept: one for each test, and a second travel, of another length or once more. */
export const SLOTS = ['counts', 'screw', 'carriage', 'travel', 'travel2', 'back'] as const;
export type Slot = (typeof SLOTS)[number];
export const isSlot = (x: string): x is Slot => (SLOTS as readonly string[]).includes(x);
export const testOf = (slot: Slot): FaultTest => (slot === 'travel2' ? 'travel' : slot);

export const SLOT_PARTS = ['over', 'got', 'half'] as const;
export type SlotPart = (typeof SLOT_PARTS)[number];

/** Whether the controller's settings were part of what is read. */
export const isRun = (slot: Slot): boolean => slot !== 'counts' && slot !== 'carriage';

/** Beginning of the names of all readings of one machine. */
export const faultsKept = (machine: string): string => `faults.${machine}.`;
/** The same of those that the controller's settings were part of: they lapse when the settings change. */
export const runsKept = (machine: string): string => `${faultsKept(machine)}run.`;
/** Name under which a reading's part is kept. */
export const slotKey = (machine: string, slot: Slot, part: SlotPart): string =>
  `${isRun(slot) ? runsKept(machine) : faultsKept(machine)}${slot}.${part}`;
/** Name under which the lead is kept that was set for the runs. */
export const leadKey = (machine: string): string => `${runsKept(machine)}lead`;
/** Name under which what the settings rested on is kept (expected.ts, settingsOf). */
export const settingsKey = (machine: string): string => `${runsKept(machine)}settings`;
