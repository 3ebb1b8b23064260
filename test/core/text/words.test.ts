import { afterEach, describe, expect, expectTypeOf, it } from 'vitest';
import { FIELD_NAMES, GROUPS } from '../../../src/core/machine';
import type { OfflineCode, OfflineStatus } from '../../../src/device/updates';
import type { StorageCode } from '../../../src/state';
import * as app from '../../../src/text/app';
import * as machine from '../../../src/text/machine';
import * as speed from '../../../src/text/speed';
import * as threads from '../../../src/text/threads';
import { setWords } from '../../../src/text/words';
import * as why from '../../../src/text/why';

afterEach(() => {
  setWords('uk');
});

/** Every string in a module, however deep; texts made by a function are tested where they are made. */
const stringsIn = (x: unknown): string[] => {
  if (typeof x === 'string') return [x];
  if (typeof x === 'function') return [];
  return typeof x === 'object' && x !== null ? Object.values(x).flatMap(stringsIn) : [];
};
const all = (): string[] => [app, machine, speed, threads, why].flatMap(stringsIn);

describe('honest and plain', () => {
  it('found the texts', () => expect(all().length).toBeGreaterThan(500));
  it.each([
    ['exclamation marks', /!/],
    ['claims of safety', /\bsafe(?!ty factor)\w*/i],
    ['"ready", but for the copy kept offline', /\bready\b(?! offline)/i],
    ['American spelling', /\b(colou?r(?<!colour)|center|gray|labor|caliper)\b/i],
    ['doubled blanks or marks', / {2}|\.\.|,,| \./],
    ['straight apostrophes', /\w'\w/],
    ['signs of a template', /\$\{|undefined/],
  ])('no %s', (_what, pattern) => {
    expect(all().filter((text) => pattern.test(text))).toEqual([]);
  });
});

describe('fields', () => {
  it.each(FIELD_NAMES)('%s: a short label, a question, where to look, what for', (field) => {
    const text = machine.fieldText[field];
    expect(text.label.length).toBeLessThanOrEqual(28);
    expect(text.question).toMatch(/\?$/);
    expect(text.where).toMatch(/\.$/);
    expect(text.needed).toMatch(/\.$/);
  });
  it('no label stands for two fields', () => {
    expect(new Set(FIELD_NAMES.map((f) => machine.fieldText[f].label)).size).toBe(FIELD_NAMES.length);
    expect(new Set(GROUPS.map((g) => machine.groupName[g])).size).toBe(GROUPS.length);
  });
  it('a stop in software, or of the enable alone, is said to be no emergency stop', () => {
    for (const way of ['input', 'enable'] as const)
      expect(machine.choiceText.stopCuts[way].note).toMatch(/not an emergency stop/);
  });
});

describe('codes from storage and updates', () => {
  it('have words, each of them', () => {
    expectTypeOf<keyof typeof app.storageText>().toEqualTypeOf<StorageCode>();
    expectTypeOf<keyof typeof app.offlineText>().toEqualTypeOf<OfflineCode>();
    expectTypeOf<keyof typeof app.offlineState>().toEqualTypeOf<OfflineStatus['offline']>();
  });
  it('say what becomes of what was typed, wherever it was not saved', () => {
    for (const code of ['full', 'failed', 'closed-for-update'] as const)
      expect(app.storageText[code].todo).toMatch(/still on screen/);
  });
});

describe('trade words follow the setting', () => {
  it.each([
    ['uk', /effective diameter/, /top slide/, /Mains wiring/],
    ['us', /pitch diameter/, /compound/, /Line wiring/],
  ] as const)('%s', (trade, diameter, slide, mains) => {
    setWords(trade);
    expect(why.termName('depth-sharp', 'pitchDiameter')).toMatch(diameter);
    expect(why.noteText['depth-stop-on-diameter']).toMatch(diameter);
    expect(speed.roomHelp.takeOff.join()).toMatch(slide);
    expect(app.cautions.points.join()).toMatch(mains);
  });
});

describe('undo', () => {
  it('names what is undone', () => {
    expect(app.undoText({ code: 'field', field: 'screwPitch' })).toBe('Undo leadscrew pitch');
    expect(app.undoText({ code: 'machine-put-away', name: 'Heron' })).toBe('Bring back Heron');
    expect(app.undoText({ code: 'check' })).toBe('Take back the answer');
  });
});
