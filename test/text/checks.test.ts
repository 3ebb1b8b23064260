import { describe, expect, it } from 'vitest';
import { ITEMS, type Item } from '../../src/core/checks';
import { checksText, checkText, checkTexts, findingText, lapseText } from '../../src/text/checks';
import { wordsFor } from '../../src/text/words';

const trades = [wordsFor('uk'), wordsFor('us')];
const texts = trades.flatMap((w) => Object.entries(checkTexts(w)));
const sentences = (s: string): number => s.split(/[.?!](?:\s|$)/).filter((x) => x.trim()).length;
const every = (t: { question: string; look: string; why: string; first?: string; notOk?: string }): string =>
  [t.question, t.first, t.look, t.why, t.notOk].join(' ');

describe('the words of the checks', () => {
  it.each(texts)('%s: a question that fits, three sentences of where to look, and why', (_id, t) => {
    expect(t.question.length).toBeLessThanOrEqual(36);
    expect(sentences(t.look)).toBeLessThanOrEqual(3);
    expect(t.why.length).toBeGreaterThan(10);
  });

  it('never says safe or ready, never wedges anything, calls no app or controller a stop', () => {
    const all = [...texts.map(([, t]) => every(t)), ...Object.values(checksText).map(String)];
    for (const s of all) {
      expect(s).not.toMatch(/\b(safe|safely|safety ensured|ready|secure to run)\b/i);
      expect(s).not.toMatch(/\bwedg/i);
    }
  });

  it('tells to isolate before a spindle is turned by hand or a cover comes off', () => {
    for (const id of [
      'stop-at-rest',
      'stop-release',
      'ten-turns',
      'belts',
      'old-feeds',
      'overload',
      'recovery',
    ])
      expect(checkText(id).look, id).toMatch(/^[^.]*(\.[^.]*){0,1}\b[Ii]solate/);
    expect(checkText('power-return').look).toMatch(/^Hands clear, and a helper/);
  });

  it('uses the trade words of the person’s choice', () => {
    const [uk, us] = trades;
    if (!uk || !us) throw new Error();
    expect(checkText('plan', uk).look).toContain('effective diameter');
    expect(checkText('plan', us).look).toContain('pitch diameter');
    expect(checkText('compound', us).question).toMatch(/^Compound/);
    expect(checkText('groove', us).question).toMatch(/^Thread relief/);
    for (const [, t] of texts)
      expect(every(t)).not.toMatch(/\b[Aa]n? (inverter|VFD|undercut|earth|thread relief|effective)\b/);
  });

  it('names a figure for each item that takes one', () => {
    for (const i of ITEMS as readonly Item[])
      expect(checkText(i.id).figure !== undefined, i.id).toBe(!!i.reading);
  });

  it('says why an answer lapsed', () => {
    expect(lapseText({ code: 'input-changed', path: 'job.rpm' })).toBe('Speed changed since');
    expect(lapseText({ code: 'input-changed', path: 'machine.microsteps' })).toBe(
      'Motor or its drive to the screw changed since',
    );
    expect(lapseText({ code: 'new-day' })).toBe('New day');
    expect(lapseText({ code: 'hours', hours: 50 })).toMatch(/^50 running hours since/);
    expect(lapseText({ code: 'days', days: 1 / 24 })).toBe('More than 1 hour since');
    expect(lapseText({ code: 'days', days: 180 })).toBe('180 days since');
    expect(lapseText({ code: 'clock-back' })).toBe('The phone’s clock was set back: not known');
    expect(lapseText({ code: 'event', kind: 'work-moved' })).toBe('Work was moved or changed since');
  });

  it('has words for every finding', () => {
    const f = { standing: 'over', why: 'reading-low', figure: null, limit: null, missing: [] } as const;
    expect(findingText(f)).toBe('Your reading is below its limit.');
  });
});
