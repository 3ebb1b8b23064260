import { lapseOf, type CheckRecord, type Inputs, type Lapse, type LapseRule } from '../context';
import type { Item } from './item';

/** The rule without what ends with the start itself: for a walk that belongs to the cut now running. */
const whileItRuns = ({ perCut: _perCut, afterDays: _afterDays, ...rest }: LapseRule): LapseRule => rest;

/**
 * Why an item's record no longer holds, or null. Start checks recorded before a cut belong to the cut that is
 * begun next: they hold while it runs and lapse when it ends. Everything else is as context/staleness says.
 */
export const itemLapse = (item: Item, record: CheckRecord, inputs: Inputs): Lapse | null => {
  const running = inputs.context.cuttingSince;
  const madeForIt = running !== null && record.cut === null && record.at <= running;
  return lapseOf(item.tier === 'start' && madeForIt ? whileItRuns(item.rule) : item.rule, record, inputs);
};
