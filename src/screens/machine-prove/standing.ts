import type { TestNow } from '../../core/context';
import type { StandingName } from '../../elements/standing';
import { lapseText } from '../../text/checks';
import { proveText as t } from '../../text/prove';
import { dayText } from '../../text/records';

/** A record in honest words: what a person recorded and when, or why it no longer holds. */
export const nowText = (now: TestNow, measures = false): { word: string; standing: StandingName } => {
  if (now.code === 'not-done') return { word: t.notDone, standing: 'unknown' };
  if (now.code === 'lapsed') return { word: t.lapsed(lapseText(now.lapse)), standing: 'unknown' };
  const day = dayText(now.record.at);
  if (now.code === 'failed') return { word: t.failed(day), standing: 'over' };
  if (now.code === 'undecided') return { word: t.undecided(day), standing: 'unknown' };
  return { word: measures ? t.measured(day) : t.passed(day), standing: 'within' };
};
