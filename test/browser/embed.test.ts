/** The elements for other pages, on the page that shows them: with no storage, no worker and no other origin. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { build as viteBuild } from 'vite';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { scanEverywhere, sideways } from './support/axe';
import { Phone } from './support/phone';
import { shoot } from './support/shots';
import { touchFaults } from './support/touch';
import { wordsOf } from './support/words';

let folder: string;
let server: Awaited<ReturnType<typeof serve>>;
let phone: Phone;

/** What the elements must do without: whoever touches it gets an error, which the watch sees. */
const forbid = (): void => {
  for (const name of ['indexedDB', 'caches', 'localStorage', 'sessionStorage', 'fetch'])
    Object.defineProperty(window, name, {
      get: () => {
        console.error(`${name} was asked for`);
        return undefined;
      },
    });
  Object.defineProperty(Navigator.prototype, 'serviceWorker', {
    get: () => console.error('a worker was asked for'),
  });
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'latheside-embed-'));
  await viteBuild({
    configFile: 'vite.embed.config.ts',
    mode: 'production',
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true },
  });
  server = await serve(folder);
  phone = await Phone.open('about:blank');
  await phone.context.addInitScript(forbid);
});
afterAll(async () => {
  await phone?.close();
  await server?.close();
  rmSync(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  await phone.page.setViewportSize({ width: 360, height: 740 });
  await phone.page.goto(server.url);
  await phone.page.getByText('The page was told the figures of').waitFor();
});

const part = (name: string): Locator => phone.page.locator(`#${name}`);
const set = (name: string, values: object): Promise<void> =>
  part(name).evaluate((e, all) => void Object.assign(e, all), values);
/** Where the page is long, a finger would swipe for seconds to get there: the element is brought into sight first. */
const touch = async (name: string, key: string | RegExp): Promise<void> => {
  await part(name).evaluate((e) => e.scrollIntoView({ behavior: 'instant' }));
  await phone.finger.tapOn(part(name).getByRole('button', { name: key, exact: typeof key === 'string' }));
};

describe('the look-up', () => {
  it('finds by touch, tells the page, and says what was chosen', async () => {
    await part('look-up').getByLabel('Size or pitch').fill('10');
    await touch('look-up', 'M10×1.25');
    await phone.page.getByText('The page was told: iso-fine:M10x1.25, pitch 1.25 mm.').waitFor();
    const said = await wordsOf(part('look-up').locator('[part=chosen]'));
    expect(said).toContain('ISO metric fine');
    // 25.4 ÷ 1.25
    expect(await part('look-up').getByText('1.25 mm · 20.32 tpi').count()).toBe(1);
    expect(await part('look-up').getAttribute('chosen')).toBe('iso-fine:M10x1.25');
    expect(await part('gauge').locator('[part=title]').innerText()).toBe('M10×1.25 6g');
  });

  it('works by keyboard alone', async () => {
    await part('look-up').evaluate((e) => (e as HTMLElement).focus());
    await phone.page.keyboard.type('1/2');
    await part('look-up').getByRole('button', { name: '1/2-13 UNC' }).waitFor();
    for (const key of ['ArrowDown', 'ArrowDown', 'ArrowUp', 'Enter']) await phone.page.keyboard.press(key);
    await phone.page.getByText('The page was told: unc:1/2-13').waitFor();
    await phone.page.keyboard.press('Escape');
    await phone.page.keyboard.type('-20');
    await part('look-up').getByRole('button', { name: '1/2-20 UNF' }).waitFor();
  });

  it('keeps to its families, its unit and its number, and says when there is nothing', async () => {
    const keys = part('look-up').locator('.results button');
    await set('look-up', { query: '1/4', families: ['iso-coarse'] });
    await part('look-up').getByText('Nothing found').waitFor();
    expect(await keys.count()).toBe(0);
    await set('look-up', { families: ['unc', 'unf', 'no-such'] });
    await part('look-up').getByText('No such family: no-such.').waitFor();
    expect(await keys.allInnerTexts()).toEqual(['1/4-20 UNC', '1/4-28 UNF']);
    await set('look-up', { query: '10', families: [], most: 3 });
    await touch('look-up', 'mm');
    await expect.poll(() => keys.allInnerTexts()).toEqual(['M10×1.5', 'M10×1.25', 'M10×1']);
    await part('look-up').evaluate((e) => e.setAttribute('families', 'ba, bsw'));
    await touch('look-up', 'any');
    await expect.poll(() => keys.allInnerTexts()).toEqual(['10 BA', '3/4-10 BSW', '13/16-10 BSW']);
  });
});

describe('the gauge', () => {
  const verdict = (): Promise<string> => wordsOf(part('gauge').locator('[part=verdict]'));
  const standing = () => part('gauge').locator('[part=verdict]').getAttribute('standing');

  // Limits of M10×1.5 6g, ISO 965-2: pitch diameter 8.862 to 8.994.
  it.each([
    ['8.950', 'within', 'within limits by this reading; lead and form not checked'],
    ['9.02', 'near', 'Above the limits'],
    ['8.990', 'unknown', 'Can’t tell'],
    ['8,80', 'over', 'Below the limits'],
  ])('holds %s against the limits: %s', async (measured, stands, words) => {
    await part('gauge').getByLabel('Effective diameter as measured, mm').fill(measured);
    await expect.poll(standing).toBe(stands);
    expect(await verdict()).toContain(words);
    expect(await wordsOf(part('gauge'))).toContain('8.862 – 8.994');
  });

  it('calls nothing within while it isn’t said how far the reading may be out', async () => {
    await set('gauge', { measured: '8.950', uncertainty: '' });
    await expect.poll(standing).toBe('unknown');
    expect(await verdict()).toContain('isn’t said how far the reading may be out');
  });

  it('says what is wrong with what was typed, and keeps it', async () => {
    const line = part('gauge').getByLabel('Effective diameter as measured, mm');
    await line.fill('8.9.5');
    await part('gauge').getByRole('alert').filter({ hasText: 'Only one decimal mark' }).waitFor();
    expect(await line.inputValue()).toBe('8.9.5');
    expect(await line.getAttribute('aria-invalid')).toBe('true');
    expect(await part('gauge').locator('[part=verdict]').count()).toBe(0);
  });

  it('takes another class by touch, and of a nut says how it is gauged', async () => {
    await touch('gauge', '6H');
    await part('gauge').getByText('An inside one is gauged').waitFor();
    expect(await part('gauge').locator('[part=title]').innerText()).toBe('M10×1.5 6H');
    // ISO 965-2, M10 6H: pitch diameter 9.026 to 9.206.
    expect(await wordsOf(part('gauge'))).toContain('9.026 – 9.206');
    expect(await part('gauge').getByRole('textbox').count()).toBe(0);
  });

  it('says so where no thread has the name, and where a family has no limits', async () => {
    await set('gauge', { thread: 'M10×99' });
    await part('gauge').getByText('No thread here is called M10×99.').waitFor();
    await set('gauge', { thread: 'r:1/2', fit: '' });
    await part('gauge').getByText('A taper thread is gauged by its length').waitFor();
  });

  it('with `fixed` has nothing to press or type in', async () => {
    const fixed = phone.page.locator('ls-embed-gauge[fixed]');
    expect(await fixed.locator('[part=title]').innerText()).toBe('1/2-13 UNC 2A');
    expect(await fixed.locator('button, input').count()).toBe(0);
  });
});

describe('the checks', () => {
  const question = (): Promise<string> => part('checks').locator('[part=question]').innerText();
  const left = async (): Promise<number> =>
    Number(/(\d+) left/.exec(await wordsOf(part('checks')))?.[1] ?? 'NaN');
  /** A new question takes no answer for a moment. */
  const rested = () => part('checks').locator('.resting').waitFor({ state: 'detached' });

  it('say that nothing is kept and nothing proven, and forget everything with the page', async () => {
    const all = await left();
    expect(all).toBeGreaterThan(20);
    expect(await wordsOf(part('checks'))).toMatch(/Nothing you answer here is kept.* It proves nothing\./s);
    const first = await question();
    await touch('checks', 'DONE');
    await phone.page.getByText(`The page was told: belts, done, ${all - 1} left.`).waitFor();
    expect(await question()).not.toBe(first);
    await phone.page.reload();
    await expect.poll(left).toBe(all);
    expect(await question()).toBe(first);
  });

  it('keep NOT OK until it is answered anew, and take the last answer back', async () => {
    const first = await question();
    const all = await left();
    await touch('checks', 'NOT OK');
    await part('checks').getByText('You answered NOT OK').waitFor();
    expect([await question(), await left()]).toEqual([first, all]);
    await rested();
    await touch('checks', 'Undo');
    await phone.page.getByText(', taken-back,').waitFor();
    expect(await part('checks').getByText('You answered NOT OK').count()).toBe(0);
    await touch('checks', 'Later');
    expect(await question()).not.toBe(first);
    expect(await left()).toBe(all);
  });

  it('hear one tap for one question, however quick the next', async () => {
    const all = await left();
    await part('checks').evaluate((e) => e.scrollIntoView({ behavior: 'instant' }));
    const { x, y } = await phone.finger.reach(part('checks').getByRole('button', { name: 'DONE' }));
    await phone.page.touchscreen.tap(x, y);
    await phone.page.touchscreen.tap(x, y);
    await rested();
    expect(await left()).toBe(all - 1);
  });

  it('can be answered to the end by keyboard, and never say more than that', async () => {
    const told = await part('checks').evaluate((e) => {
      const all: string[] = [];
      e.addEventListener('ls-embed-answer', (event) => all.push((event as Event & { item: string }).item));
      Object.assign(window, { told: all });
      return all.length;
    });
    expect(told).toBe(0);
    await set('checks', { phase: 'service' });
    await part('checks').getByRole('button', { name: 'DONE' }).focus();
    for (let n = await left(); n > 0; n -= 1) {
      await phone.page.keyboard.press('Enter');
      if (n > 1) await expect.poll(left).toBe(n - 1);
    }
    await part('checks')
      .getByText(/All answered on this page \d\d:\d\d/)
      .waitFor();
    expect(await wordsOf(part('checks'))).not.toMatch(/\bsafe\b|\bready\b|recorded/i);
    expect(await phone.page.evaluate(() => (window as unknown as { told: string[] }).told)).toEqual([
      'isolated',
    ]);
  });

  it('of a machine ask what is known of it, and name what isn’t', async () => {
    const general = await left();
    await set('checks', {
      machine: { screwPitch: '3 mm', microsteps: 'ten' },
      thread: 'M10×1.5',
      rpm: '160',
    });
    await part('checks').getByText('Not read, and so not known:').waitFor();
    expect(await wordsOf(part('checks'))).toContain('microsteps');
    expect(await part('checks').getByText('General questions').count()).toBe(0);
    expect(await left()).toBeGreaterThan(general);
  });

  it('take a figure with its answer, and say why one isn’t taken', async () => {
    await set('checks', { machine: { backlash: '0.1 mm' } });
    // The first that ask for a figure.
    for (let i = 0; i < 12 && !(await part('checks').getByRole('textbox').count()); i += 1) {
      await touch('checks', 'Later');
    }
    const asked = await question();
    await touch('checks', 'DONE');
    await part('checks').getByRole('alert').filter({ hasText: 'Enter the figure you read.' }).waitFor();
    await part('checks').getByRole('textbox').fill('0.02');
    await touch('checks', 'DONE');
    await expect.poll(question).not.toBe(asked);
  });
});

describe('the wall chart', () => {
  const row = (name: string): Promise<string> =>
    part('chart').getByRole('row', { name }).getByRole('cell').last().innerText();

  it('gives the drive’s speeds as they can be reckoned by hand', async () => {
    // Motor turns for one of the spindle: lead ÷ 3 × 60 ÷ 20. Of 900 rpm four fifths are within.
    expect(await row('M6×1')).toBe('720');
    expect(await row('M10×1.5')).toBe('480');
    expect(await row('M16×2')).toBe('360');
    // 25.4 ÷ 13 mm: 720 ÷ 1.9538… = 368.5, rounded down.
    expect(await row('1/2-13 UNC')).toBe('368');
    expect(await part('chart').locator('svg[role=img]').getAttribute('aria-label')).toContain(
      'NOT a threading speed to a shoulder',
    );
  });

  it('gives no speed as an answer while a limit isn’t known, and names it', async () => {
    await part('chart').evaluate((e) => e.removeAttribute('motor-max-rpm'));
    await expect.poll(() => row('M10×1.5')).toMatch(/^not known; not above \d+$/);
    expect(await part('chart').locator('[part=unknown]').innerText()).toContain('Motor speed');
  });

  it('follows its properties, and tells the page', async () => {
    const rows = part('chart').evaluate(
      (e) =>
        new Promise((done) =>
          e.addEventListener('ls-embed-chart', (event) => done((event as Event & { rows: unknown }).rows), {
            once: true,
          }),
        ),
    );
    await set('chart', { screwPitch: '6 mm', threads: ['iso-coarse:M6', 'no:such'] });
    expect(await rows).toMatchObject([{ thread: { designation: 'M6×1' }, highest: 1440 }]);
    await part('chart').getByText('No thread here is called no:such.').waitFor();
  });

  it('says what of the machine it could not read', async () => {
    await set('chart', { microsteps: 'ten', screwPitch: '300 mm' });
    const said = part('chart').locator('[part=unknown]').first();
    await expect.poll(() => said.innerText()).toMatch(/screwPitch: Between [^]*microsteps:/);
  });
});

describe('the page', () => {
  it('has nothing for axe to find, keys for fingers, and no sideways scroll', async () => {
    await part('look-up').getByLabel('Size or pitch').fill('10');
    await phone.page.locator('summary').evaluate((e) => (e as HTMLElement).click());
    expect(await scanEverywhere(phone.page, 'embed')).toEqual([]);
    await phone.page.setViewportSize({ width: 360, height: 740 });
    expect(await sideways(phone.page)).toBe(0);
    expect(await touchFaults(phone.page)).toEqual([]);
  });

  it('shows the code that stands in it', async () => {
    const lost = await phone.page.evaluate(() => {
      const squeeze = (s: string | null): string =>
        (s ?? '').replace(/\s+/g, ' ').replaceAll(' >', '>').trim();
      const shown = [...document.querySelectorAll('pre')].map((pre) => squeeze(pre.textContent)).join(' ');
      const tag = (e: Element): string =>
        `<${e.localName} ${[...e.attributes]
          // Set by the choice that the example makes.
          .filter(({ name }) => name !== 'chosen')
          .map(
            ({ name, value }) =>
              `${name}${value === '' ? '' : `=${name === 'machine' ? `'${value}'` : `"${value}"`}`}`,
          )
          .join(' ')}>`;
      return [...document.querySelectorAll('main *')]
        .filter((e) => e.localName.startsWith('ls-embed-'))
        .map((e) => squeeze(tag(e)))
        .filter((one) => !shown.includes(one));
    });
    expect(lost).toEqual([]);
  });

  it('takes its own colours and typeface into an element', async () => {
    const looks = (selector: string) =>
      phone.page
        .locator(selector)
        .first()
        .evaluate((e) => {
          const { backgroundColor, fontFamily } = getComputedStyle(e);
          return { backgroundColor, fontFamily };
        });
    expect(await looks('.own-looks')).toEqual({
      backgroundColor: 'rgb(16, 36, 58)',
      fontFamily: 'Georgia, serif',
    });
    const bright = await looks('#gauge');
    await phone.page.emulateMedia({ colorScheme: 'dark' });
    expect(bright.backgroundColor).toBe('rgb(253, 252, 248)');
    expect((await looks('#gauge')).backgroundColor).toBe('rgb(14, 18, 22)');
    // A page of one scheme alone keeps it, whatever the reader's system says.
    await part('gauge').evaluate((e) => e.style.setProperty('color-scheme', 'light'));
    expect((await looks('#gauge')).backgroundColor).toBe('rgb(253, 252, 248)');
    await phone.page.emulateMedia({ colorScheme: null });
  });

  it('draws in the system’s own colours', async () => {
    await phone.page.emulateMedia({ forcedColors: 'active' });
    await part('chart').locator('.ceiling').first().waitFor({ state: 'attached' });
    const colours = await phone.page.evaluate(() => {
      const probe = document.createElement('i');
      document.body.append(probe);
      const of = (word: string): string => {
        probe.style.color = word;
        return getComputedStyle(probe).color;
      };
      const [text, paper] = [of('CanvasText'), of('Canvas')];
      const shadow = (id: string) => document.getElementById(id)?.shadowRoot;
      const drawn = shadow('gauge')?.querySelector('[part=drawing]')?.shadowRoot?.querySelector('.most');
      const key = shadow('checks')?.querySelector('[part=not-ok]');
      const chart = shadow('chart')?.querySelector('[part=drawing]')?.shadowRoot?.querySelector('.ceiling');
      if (!drawn || !key || !chart) return null;
      return {
        text,
        differs: text !== paper,
        outline: getComputedStyle(drawn).stroke,
        ceiling: getComputedStyle(chart).stroke,
        key: getComputedStyle(key).borderTopStyle,
      };
    });
    await shoot(phone.page, 'embed forced colours');
    await phone.page.emulateMedia({ forcedColors: null });
    expect(colours).toMatchObject({
      differs: true,
      outline: colours?.text,
      ceiling: colours?.text,
      key: 'solid',
    });
  });

  it('copies code, or marks it where it may not', async () => {
    const first = phone.page.locator('.copy').first();
    await phone.finger.tapOn(first);
    await expect.poll(() => first.innerText()).toMatch(/^(Copied|Marked: copy it by hand)$/);
  });
});

it('nothing was asked of any other host, of storage or of a worker', () => {
  expect(phone.watch.requests.length).toBeGreaterThan(10);
  const asked = new Set(phone.watch.requests.map((url) => new URL(url).pathname));
  expect([...asked].sort()).toEqual(['/', '/demo.css', '/demo.js', '/icon.svg', '/latheside-embed.js']);
  expect(phone.watch.problems.filter((p) => !p.includes('another origin'))).toEqual([]);
});

it('beside the app’s own elements, and loaded twice, it still draws', async () => {
  mkdirSync(join(folder, 'other'));
  writeFileSync(
    join(folder, 'other', 'index.html'),
    `<!doctype html><title>Other</title><link rel="icon" href="../icon.svg">
    <script type="module" src="page.js"></script><ls-row></ls-row><ls-embed-gauge thread="M10×1.5"></ls-embed-gauge>`,
  );
  writeFileSync(
    join(folder, 'other', 'page.js'),
    `for (const name of ['row', 'standing', 'limits-drawing', 'chart-plot'])
      customElements.define('ls-' + name, class extends HTMLElement {});
    await import('../latheside-embed.js');
    await import('../latheside-embed.js?another');
    document.title = 'Both';`,
  );
  const plain = await serve(folder, { headers: { 'Content-Security-Policy': "default-src 'self'" } });
  try {
    await phone.page.goto(`${plain.url}other/`);
    await phone.page.waitForFunction(() => document.title === 'Both');
    const row = phone.page.locator('ls-embed-gauge [part=figures] > *').first();
    expect(await wordsOf(row)).toContain('9.732 – 9.968');
  } finally {
    await plain.close();
  }
});
