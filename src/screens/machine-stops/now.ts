import type { StandingName } from '../../elements/standing';
import { NOW_STANDING, SEEN, type Seen, type StopNow } from '../../core/prove/stops';
import type { StopTestId, TestRecord } from '../../core/context';
import { lapseText } from '../../text/checks';
import { fieldText } from '../../text/machine';
import { statedText } from '../../text/numbers';
import { dayText } from '../../text/records';
import { notHereText, recordedText, stopsText as t } from '../../text/stops';

const seenOf = (r: TestRecord): Seen => (r.choices[SEEN] as Seen | undefined) ?? 'not-as-said';

/** What a person recorded, with how far it went where that was measured, and whether there was room for it. */
export const recordText = (r: TestRecord): string => {
  const seen = seenOf(r);
  const said = recordedText(r.test as StopTestId, seen, dayText(r.at));
  const { distance } = r.readings;
  if (!distance) return said;
  const far = r.result === 'failed' && seen === 'as-said' ? `, ${t.tooFar}` : '';
  return `${said}. ${t.distance}: ${statedText(distance)}${far}`;
};

const wordOf = (now: StopNow): string => {
  switch (now.code) {
    case 'not-here':
      return t.notHere(notHereText[now.why]);
    case 'not-known':
      return t.maybe(fieldText[now.field].label);
    case 'not-done':
      return t.notDone;
    case 'lapsed':
      return t.lapsed(lapseText(now.lapse));
    case 'further':
      return t.further(statedText(now.record.readings.distance ?? now.room), statedText(now.room));
    case 'repeated':
      return t.repeated(dayText(now.at));
    case 'not-ok':
      return t.notOk(dayText(now.at));
    case 'failed':
    case 'passed':
    case 'lacking':
    case 'undecided':
      return recordText(now.record);
  }
};

/** A record in honest words: what a person saw and when, why it no longer holds, or why it isn't asked. */
export const nowText = (now: StopNow): { word: string; standing: StandingName | null } => ({
  word: wordOf(now),
  standing: NOW_STANDING[now.code],
});
