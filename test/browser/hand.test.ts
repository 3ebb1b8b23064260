import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { ADDRESSES, go } from './support/addresses';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';
import { staying } from './support/staying';
import { drawingFaults, drawingsOn } from './support/svg';
import { pointsIn } from './support/text';
import { touchFaults } from './support/touch';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  // A comma on the pad, and in every figure.
  phone = await Phone.open(host.url, { locale: 'de-DE' });
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

/** Where the middle of something lies, from 0 at the left edge to 1 at the right. */
const across = async (
  page: Page,
  name: string | RegExp,
  role: 'button' | 'link' | 'navigation' = 'button',
) => {
  const box = await page.getByRole(role, { name, exact: typeof name === 'string' }).boundingBox();
  if (!box) throw new Error(`${name} isn’t there`);
  return (box.x + box.width / 2) / (page.viewportSize()?.width ?? 0);
};

const set = async (group: string, key: string): Promise<void> => {
  await go(phone.page, 'settings');
  await phone.finger.tapOn(phone.page.getByRole('group', { name: group }).getByRole('button', { name: key }));
};

describe.each(['Left', 'Right'])('the hand on the phone: %s', (hand) => {
  const right = hand === 'Right';
  /** Lies in the hand's half of the screen. */
  const near = async (...of: Parameters<typeof across>): Promise<boolean> =>
    (await across(...of)) > 0.5 === right;

  it('is set, and what it uses most lies on its side', async () => {
    const { page } = phone;
    await set('Hand on the phone', hand);
    await page.setViewportSize({ width: 360, height: 640 });
    expect(await near(page, 'Wipe')).toBe(true);
    await go(page, 'speed');
    const [slower, faster] = [await across(page, 'Slower by 10 rpm'), await across(page, 'Faster by 10 rpm')];
    expect(slower).toBeLessThan(faster);
    expect(right ? slower > 0.4 : faster < 0.6).toBe(true);
    await go(page, 'enter/job/rpm');
    for (const key of ['Done', 'Correct']) expect(await near(page, key)).toBe(true);
    await go(page, 'checks');
    expect(await near(page, 'DONE')).toBe(true);
    expect(await near(page, 'NOT OK')).toBe(false);
    await page.setViewportSize({ width: 390, height: 844 });
  });

  it('on a phone on its side the places lie away from it, the answers at it, and all can be hit', async () => {
    const { page } = phone;
    const found: string[] = [];
    for (const [width, height] of [
      [640, 360],
      [844, 390],
    ] as const) {
      await page.setViewportSize({ width, height });
      for (const address of ADDRESSES) {
        await go(page, address);
        found.push(...(await touchFaults(page, 64)).map((fault) => `${address} ${width}: ${fault}`));
      }
      await go(page, 'checks');
      expect(await near(page, 'DONE')).toBe(true);
      expect(await near(page, /^Speed$/, 'link')).toBe(false);
      // The screen has all of the height but the machine's line.
      const main = await page.locator('main').boundingBox();
      expect(main?.height).toBeGreaterThanOrEqual(height - 66);
      await go(page, 'speed');
      const faster = await page.getByRole('button', { name: 'Faster by 10 rpm' }).boundingBox();
      expect((faster?.y ?? height) + (faster?.height ?? 0)).toBeLessThanOrEqual(height);
      await go(page, 'enter/job/rpm');
      expect(await near(page, 'Done')).toBe(true);
      expect(await page.getByRole('navigation').count()).toBe(0);
    }
    await page.setViewportSize({ width: 390, height: 844 });
    expect(found).toEqual([]);
  });
});

describe('the wipe lock', () => {
  it('is on every screen, and on the pads of all but low ones', async () => {
    const { page } = phone;
    const wipe = page.getByRole('button', { name: 'Wipe' });
    for (const address of ADDRESSES) {
      await go(page, address);
      await wipe.waitFor();
    }
    // The pad leads back to where it was called from.
    await go(page, 'speed');
    await go(page, 'enter/job/rpm');
    expect(await touchFaults(page)).toEqual([]);
    await page.setViewportSize({ width: 360, height: 640 });
    await wipe.waitFor({ state: 'hidden' });
    await page.setViewportSize({ width: 390, height: 844 });
    // What is typed is still there afterwards.
    await person.key('7');
    await person.key('Wipe');
    await page.locator('dialog[open]').waitFor();
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await person.key('2');
    await person.sees('72');
    await person.key('Done');
    await page.locator('ls-pad').waitFor({ state: 'detached' });
    await person.reads('72');
  });
});

describe('the least phone', () => {
  it('has slower and faster on the screen whatever else Speed says, and a list below them can be read', async () => {
    const { page } = phone;
    await page.setViewportSize({ width: 360, height: 640 });
    await go(page, 'speed');
    await person.key(/^160/);
    // The longest words: nothing known of the room.
    await person.reads('Not known at 160 rpm');
    await page.locator('main').evaluate((main) => main.scrollTo(0, 0));
    const bar = await page.getByRole('navigation').boundingBox();
    for (const name of ['Slower by 10 rpm', 'Faster by 10 rpm']) {
      const key = await page.getByRole('button', { name }).boundingBox();
      expect(key && bar && key.y + key.height <= bar.y).toBe(true);
    }
    expect(await touchFaults(page, 64)).toEqual([]);
    // Further down they go with the page.
    const last = page.locator('ls-speed').getByRole('link').last();
    expect(await phone.finger.reach(last)).toBeTruthy();
    await page.setViewportSize({ width: 390, height: 844 });
  });
});

