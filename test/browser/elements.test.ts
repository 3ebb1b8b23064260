import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { scan, sideways } from './support/axe';
import { ElementsPage } from './support/elements';
import type { Phone } from './support/phone';

let shown: ElementsPage;
let phone: Phone;

beforeAll(async () => {
  shown = await ElementsPage.open();
  phone = shown.phone;
});
afterAll(() => shown?.close());
beforeEach(async () => {
  await phone.page.setViewportSize({ width: 390, height: 844 });
});

const open = (name: string): Promise<Locator> => shown.show(name);
const heard = (): Promise<string[]> => shown.heard();
const boxes = (all: Locator) =>
  all.evaluateAll((list) =>
    list.map((e) => e.getBoundingClientRect()).map(({ x, y, width, height }) => ({ x, y, width, height })),
  );

describe('number pad', () => {
  // Sizes and least key (width, height): the design's limits for the pad.
  it.each([
    [360, 560, 96, 96],
    [320, 560, 96, 96],
    [390, 844, 110, 120],
    [844, 328, 64, 64],
    [640, 298, 64, 64],
  ])('at %i × %i has keys of %i × %i at least, all in sight', async (width, height, wide, high) => {
    await phone.page.setViewportSize({ width, height });
    const pad = await open('pad');
    const keys = await boxes(pad.locator('.pad button'));
    expect(keys).toHaveLength(12);
    for (const key of keys) {
      expect(key.width).toBeGreaterThanOrEqual(wide);
      expect(key.height).toBeGreaterThanOrEqual(high);
    }
    const others = await boxes(pad.locator('.side button, [slot=results]'));
    for (const other of others) expect(other.height).toBeGreaterThanOrEqual(64);
    // 300 is the least height of the pad itself.
    for (const box of [...keys, ...others, ...(await boxes(pad.locator('.value')))])
      expect(box.y + box.height).toBeLessThanOrEqual(Math.max(height, 300));
    for (const a of keys)
      for (const b of keys)
        if (a !== b)
          expect(
            Math.max(Math.abs(a.x - b.x) - a.width, Math.abs(a.y - b.y) - a.height),
          ).toBeGreaterThanOrEqual(7.9); // 8, less the browser's rounding to 1/64 px
  });

  it('types a mixed number by touch, corrects with one key, and asks the unit', async () => {
    await open('pad');
    await phone.finger.tapEach('1', '1', 'space', '1', 'over', '3', 'Correct', '2');
    expect((await heard()).filter((h) => h.includes('|'))).toEqual(
      ['1', '11', '11 ', '11 1', '11 1/', '11 1/3', '11 1/', '11 1/2'].map((value) => `${value}|tpi`),
    );
    await phone.finger.tap('Unit tpi');
    await phone.finger.tap('mm');
    expect(await heard()).toContain('11 1/2|mm');
  });

  it('swaps two units with one touch and writes the decimal mark it was given', async () => {
    await open('pad-two');
    await phone.finger.tapEach('1', 'decimal mark', '5', 'Unit mm');
    expect((await heard()).filter((h) => h.includes('|')).at(-1)).toBe('1,5|in');
  });

  it('takes a keyboard', async () => {
    const pad = await open('pad');
    await phone.page.keyboard.type('11 1/2');
    await phone.page.keyboard.press('Backspace');
    await phone.page.keyboard.type('4,x');
    expect(await pad.locator('.value').innerText()).toBe('11 1/4.');
  });

  it('speaks what is wrong', async () => {
    await open('pad-error');
    expect(await phone.page.getByRole('alert').innerText()).toBe('Not finished.');
  });
});

