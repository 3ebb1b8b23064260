import type { TestNow } from '../../core/context';
import type { StandingName } from '../../elements/standing';
import { lapseText } from '../../text/checks';
import { proveText as t } from '../../text/prove';
import { dayText } from '../../text/records';

/** A record in honest words: what a person recorded and when, or why it no longer holds. */
export const nowText = (now: TestNow, measures = false): { word: string; standing: StandingName } => {
  if (now.code === 'not-done') return { word: t.notDone, standing: 'unknown' };
  if (now.code === 'lapsed') return { word: t.lapsed(lapseText(now.lapse)), standing: 'unknown' };
  const { result, at } = now.record;
  const how = measures && result === 'passed' ? t.measured : t.was[result];
  const standing = result === 'failed' ? 'over' : result === 'passed' ? 'within' : 'unknown';
  return { word: t.recorded(how, dayText(at)), standing };
};
