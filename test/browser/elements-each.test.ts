/** Every element by itself: what it draws from its properties, its attributes, its keys, and the system's own colours. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ElementsPage } from './support/elements';
import { strangeColours } from './support/forced';
import type { Phone } from './support/phone';

interface Each {
  /** Its page, and how much of what it draws there. */
  readonly page: string;
  readonly draws: Readonly<Record<string, number>>;
  /** A property without which it draws nothing. */
  readonly needs?: string;
  /** Its picture is named by the property `text`. */
  readonly named?: true;
}

/** A new element needs a line here, and a page in `elements`. */
const EACH: Readonly<Record<string, Each>> = {
  'ls-bar': { page: 'bar', draws: { a: 5, '[aria-current=page]': 1 } },
  'ls-bode-plot': { page: 'bode', draws: { '.ceiling': 2, '.named': 1 }, needs: 'data', named: true },
  'ls-cable-drawing': { page: 'cable', draws: { rect: 6, '.ring': 2 }, needs: 'cable', named: true },
  'ls-chart-plot': {
    page: 'chart',
    draws: { '.ceiling': 1, '.dot': 1, '.rule': 2 },
    needs: 'data',
    named: true,
  },
  'ls-code-loop': { page: 'codes', draws: { 'svg path': 1, button: 2 } },
  'ls-gauge': { page: 'gauge', draws: { '.band': 3, '.speed': 2, 'path.needle': 1 }, named: true },
  'ls-groove-section': {
    page: 'groove',
    draws: { '.cut': 3, '.to-come': 1, '.now': 1 },
    needs: 'tool',
    named: true,
  },
  'ls-limits-drawing': {
    page: 'limits',
    draws: { '.most': 1, '.least': 1, '.wire': 3, '.tool': 0 },
    needs: 'shape',
    named: true,
  },
  'ls-pad': { page: 'pad', draws: { '.pad button': 12, '[part=value]': 1 } },
  'ls-profile': { page: 'profile', draws: { '.outline': 1, '.nose': 1 }, needs: 'shape', named: true },
  'ls-row': { page: 'row', draws: { '[part=row]': 1, '[part=value]': 1, button: 0 } },
  'ls-rule': { page: 'rows', draws: {} },
  'ls-sheet': { page: 'sheet-open', draws: { 'dialog[open]': 1, '[part=content]': 1 } },
  'ls-standing': { page: 'standing', draws: { svg: 1, '[part=word]': 1 } },
  'ls-stop-drawing': {
    page: 'stop',
    draws: { '.tool': 1, '.furthest': 1, '.bar': 1 },
    needs: 'shape',
    named: true,
  },
  'ls-thread-dial': { page: 'dial', draws: { '.good': 4, line: 8 }, named: true },
  'ls-trace-plot': { page: 'trace', draws: { '.mean': 1, '.band': 1 }, needs: 'shape', named: true },
  'ls-train-drawing': {
    page: 'train',
    draws: { '.changed': 2, '.idler': 1, '.shaft': 2 },
    needs: 'train',
    named: true,
  },
  'ls-wipe-lock': { page: 'wipe', draws: { '[part=key]': 1, 'dialog[open]': 0 } },
  'ls-written-line': { page: 'written', draws: { input: 1, button: 0 } },
};

let shown: ElementsPage;
let phone: Phone;

beforeAll(async () => {
  shown = await ElementsPage.open();
  phone = shown.phone;
});
afterAll(() => shown?.close());

const open = async (tag: string): Promise<Locator> => {
  await shown.show(EACH[tag]?.page ?? '');
  return phone.page.locator(tag).first();
};

