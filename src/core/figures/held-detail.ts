import {
  endOf,
  errorOver,
  hold,
  shiftAfter,
  type Chain,
  type Ending,
  type Format,
  type Holding,
} from '../drive/formats';
import type { MachineProfile } from '../machine';
import type { Sheet } from './define';
import { formatOf } from './held';

/** A held ratio laid open: its format, what is kept, and the drive it belongs to. */
export interface HeldDetail {
  readonly format: Format;
  readonly holding: Holding;
  readonly chain: Chain;
  readonly ends: Ending | null;
}

const entered = (m: MachineProfile): Format | null => {
  const kind = m.ratioHeld;
  if (!kind || kind === 'other') return null;
  const needs =
    kind === 'integers'
      ? [m.ratioTopMax, m.ratioBottomMax]
      : kind === 'decimal'
        ? [m.ratioDigits]
        : kind === 'fixed-rounded' || kind === 'fixed-truncated'
          ? [m.ratioBits]
          : [];
  const known = needs.flatMap((n) => n ?? []);
  return known.length < needs.length ? null : formatOf(kind, known);
};

/** What the figure `ratioHeld` rests on, for pages that show more of it; null where that isn't known. */
export const heldDetail = (sheet: Sheet): HeldDetail | null => {
  const format = entered(sheet.inputs.machine);
  const ratio = sheet.get('stepsPerCount').value;
  const lead = sheet.get('lead').value;
  const counts = sheet.get('countsPerRev').value;
  const step = sheet.get('stepOnCarriage').value;
  if (sheet.inputs.machine.driveKind === 'change-gears' || !format) return null;
  if (!ratio || !lead || !counts || !step) return null;
  const holding = hold(format, ratio, counts);
  if (!holding) return null;
  return { format, holding, chain: { ratio, lead, counts, step }, ends: endOf(format, holding, counts) };
};

/** Lengths at which the error is shown, mm: an inch, and as lathes and ball screws are tested. */
export const SHOWN_LENGTHS = [25.4, 100, 300] as const;

export { errorOver, shiftAfter };
