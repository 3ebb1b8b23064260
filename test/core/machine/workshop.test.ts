import { describe, expect, it } from 'vitest';
import { checkText, FIELDS, workshopKey } from '../../../src/core/machine';
import { mistakenFor, namesAlike } from '../../../src/core/machine/mistaken';

describe('a workshop', () => {
  it('is one, however its name is typed', () => {
    for (const typed of ['Home shed', ' home  SHED ', 'HOME SHED', 'Home\u00a0shed', 'Home\nshed'])
      expect(workshopKey(typed)).toBe('home shed');
    // The same letter in one sign and in two (Unicode, canonical equivalence).
    expect(workshopKey('Caf\u00e9')).toBe(workshopKey('Cafe\u0301'));
  });

  it('is another one where letters differ', () => {
    expect(workshopKey('Shed 1')).not.toBe(workshopKey('Shed 2'));
  });

  it('need not be named', () => {
    expect(checkText(FIELDS.workshop, '  ')).toEqual({ ok: true, value: '' });
    expect(checkText(FIELDS.name, '  ').ok).toBe(false);
  });
});

describe('names of two machines', () => {
  it.each([
    ['Heron', 'HERON '],
    ['Heron 1', 'Heron-1'],
    ['Heron 1', 'Heron 2'],
    ['Heron', 'Herons'],
    ['Heron', 'Hero'],
    ['Heron', 'Hreon'],
    ['Heron', 'Heorn'],
    // r and n beside each other look like m; one, l and i, nought and o are drawn alike.
    ['Bittern', 'Bittem'],
    ['Lathe l', 'Lathe 1'],
    ['A0', 'AO'],
  ])('%s and %s could be taken for each other', (a, b) => {
    expect([namesAlike(a, b), namesAlike(b, a)]).toEqual([true, true]);
  });

  it.each([
    ['Heron', 'Plover'],
    ['Heron', 'Hermione'],
    // Whoever calls them so means it.
    ['A', 'B'],
    ['L1', 'L2'],
    ['Heron', 'Hnore'],
  ])('%s and %s could not', (a, b) => {
    expect([namesAlike(a, b), namesAlike(b, a)]).toEqual([false, false]);
  });

  it('and their colours are told apart; one that isn’t known is like no other', () => {
    const others = [
      { name: 'Plover', colour: 'plum' },
      { name: 'Heron 2', colour: 'teal' },
      { name: 'Knot', colour: null },
    ] as const;
    expect(mistakenFor({ name: 'Heron 1', colour: 'plum' }, others)).toEqual({
      name: 'Heron 2',
      colour: 'Plover',
    });
    expect(mistakenFor({ name: 'Dunlin', colour: null }, others)).toEqual({ name: null, colour: null });
  });
});
