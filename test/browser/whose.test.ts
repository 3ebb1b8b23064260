import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { routeOf } from '../../src/screens/shell/routes';
import { ADDRESSES, go } from './support/addresses';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

/** Heron’s teal on bright paper (theme.css). */
const TEAL = 'rgb(11, 116, 128)';

/** What of "Heron" and its colour can be seen on the screen, or on a page of any length. Runs in the page. */
const seen = ({
  colour,
  paper,
}: {
  colour: string;
  paper: boolean;
}): { name: boolean; colour: boolean; word: boolean } => {
  const found = { name: false, colour: false, word: false };
  const look = (root: ParentNode): void => {
    for (const e of root.querySelectorAll('*')) {
      if (e.shadowRoot) look(e.shadowRoot);
      const box = e.getBoundingClientRect();
      const on = paper || (box.top >= 0 && box.bottom <= innerHeight);
      if (!on || box.width < 4 || box.height < 8 || !e.checkVisibility({ visibilityProperty: true }))
        continue;
      const text = [...e.childNodes]
        .map((n) => (n.nodeType === Node.TEXT_NODE ? n.textContent : ''))
        .join('');
      const style = getComputedStyle(e);
      if (/\bHeron\b/.test(text)) found.name = true;
      if (/\bTeal\b/.test(text)) found.word = true;
      if (
        style.backgroundImage.includes(colour) ||
        (style.borderInlineStartColor === colour && parseFloat(style.borderInlineStartWidth) >= 8)
      )
        found.colour = true;
    }
  };
  look(document);
  return found;
};

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  const person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

/** Addresses on which the name or the colour is missing. */
const missing = async (width: number, height: number): Promise<string[]> => {
  const { page } = phone;
  await page.setViewportSize({ width, height });
  const found: string[] = [];
  for (const address of ADDRESSES) {
    await go(page, address);
    const { name, colour } = await page.evaluate(seen, { colour: TEAL, paper: false });
    if (!name || !colour) found.push(`${address}: name ${name}, colour ${colour}`);
  }
  return found;
};

describe('the machine’s name and colour', () => {
  it('are looked for on every screen that there is', () => {
    const source = readFileSync('src/screens/shell/routes.ts', 'utf8');
    const tags = [...source.matchAll(/'(ls-[a-z-]+)'/g)].map(([, tag]) => tag);
    const pages = /CUT_PAGES = \[([^\]]+)\]/.exec(source)?.[1] ?? '';
    const cut = [...pages.matchAll(/'([a-z]+)'/g)].map(([, page]) => `ls-cut-${page}`);
    expect(cut.length).toBeGreaterThan(5);
    const shown = new Set(ADDRESSES.map((a) => routeOf(`#/${a}`, 'threads').tag));
    expect([...tags, ...cut].filter((tag) => !shown.has(tag ?? ''))).toEqual([]);
  });

  it.each([
    [390, 844],
    [320, 640],
    [360, 560],
    [844, 390],
  ])('stand on every screen, %i × %i', async (width, height) => {
    expect(await missing(width, height)).toEqual([]);
  });

  it('stand on paper too, the colour in a word as well', async () => {
    const { page } = phone;
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const found: string[] = [];
    for (const address of ADDRESSES) {
      const { full } = routeOf(`#/${address}`, 'threads');
      if (full) continue;
      await go(page, address);
      // The wall chart is reckoned first.
      if (address === 'speed/chart') await page.locator('ls-chart .hang').waitFor({ state: 'attached' });
      const { name, colour, word } = await page.evaluate(seen, { colour: TEAL, paper: true });
      if (!name || !colour || !word) found.push(`${address}: name ${name}, colour ${colour}, word ${word}`);
    }
    await page.emulateMedia({ media: null, colorScheme: null });
    expect(found).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });
});
