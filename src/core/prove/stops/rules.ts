import type { Inputs, InputPath, LapseRule, StopTestId } from '../../context';
import { ELECTRIC, HALF_YEAR, HOURS } from '../rules';
import { ARRANGEMENT } from './arrangement';
import { STOP_PROTOCOL } from './tests';

/** What every test of the stop rests on. */
export const STOP_READS = [
  'machine.driveKind',
  'machine.motorKind',
  ...ARRANGEMENT.map((f) => `machine.${f}` as const),
] as const satisfies readonly InputPath[];

/**
 * When a test of the stop is due again: some each day, all after work on wiring, firmware or drive, after a change of the
 * arrangement, and every half year. Common practice.
 */
const WHOLE: LapseRule = { version: 1, reads: STOP_READS, events: ELECTRIC, afterDays: HALF_YEAR };
const DAILY: LapseRule = { ...WHOLE, daily: true };

export const STOP_RULES: Readonly<Record<StopTestId, LapseRule>> = Object.fromEntries(
  STOP_PROTOCOL.map(({ id, daily }) => [id, daily ? DAILY : WHOLE]),
) as Record<StopTestId, LapseRule>;

/** The same with the running hours, where a log of them is kept: without one nothing is due by hours. */
export const stopRule = (id: StopTestId, { context }: Inputs): LapseRule =>
  context.hours === null ? STOP_RULES[id] : { ...STOP_RULES[id], afterHours: HOURS };