describe('speed scale', () => {
  it('shows arcs for what is known and none for what is not', async () => {
    const gauge = await open('gauge');
    expect(await gauge.locator('.band').count()).toBe(3);
    expect(await (await open('gauge-unknown')).locator('.band, .needle').count()).toBe(0);
  });

  it('points straight up at half its scale', async () => {
    const gauge = await open('gauge-top');
    const [needle] = await boxes(gauge.locator('path.needle'));
    const [hub] = await boxes(gauge.locator('circle.needle'));
    if (!needle || !hub) throw new Error('no needle');
    expect(needle.x + needle.width / 2).toBeCloseTo(hub.x + hub.width / 2, 0);
    expect(needle.height).toBeGreaterThan(5 * needle.width);
  });

  it.each([200, 700, 800, 1200, 4000, 20000])(
    'to %i has numbers that touch neither each other nor the arc',
    async (max) => {
      const gauge = await open('gauge');
      await gauge.evaluate((e, end) => Object.assign(e, { max: end, within: end / 3, limit: end / 2 }), max);
      const numbers = await boxes(gauge.locator('text'));
      expect(numbers.length).toBeGreaterThan(2);
      for (const [i, a] of numbers.entries()) {
        expect(a.x).toBeGreaterThanOrEqual(0);
        expect(a.x + a.width).toBeLessThanOrEqual(390);
        for (const b of numbers.slice(i + 1))
          expect(
            a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y,
          ).toBe(true);
      }
    },
  );
});

describe('standing', () => {
  it('differs by shape and says its word', async () => {
    await open('standing');
    const marks = await phone.page
      .locator('ls-standing svg')
      .evaluateAll((all) => all.map((svg) => svg.firstElementChild?.outerHTML));
    expect(new Set(marks).size).toBe(4);
    for (const word of ['OK', 'Close', 'Too much', 'Not known'])
      expect(await phone.page.getByText(word).count()).toBe(1);
  });
});

describe('row', () => {
  it('is a key of 64 px when it can say why', async () => {
    await open('rows');
    const key = phone.page.getByRole('button');
    expect(await key.count()).toBe(1);
    expect((await boxes(key))[0]?.height).toBeGreaterThanOrEqual(64);
    await phone.finger.tapOn(key);
    expect(await heard()).toContain('ls-why top');
  });

  it('keeps its figure within 320 px at twice the text', async () => {
    await phone.page.setViewportSize({ width: 320, height: 560 });
    await open('rows');
    await phone.page.evaluate(() => document.documentElement.classList.add('large'));
    expect(await sideways(phone.page)).toBe(0);
    for (const figure of await boxes(phone.page.locator('.figure')))
      expect(figure.x + figure.width).toBeLessThanOrEqual(320);
  });
});

describe('bar', () => {
  it('gives each place a fifth of the width, 56 px high', async () => {
    const bar = await open('bar');
    const items = await boxes(bar.locator('a'));
    expect(items.map((i) => Math.round(i.width))).toEqual([78, 78, 78, 78, 78]);
    for (const item of items) expect(item.height).toBeGreaterThanOrEqual(56);
    expect(await bar.locator('[aria-current=page]').innerText()).toBe('Speed');
  });

  it('cuts no word at twice the text', async () => {
    await phone.page.setViewportSize({ width: 320, height: 560 });
    const bar = await open('bar');
    await phone.page.evaluate(() => document.documentElement.classList.add('large'));
    const cut = await bar
      .locator('a')
      .evaluateAll((all) => all.filter((a) => a.scrollWidth > a.clientWidth).length);
    expect(cut).toBe(0);
  });
});

describe('sheet', () => {
  it('closes by key and by Escape, and gives the focus back', async () => {
    await open('sheet');
    for (const close of [() => phone.finger.tap('Close'), () => phone.page.keyboard.press('Escape')]) {
      await phone.page.locator('#opener').focus();
      await phone.finger.tap('Open');
      await phone.page.getByRole('dialog', { name: 'Why 213' }).waitFor();
      await close();
      await phone.page.waitForFunction(() => window.heard.includes('ls-close'));
      await heard();
      expect(await phone.page.evaluate(() => document.activeElement?.id)).toBe('opener');
      expect(await phone.page.getByRole('dialog').count()).toBe(0);
    }
  });
});

