import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { ITEMS } from '../../src/core/checks';
import { MISTAKE_IDS, MISTAKES, mistakesAt, type MistakeId } from '../../src/core/cut/mistakes';
import { FIELD_NAMES } from '../../src/core/machine';
import { routeOf } from '../../src/screens/shell/routes';
import { mistakeLinksAt, mistakePlace, mistakeText } from '../../src/text/mistakes';
import { setWords } from '../../src/text/words';

afterEach(() => setWords('uk'));

/** The order of the project's reference for the trade, each by a word of its own. */
const ORDER = [
  ...[
    /lead/,
    /inch/,
    /edges/,
    /mark/,
    /opened/,
    /Speed/,
    /Reversed/,
    /Backlash/,
    /slipped/,
    /off in between/,
  ],
  ...[/nose/, /axis/, /large/, /centre/, /rounded/, /Microsteps/, /bursts/, /Noise/, /Wires/, /warm/],
  ...[/chamfer/, /Rubbing/, /plate/, /rocked/],
];

const screens = readdirSync('src/screens', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(`src/screens/${name}`, 'utf8'))
  .join('\n');

/** Whether an address shows a screen of its own, and not what stands in for an unknown one. */
const exists = (address: string): boolean => {
  const [, second, third] = address.split('/');
  if (address.startsWith('machine/field/')) return (FIELD_NAMES as readonly string[]).includes(third ?? '');
  if (address.startsWith('checks/item/')) return ITEMS.some((item) => item.id === third);
  const { tag } = routeOf(`#/${address}`, '');
  const [place = ''] = address.split('/');
  return second ? tag !== routeOf(`#/${place}`, '').tag : tag === `ls-${place}`;
};

/** Whether a screen asks for the links of its address. */
const asks = (address: string): boolean =>
  address.startsWith('machine/field/')
    ? screens.includes('mistakeLinksAt(`machine/field/${field}`)')
    : address.startsWith('checks/item/')
      ? screens.includes('mistakeLinksAt(`checks/item/${s.item.id}`)')
      : screens.includes(`mistakeLinksAt('${address}')`);

describe('the common mistakes', () => {
  it('are all there, in the order of the trade', () => {
    expect(MISTAKE_IDS).toHaveLength(ORDER.length);
    MISTAKE_IDS.forEach((id, i) => expect(mistakeText(id).title).toMatch(ORDER[i] ?? /never/));
  });

  it.each(MISTAKE_IDS)('%s: says what becomes of the thread, how it shows and how to avoid it', (id) => {
    const { title, thread, notice, avoid, place } = mistakeText(id);
    expect(title.length).toBeLessThanOrEqual(40);
    for (const words of [thread, notice, avoid]) {
      expect(words.length).toBeGreaterThan(30);
      expect(words).toMatch(/[.]$/);
      expect(words).not.toMatch(/[{}]|\b(safe|ready)\b/);
    }
    expect(place.length).toBeGreaterThan(3);
  });

  it.each(MISTAKE_IDS)('%s: leads to where it is seen to, and is reached from where it happens', (id) => {
    const { at, from }: { at: string; from: readonly string[] } = MISTAKES[id];
    expect(mistakePlace(id)).toBe(`#/${at}`);
    expect([at, exists(at)]).toEqual([at, true]);
    expect(from.length).toBeGreaterThan(0);
    for (const address of from) {
      expect([address, exists(address), asks(address)]).toEqual([address, true, true]);
      expect(mistakeLinksAt(address).map(({ href }) => href)).toContain(`#/cut/mistakes/${id}`);
    }
  });

  it('are told from what is none', () => {
    expect(['machine/field/nothing', 'checks/item/nothing', 'cut/nothing', 'nowhere'].filter(exists)).toEqual(
      [],
    );
    expect(asks('machine/list')).toBe(false);
    expect(mistakesAt('machine/list')).toEqual([]);
  });

  it('use the trade words of the person’s choice', () => {
    const id: MistakeId = 'wrong-axis';
    expect(mistakeText(id).thread).toContain('top slide');
    setWords('us');
    expect(mistakeText(id).thread).toContain('compound');
  });

  it('give figures that hold', () => {
    // 25.4/8 against 3 mm; ten of each.
    expect(((25.4 / 8 / 3 - 1) * 100).toFixed(1)).toBe('5.8');
    expect(mistakeText('screw-unit').thread).toContain('5.8 %');
    expect(mistakeText('screw-unit').notice).toContain(`${((25.4 / 8) * 10).toFixed(2)} mm`);
    // Steel grows by about 11.5 millionths of its length for each degree.
    expect((30 * 20 * 11.5e-6).toFixed(3)).toBe('0.007');
    expect(mistakeText('measured-warm').thread).toContain('0.007 mm');
    // 29° from the cross-slide read from the bed stands at 61°: cos 61° over cos 29°.
    const part = Math.cos((61 * Math.PI) / 180) / Math.cos((29 * Math.PI) / 180);
    expect(part).toBeGreaterThan(0.5);
    expect(part).toBeLessThan(0.6);
  });
});
