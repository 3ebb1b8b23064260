import { afterEach, describe, expect, it } from 'vitest';
import { STOP_TESTS } from '../../src/core/context';
import { ARRANGEMENT, ARRANGEMENT_CODES, SOURCES, STOP_PROTOCOL } from '../../src/core/prove/stops';
import { FIELDS } from '../../src/core/machine';
import { choiceLabel, fieldText } from '../../src/text/machine';
import { trade } from '../../src/text/prove';
import {
  arrangementText,
  notHereText,
  recordedText,
  refusalText,
  severityText,
  sourceText,
  stopCautionText,
  stopsText,
  stopTestText,
} from '../../src/text/stops';
import { setWords } from '../../src/text/words';
import { findingText } from '../../src/text/checks';

afterEach(() => setWords('uk'));

const strings = (x: unknown): string[] => {
  if (typeof x === 'string') return [x];
  return typeof x === 'object' && x !== null ? Object.values(x).flatMap(strings) : [];
};
const ALL = [
  ...[stopTestText, arrangementText, notHereText, refusalText, severityText, sourceText, stopCautionText],
  { ...stopsText, faultFirst: '' },
].flatMap(strings);

describe('the words of the stop tests', () => {
  it('say of each what is done, what must be seen, what would be a fault, and why', () => {
    for (const id of STOP_TESTS) {
      const { title, steps, must, fault, why } = stopTestText[id];
      expect(title.length, id).toBeLessThanOrEqual(24);
      expect(steps.length, id).toBeGreaterThan(0);
      for (const s of [...steps, must, fault, why]) expect(s, id).toMatch(/^[A-Z].*\.$/);
    }
  });

  it('have one for every caution, finding and source', () => {
    for (const t of STOP_PROTOCOL) for (const c of t.cautions) expect(stopCautionText[c], c).toMatch(/\.$/);
    for (const code of ARRANGEMENT_CODES) expect(arrangementText[code].length, code).toBeGreaterThan(8);
    for (const s of SOURCES) expect(sourceText[s], s).toMatch(/^(ISO|IEC) \d/);
    for (const f of ARRANGEMENT) {
      expect(fieldText[f].label, f).not.toBe('');
      const spec = FIELDS[f];
      if (spec.kind === 'choice') for (const o of spec.options) expect(choiceLabel(f, o)).not.toBe(o);
    }
  });

  it('never say safe or ready, and pass nothing in the app’s own voice', () => {
    for (const s of ALL) {
      expect(s).not.toMatch(/\b(safe|safely|ready|secure)\b/i);
      expect(s).not.toMatch(/\b(passed|passes|stop works)\b/i);
    }
    expect(recordedText('stop-press-moving', 'as-said', '3 May 2026')).toBe(
      'You recorded that carriage and spindle stopped, 3 May 2026',
    );
    const f = {
      standing: 'within',
      why: 'stop-tests-recorded',
      figure: null,
      limit: null,
      missing: [],
    } as const;
    expect(findingText(f)).toBe('You recorded each test that applies. The app saw none of them.');
  });

  it('put isolating, hands, helper and low voltage where they belong', () => {
    expect(stopCautionText['isolate-spindle']).toMatch(/Isolate the spindle’s motor/);
    expect(trade(stopCautionText['extra-low'])).toBe(
      'Extra-low-voltage circuits alone. Never mains voltage.',
    );
    setWords('us');
    expect(trade(stopCautionText['extra-low'])).toBe('Extra-low-voltage circuits alone. Never line voltage.');
    expect(stopTestText['stop-wire-short'].steps.map(trade).join(' ')).toMatch(/to ground.*line voltage/);
    for (const s of ALL) expect(trade(s)).not.toMatch(/[{}]/);
  });
});