describe('a tablet', () => {
  it('has lines no longer than can be read, and a pad whose answers lie at its keys', async () => {
    const { page } = phone;
    for (const [width, height] of [
      [1024, 768],
      [768, 1024],
    ] as const) {
      await page.setViewportSize({ width, height });
      await go(page, 'machine');
      expect((await page.locator('ls-machine').boundingBox())?.width).toBeLessThanOrEqual(768);
      await go(page, 'enter/job/rpm');
      const [done, seven, dot] = await Promise.all(
        ['Done', '7', 'Decimal mark'].map((name) =>
          page.getByRole('button', { name, exact: true }).boundingBox(),
        ),
      );
      if (!done || !seven || !dot) throw new Error('no pad');
      expect(seven.y - done.y - done.height).toBeLessThanOrEqual(16);
      expect(dot.height).toBeGreaterThanOrEqual(96);
      expect(dot.y + dot.height).toBeLessThanOrEqual(height);
    }
    await page.setViewportSize({ width: 390, height: 844 });
  });
});

describe('the phone’s decimal mark', () => {
  it('is on the pad and in all that is shown, a point typed is taken as well, and nothing parts thousands', async () => {
    const { page } = phone;
    const found: string[] = [];
    for (const address of ADDRESSES) {
      await go(page, address);
      const words = await person.words();
      found.push(...pointsIn(words).map((fault) => `${address}: ${fault}`));
      found.push(...(/\d[\u202f\u2009]\d/.exec(words) ?? []).map((fault) => `${address}: ${fault}`));
    }
    expect(found).toEqual([]);
    await go(page, 'machine');
    await go(page, 'enter/machine/backlash');
    await page.keyboard.type('0.125');
    await person.sees('0,125');
    await person.key('Done');
    await person.place('Machine');
    await person.reads('0,125 mm');
  });
});

describe('drawings', () => {
  it.each(['Bright', 'Dark', 'forced colours'])('can be read: %s', async (look) => {
    const { page } = phone;
    const forced = look === 'forced colours';
    if (forced) await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
    else await set('Screen', look);
    const found: string[] = [];
    let drawings = 0;
    for (const address of ADDRESSES) {
      await go(page, address);
      // Drawn bit by bit: its last words.
      if (address === 'speed/chart') await page.locator('ls-chart-plot .named').last().waitFor();
      drawings += await drawingsOn(page);
      found.push(...(await staying(page, drawingFaults)).map((fault) => `${address}: ${fault}`));
    }
    await page.emulateMedia({ forcedColors: null, colorScheme: null });
    expect(drawings).toBeGreaterThan(ADDRESSES.length);
    expect(found).toEqual([]);
  });
});

describe('the phone’s own edge', () => {
  it('has the colour of the paper, in each theme and as the phone has it', async () => {
    const { page } = phone;
    const edge = (): Promise<{ paper: string; edges: string[] }> =>
      page.evaluate(() => ({
        paper: getComputedStyle(document.documentElement).getPropertyValue('--paper').trim(),
        edges: [...document.querySelectorAll<HTMLMetaElement>('meta[name=theme-color]')]
          .filter(({ media }) => matchMedia(media).matches)
          .map(({ content }) => content),
      }));
    const papers = new Set<string>();
    for (const [theme, phones] of [
      ['Bright', 'dark'],
      ['Dark', 'light'],
      ['As the phone', 'light'],
      ['As the phone', 'dark'],
    ] as const) {
      await page.emulateMedia({ colorScheme: phones });
      await set('Screen', theme);
      const { paper, edges } = await edge();
      expect(edges, theme).toEqual([paper]);
      papers.add(paper);
    }
    await page.emulateMedia({ colorScheme: null });
    expect(papers.size).toBe(2);
  });
});

describe('a keyboard alone', () => {
  it('goes from the thread to its speed and a check, and always shows where it is', async () => {
    const { page } = phone;
    await set('Screen', 'As the phone');
    await go(page, 'threads');
    const hidden: string[] = [];
    /** Moves on by Tab to what is called so, and presses it. */
    const press = async (name: RegExp): Promise<void> => {
      for (let n = 0; n < 80; n += 1) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => {
          let e = document.activeElement;
          while (e?.shadowRoot?.activeElement) e = e.shadowRoot.activeElement;
          if (!e || e === document.body) return null;
          const box = e.getBoundingClientRect();
          const { outlineStyle, outlineWidth } = getComputedStyle(e);
          return {
            name: (e.getAttribute('aria-label') ?? e.textContent ?? '').replace(/\s+/g, ' ').trim(),
            plain: outlineStyle === 'none' || parseFloat(outlineWidth) < 2,
            off: box.bottom <= 0 || box.top >= innerHeight,
          };
        });
        if (at && (at.plain || at.off)) hidden.push(at.name);
        if (!at || !name.test(at.name)) continue;
        await page.keyboard.press('Enter');
        return;
      }
      throw new Error(`no way by Tab to ${name}`);
    };
    await press(/^Use it$/);
    await page.locator('ls-speed').waitFor();
    await press(/^Set speed/);
    await page.locator('ls-pad').waitFor();
    await page.keyboard.type('160');
    await press(/^Done$/);
    await person.reads('at 160 rpm');
    await press(/^Checks$/);
    const asked = page.locator('ls-checks h1');
    const first = await asked.innerText();
    await press(/^DONE$/);
    await expect.poll(() => asked.innerText()).not.toBe(first);
    await press(/^Undo/);
    await expect.poll(() => asked.innerText()).toBe(first);
    expect(hidden).toEqual([]);
    expect(phone.watch.problems).toEqual([]);
  });
});
