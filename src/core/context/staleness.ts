import { fingerprint, inputAt, type EventKind, type InputPath, type Inputs } from './inputs';
import { isAfter } from './order';
import type { CheckRecord } from './record';
import { recordRecalls } from '../recall';

/** What of a record makes it lapse. A check's has its item, a test's the test. */
export type Lapsing = Pick<
  CheckRecord,
  'id' | 'at' | 'order' | 'day' | 'hours' | 'inputs' | 'rule' | 'cut' | 'made'
> & {
  readonly item?: string;
  readonly test?: string;
};

/** What an answer rests on, and what makes it lapse. All conditions are looked at; the first that bites is named. */
export interface LapseRule {
  /** Raised when the rule itself is corrected: records made under an earlier one are stale. */
  readonly version: number;
  readonly reads: readonly InputPath[];
  readonly daily?: true;
  readonly afterDays?: number;
  readonly afterHours?: number;
  readonly events?: readonly EventKind[];
  /** Good for one start of the spindle or one pass only: whoever asks next must record it anew. */
  readonly perCut?: true;
}

export type Lapse =
  | { readonly code: 'clock-back' }
  | { readonly code: 'rule-changed' }
  /** A formula that it rests on was corrected, and nobody has looked it over. */
  | { readonly code: 'recalled' }
  | { readonly code: 'input-changed'; readonly path: InputPath }
  | { readonly code: 'new-day' }
  | { readonly code: 'days'; readonly days: number }
  | { readonly code: 'hours'; readonly hours: number }
  | { readonly code: 'hours-back' }
  | { readonly code: 'event'; readonly kind: EventKind }
  | { readonly code: 'other-cut' };

const DAY = 86_400_000;

/** The values of the declared inputs as a record keeps them. */
export const snapshot = (inputs: Inputs, paths: readonly InputPath[]): Record<string, string> =>
  Object.fromEntries(paths.map((p) => [p, fingerprint(inputAt(inputs, p))]));

const changedInput = (rule: LapseRule, record: Lapsing, inputs: Inputs): InputPath | undefined =>
  rule.reads.find((p) => record.inputs[p] !== fingerprint(inputAt(inputs, p)));

/** Without a running-hours log, what is due by hours is asked each day: that is sooner, never later. */
const dueByHours = (rule: LapseRule, record: Lapsing, inputs: Inputs): Lapse | null => {
  if (rule.afterHours === undefined) return null;
  const now = inputs.context.hours;
  if (now === null || record.hours === null)
    return record.day === inputs.context.day ? null : { code: 'hours', hours: rule.afterHours };
  if (now < record.hours) return { code: 'hours-back' };
  return now - record.hours >= rule.afterHours ? { code: 'hours', hours: rule.afterHours } : null;
};

/**
 * Why a record no longer holds, or null while it does. A record from the future (the phone's clock was set
 * back) is not known to hold. While a cut is running, the change of day at midnight expires nothing.
 */
export const lapseOf = (rule: LapseRule, record: Lapsing, inputs: Inputs): Lapse | null => {
  const { now, day, events, cuttingSince, cuttingDay } = inputs.context;
  if (record.at > now) return { code: 'clock-back' };
  if (recordRecalls(record, inputs.context.recalls).length > 0) return { code: 'recalled' };
  if (record.rule !== rule.version) return { code: 'rule-changed' };
  const path = changedInput(rule, record, inputs);
  if (path) return { code: 'input-changed', path };
  const event = events.find((e) => rule.events?.includes(e.kind) && !isAfter(record, e));
  if (event) return { code: 'event', kind: event.kind };
  if (rule.perCut && record.cut !== cuttingSince) return { code: 'other-cut' };
  // What held when the running cut began, or was recorded during it, doesn't expire at midnight.
  const ofThisCut = cuttingSince !== null && (record.day === cuttingDay || record.at >= cuttingSince);
  if (rule.daily && record.day !== day && !ofThisCut) return { code: 'new-day' };
  if (rule.afterDays !== undefined && now - record.at >= rule.afterDays * DAY)
    return { code: 'days', days: rule.afterDays };
  return dueByHours(rule, record, inputs);
};

/** The newest record of an item; records come oldest first. */
export const newestOf = (records: readonly CheckRecord[], item: string): CheckRecord | undefined =>
  records.findLast((r) => r.item === item);
