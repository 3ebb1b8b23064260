/** The elements for other pages, by touch and by keyboard, on the page that shows them. */
import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { EmbedPage } from './support/embed';
import type { Phone } from './support/phone';
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
const set = (name: string, values: object): Promise<void> => shown.set(name, values);
const touch = (name: string, key: string): Promise<void> => shown.touch(name, key);

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

  it('breaks no unit’s name on its key', async () => {
    const lines = await part('look-up')
      .locator('.units button')
      .evaluateAll((keys) =>
        keys.map((key) => {
          const range = document.createRange();
          range.selectNodeContents(key);
          return new Set([...range.getClientRects()].filter((r) => r.width > 0).map((r) => Math.round(r.top)))
            .size;
        }),
      );
    expect(lines).toEqual([1, 1, 1, 1]);
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
    await shown.inSight('checks');
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

it('nothing went wrong on the way', () => {
  expect(phone.watch.problems.filter((p) => !p.includes('another origin'))).toEqual([]);
});
