import { lapseOf, type CheckRecord, type Inputs, type Lapse, type LapseRule } from '../context';
import type { Item } from './item';

/** Beginnings of cuts that the records and the context know of, at or after a moment. */
const cutsBegunSince = (at: number, { context }: Inputs): readonly number[] => {
  const cuts = [...context.records.map((r) => r.cut), context.cuttingSince];
  return cuts.filter((c) => c !== null).filter((c) => c >= at);
};

/** The rule without what ends with the start itself: for a walk that belongs to the cut now running. */
const whileItRuns = ({ perCut: _perCut, afterDays: _afterDays, ...rest }: LapseRule): LapseRule => rest;

/**
 * Why an item's record no longer holds, or null. Start checks made before a cut belong to the next cut that is
 * begun, hold while it runs, and lapse with it; everything else is as context/staleness says.
 */
export const itemLapse = (item: Item, record: CheckRecord, inputs: Inputs): Lapse | null => {
  if (!item.rule.perCut || item.tier !== 'start' || record.cut !== null)
    return lapseOf(item.rule, record, inputs);
  const running = inputs.context.cuttingSince;
  const begun = cutsBegunSince(record.at, inputs);
  if (running === null)
    return lapseOf(item.rule, record, inputs) ?? (begun.length > 0 ? { code: 'other-cut' } : null);
  const forThisCut = begun.length > 0 && begun.every((c) => c === running);
  return lapseOf(forThisCut ? whileItRuns(item.rule) : item.rule, record, inputs);
};