it('names every element there is', () => {
  const sources = readdirSync('src/elements').map((name) => readFileSync(join('src/elements', name), 'utf8'));
  const tags = sources.flatMap((text) =>
    [...text.matchAll(/@customElement\('([^']+)'\)/g)].map(([, tag]) => tag),
  );
  expect(tags.length).toBeGreaterThan(15);
  expect(Object.keys(EACH).sort()).toEqual(tags.sort());
});

describe.each(Object.entries(EACH))('%s', (tag, { draws, needs, named }) => {
  it('draws what its properties say, in the system’s colours where it has them', async () => {
    await phone.page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
    const element = await open(tag);
    for (const [what, count] of Object.entries(draws))
      await expect.poll(() => element.locator(what).count(), { message: what }).toBe(count);
    expect(await strangeColours(element)).toEqual([]);
    await phone.page.emulateMedia({ forcedColors: null, colorScheme: null });
    if (named) {
      await element.evaluate((e) => Object.assign(e, { text: 'Said otherwise' }));
      await expect
        .poll(() => element.getByRole('img').first().getAttribute('aria-label'))
        .toBe('Said otherwise');
    }
    if (needs) {
      await element.evaluate((e, name) => Object.assign(e, { [name]: null }), needs);
      await expect.poll(() => element.locator('svg').count()).toBe(0);
    }
  });

  it('takes every attribute that it has', async () => {
    const element = await open(tag);
    const untaken = await element.evaluate(async (e) => {
      type Option = { attribute?: string | boolean; state?: boolean; type?: unknown };
      const all = (e.constructor as unknown as { elementProperties: Map<string, Option> }).elementProperties;
      const lost: string[] = [];
      for (const [name, { attribute, state, type }] of all) {
        if (attribute === false || state) continue;
        const [said, want] = type === Number ? ['7', 7] : type === Boolean ? ['', true] : ['near', 'near'];
        e.setAttribute(typeof attribute === 'string' ? attribute : name.toLowerCase(), said);
        await (e as unknown as { updateComplete: Promise<boolean> }).updateComplete;
        if ((e as unknown as Record<string, unknown>)[name] !== want) lost.push(name);
      }
      return lost;
    });
    expect(untaken).toEqual([]);
  });
});

it('a colour that isn’t the system’s is found', async () => {
  await phone.page.emulateMedia({ forcedColors: 'active' });
  const gauge = await open('ls-gauge');
  await gauge.evaluate((e) => (e as HTMLElement).style.setProperty('--ink', '#123456'));
  expect((await strangeColours(gauge)).length).toBeGreaterThan(5);
  await phone.page.emulateMedia({ forcedColors: null });
});

describe('keys, by touch and by keyboard', () => {
  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) await phone.page.keyboard.press(key);
  };

  it('a row that can say why answers both', async () => {
    const rows = await open('ls-rule');
    await rows.waitFor({ state: 'attached' });
    const key = phone.page.getByRole('button');
    await key.focus();
    for (const way of ['Enter', 'Space']) {
      await press(way);
      expect(await shown.heard()).toContain('ls-why top');
    }
    await phone.finger.tapOn(key);
    expect(await shown.heard()).toContain('ls-why top');
  });

  it('a bar’s places are links in their order', async () => {
    await open('ls-bar');
    const reached: string[] = [];
    for (let i = 0; i < 5; i += 1) {
      await press('Tab');
      reached.push(
        await phone.page.evaluate(
          () => (document.querySelector('ls-bar')?.shadowRoot?.activeElement as HTMLElement).innerText,
        ),
      );
    }
    expect(reached).toEqual(['Threads', 'Speed', 'Checks', 'Cut', 'Machine']);
    await press('Enter');
    await phone.page.waitForURL(/#machine$/);
    await phone.finger.tap('Cut', 'link');
    await phone.page.waitForURL(/#cut$/);
  });

  it('a pad’s keys are reached by Tab and pressed by Space', async () => {
    const pad = await open('ls-pad');
    await pad.getByRole('button', { name: '7', exact: true }).focus();
    await press('Space', 'Tab', 'Enter');
    expect((await shown.heard()).filter((h) => h.includes('|'))).toEqual(['7|tpi', '78|tpi']);
  });

  it('a written line is kept by Enter, by its key, and refused with what was typed when it is too long', async () => {
    const line = await open('ls-written-line');
    const input = line.getByLabel('Workshop');
    await input.fill('  Barn   2 ');
    await press('Enter');
    expect(await shown.heard()).toContain('ls-written Barn 2');
    await input.fill('Far too long a name');
    await phone.finger.tap('Keep');
    await line.getByRole('alert').filter({ hasText: 'Too long.' }).waitFor();
    expect(await input.inputValue()).toBe('Far too long a name');
    expect(await input.getAttribute('aria-invalid')).toBe('true');
    expect((await shown.heard()).filter((h) => h.startsWith('ls-written'))).toEqual([]);
  });

  it('codes stand still where less motion is wanted, and go on by one', async () => {
    await phone.page.emulateMedia({ reducedMotion: 'reduce' });
    const loop = await open('ls-code-loop');
    const now = () => loop.getByRole('img').getAttribute('aria-label');
    expect(await now()).toBe('Code 1 of 3');
    await phone.finger.tap('Next code');
    await expect.poll(now).toBe('Code 2 of 3');
    await loop.getByRole('button', { name: 'Next code' }).focus();
    await press('Enter', 'Enter');
    await expect.poll(now).toBe('Code 1 of 3');
    await phone.finger.tap('Run');
    await expect.poll(now).not.toBe('Code 1 of 3');
    expect(await loop.getByRole('button', { name: 'Next code' }).isDisabled()).toBe(true);
    await phone.page.emulateMedia({ reducedMotion: null });
  });

  it('the wipe lock begins by keyboard as well', async () => {
    const lock = await open('ls-wipe-lock');
    await lock.getByRole('button', { name: 'Wipe lock' }).focus();
    await press('Enter');
    await lock.locator('dialog[open]').waitFor();
    await phone.page.waitForFunction(() => window.heard.includes('ls-unlock'));
    expect(await lock.locator('dialog[open]').count()).toBe(0);
  });
});

it('nothing went wrong on the way', () => {
  expect(phone.watch.problems).toEqual([]);
});
