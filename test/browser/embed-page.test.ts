/** The page that shows the elements for other pages, and what such a page may ask of them. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { scanEverywhere, sideways } from './support/axe';
import { build } from './support/builds';
import { buildEmbed, EmbedPage } from './support/embed';
import { Phone } from './support/phone';
import { touchFaults } from './support/touch';
import { wordsOf } from './support/words';

let shown: EmbedPage;
let phone: Phone;

beforeAll(async () => {
  shown = await EmbedPage.open();
  phone = shown.phone;
});
afterAll(() => shown?.close());
beforeEach(() => shown.anew());

const part = (name: string): Locator => shown.part(name);

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
  const asked = new Set(phone.watch.requests.map((url) => url.replace(shown.server.url, '/')));
  expect([...asked].sort()).toEqual(['/', '/demo.css', '/demo.js', '/icon.svg', '/latheside-embed.js']);
  expect(phone.watch.problems.filter((p) => !p.includes('another origin'))).toEqual([]);
});

it('beside the app’s own elements, and loaded twice, it still draws', async () => {
  mkdirSync(join(shown.folder, 'other'));
  writeFileSync(
    join(shown.folder, 'other', 'index.html'),
    `<!doctype html><title>Other</title><link rel="icon" href="../icon.svg">
    <script type="module" src="page.js"></script><ls-row></ls-row><ls-embed-gauge thread="M10×1.5"></ls-embed-gauge>`,
  );
  writeFileSync(
    join(shown.folder, 'other', 'page.js'),
    `for (const name of ['row', 'standing', 'limits-drawing', 'chart-plot'])
      customElements.define('ls-' + name, class extends HTMLElement {});
    await import('../latheside-embed.js');
    await import('../latheside-embed.js?another');
    document.title = 'Both';`,
  );
  const plain = await serve(shown.folder, { headers: { 'Content-Security-Policy': "default-src 'self'" } });
  try {
    await phone.page.goto(`${plain.url}other/`);
    await phone.page.waitForFunction(() => document.title === 'Both');
    const row = phone.page.locator('ls-embed-gauge [part=figures] > *').first();
    expect(await wordsOf(row)).toContain('9.732 – 9.968');
  } finally {
    await plain.close();
  }
});

it('beside the app they are kept by no phone, and the app’s worker leaves them alone', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'latheside-beside-'));
  await buildEmbed(join(folder, 'embed'));
  await build({ into: folder });
  const server = await serve(folder);
  const visitor = await Phone.open(server.url);
  try {
    await visitor.controlled();
    expect(server.requests.filter((path) => path.includes('embed'))).toEqual([]);
    const kept = await visitor.page.evaluate(async () => {
      const all = await Promise.all(
        (await caches.keys()).map(async (name) => (await caches.open(name)).keys()),
      );
      return all.flat().map(({ url }) => url);
    });
    expect(kept.length).toBeGreaterThan(10);
    expect(kept.filter((url) => url.includes('embed'))).toEqual([]);
    for (const address of ['embed/', 'embed/index.html']) {
      await visitor.page.goto(server.url + address);
      await visitor.page.getByRole('heading', { name: 'Elements for other pages' }).waitFor();
    }
    expect(visitor.watch.problems).toEqual([]);
  } finally {
    await visitor.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
});
