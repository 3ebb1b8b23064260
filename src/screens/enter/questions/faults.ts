import { number } from '../../../core/machine';
import { slotKey, SLOT_PARTS, SLOTS, testOf, type Slot, type SlotPart } from '../../../core/prove/faults';
import { faultsText, faultTestText } from '../../../text/faults';
import type { ReadingField } from './question';

const TURNS = number('notes', ['turns'], '0.1', '100000', { suggest: ['10', '20', '50'] });

const fieldOf = (slot: Slot, part: SlotPart) => {
  const turns = slot === 'counts' || slot === 'screw' || slot === 'carriage';
  if (part === 'over')
    return turns ? TURNS : number('notes', ['mm', 'in'], '0.1', '5000', { suggest: ['10', '50', '100'] });
  const low = part === 'half' ? '0.0001' : '0';
  if (slot === 'counts') return number('notes', ['count'], low, '1000000000');
  return slot === 'screw'
    ? number('notes', ['turns'], low, '100000')
    : number('notes', ['mm', 'in'], low, '5000');
};

/** What was read for the fault finder, on this machine. */
export const faultFields = (machine: string): Readonly<Record<string, ReadingField>> =>
  Object.fromEntries(
    SLOTS.flatMap((slot) =>
      SLOT_PARTS.map((part) => {
        const t = faultTestText[testOf(slot)];
        const label = part === 'half' ? `${t.name}: ${faultsText.half}` : t[part];
        const named = slot === 'travel2' ? faultsText.secondOf(label) : label;
        return [slotKey(machine, slot, part), { label: named, field: fieldOf(slot, part) }];
      }),
    ),
  );
