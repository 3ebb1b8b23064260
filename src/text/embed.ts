import type { Verdict } from '../core/thread/wires';
import { measureText } from './measure';
import { capital, words } from './words';

/** Words of the elements for other pages, beside those they share with the app. */
export const embedText = {
  unit: 'Unit',
  noFamily: (ids: readonly string[]): string => `No such family: ${ids.join(', ')}.`,
  chosen: 'Chosen',
  major: 'Major diameter',
  starts: 'Starts',
  noThread: 'No thread is set.',
  unknownThread: (name: string): string => `No thread here is called ${name}.`,
  machine: 'Machine',
  misread: (field: string, why: string): string => `${field}: ${why}`,
  misreadTitle: 'Not read, and so not known:',
  /** @param unit in which it is read, and what it is */
  measured: (unit: string): string => `${capital(words().pitchDiameter)} as measured, ${unit}`,
  verdict: (verdict: Verdict, knowsHowSure: boolean): string => {
    if (verdict === 'within')
      return `${capital(words().pitchDiameter)} within limits by this reading; lead and form not checked.`;
    if (verdict === 'unknown' && !knowsHowSure)
      return 'Not known: it isn’t said how far the reading may be out.';
    return measureText.verdict(verdict, false);
  },
  uncertain: (u: string, unit: string): string => `Reading taken as true to ± ${u} ${unit}.`,
  checks: {
    notKept: 'Nothing you answer here is kept: leave the page and it is gone. It proves nothing.',
    caution:
      'The page sees nothing of the lathe. Local rules and trained people decide, and no key here stops anything.',
    general: 'General questions: no machine is described, and not every one may apply to yours.',
    worked: (n: number): string =>
      n === 1
        ? '1 of what is worked out doesn’t hold or isn’t known'
        : `${n} of what is worked out don’t hold or aren’t known`,
    figure: (name: string, unit: string): string => (unit ? `${name}, ${unit}` : name),
    answered: (time: string): string => `All answered on this page ${time}`,
    later: (n: number): string => (n === 1 ? '1 put off' : `${n} put off`),
    again: 'Back to those put off',
    undo: 'Undo',
    undone: 'Last answer taken back.',
    wasNotOk: 'You answered NOT OK. It stays so until you answer it anew.',
  },
  chart: {
    notAbove: (rpm: string): string => `not known; not above ${rpm}`,
    columns: { thread: 'Thread', lead: 'Lead', drive: 'Drive follows, NOT to a shoulder, rpm' },
    exact: 'Calculated from the figures given, not measured.',
  },
} as const;