describe('wipe lock', () => {
  it('hears neither touch nor keyboard until its time is over', async () => {
    const lock = await open('wipe');
    await phone.finger.tap('Wipe lock');
    await lock.locator('dialog').waitFor();
    await heard();
    await phone.page.touchscreen.tap(200, 300);
    for (const key of ['Escape', 'Escape', 'Enter', '5']) await phone.page.keyboard.press(key);
    expect(await heard()).toEqual([]);
    expect(await lock.locator('dialog').isVisible()).toBe(true);
    await phone.page.waitForFunction(() => window.heard.includes('ls-unlock'));
    expect(await lock.locator('dialog').isVisible()).toBe(false);
    await phone.page.touchscreen.tap(200, 300);
    expect(await heard()).toContain('click');
  });
});

describe('drawings', () => {
  it('the dial numbers its good lines and draws them longer and heavier', async () => {
    const dial = await open('dial');
    const lines = await dial.locator('line').evaluateAll((all) =>
      all.map((l) => ({
        good: l.classList.contains('good'),
        width: parseFloat(getComputedStyle(l).strokeWidth),
        long: (l as SVGLineElement).getTotalLength(),
      })),
    );
    const [good, thin] = [lines.filter((l) => l.good), lines.filter((l) => !l.good)];
    expect([good.length, thin.length]).toEqual([4, 4]);
    expect(Math.min(...good.map((l) => l.width))).toBeGreaterThan(2 * Math.max(...thin.map((l) => l.width)));
    expect(Math.min(...good.map((l) => l.long))).toBeGreaterThan(1.5 * Math.max(...thin.map((l) => l.long)));
    expect(await dial.locator('text').allTextContents()).toEqual(['1', '3', '5', '7']);
  });

  it('the profile is to scale: depth over pitch as in ISO 68-1', async () => {
    const profile = await open('profile');
    const size = (part: string) =>
      profile
        .locator(part)
        .first()
        .evaluate((drawn) => {
          const { width, height } = (drawn as SVGGraphicsElement).getBBox();
          return { width, height };
        });
    const ratio = (await size('.outline')).height / (await size('.dimension > path')).width;
    expect(ratio).toBeCloseTo(0.6134, 2);
  });
});

it('the ten digits share one width in both cuts', async () => {
  await open('rows');
  const widths = await phone.page.evaluate(async () => {
    const pen = document.createElement('canvas').getContext('2d');
    if (!pen) throw new Error('no canvas');
    const all: number[] = [];
    for (const cut of ['regular', 'bold']) {
      document.fonts.add(await new FontFace(cut, `url(/fonts/b612-${cut}.woff2)`).load());
      pen.font = `40px ${cut}`;
      all.push(...[...'0123456789'].map((digit) => pen.measureText(digit).width));
    }
    return all;
  });
  // B612's digits are 1300 of 2000 units wide.
  expect(new Set(widths.map((w) => w.toFixed(2)))).toEqual(new Set(['26.00']));
});

/** What axe finds in either theme; screens are scanned at every width, elements at one. */
const scanThemes = async (): Promise<string[]> => {
  const found: string[] = [];
  for (const theme of ['bright', 'dark']) {
    await phone.page.evaluate((name) => (document.documentElement.dataset.theme = name), theme);
    found.push(...(await scan(phone.page)).map((line) => `${theme}: ${line}`));
  }
  return found;
};

it.each(['pad', 'pad-error', 'gauge', 'standing', 'rows', 'bar', 'wipe', 'profile', 'dial'])(
  '%s: nothing for axe to find',
  async (name) => {
    await open(name);
    expect(await scanThemes()).toEqual([]);
  },
);

it('an open sheet: nothing for axe to find', async () => {
  await open('sheet');
  await phone.finger.tap('Open');
  expect(await scanThemes()).toEqual([]);
});

it('nothing went wrong on the way', () => {
  expect(phone.watch.problems).toEqual([]);
});
