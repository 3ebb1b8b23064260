import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { ITEMS } from '../../src/core/checks';
import { checkText } from '../../src/text/checks';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { printedPages } from './support/faults';
import { Phone } from './support/phone';
import { chooseM10, enter, takeExample } from './support/screens';
import { SHOTS } from './support/shots';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
  await person.key('Round');
  await enter(person, 'Enter the tool nose', '0.2');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

const today = (): Promise<string> =>
  phone.page.evaluate(() => {
    const d = new Date();
    return [d.getFullYear(), d.getMonth() + 1, d.getDate()].map((n) => `${n}`.padStart(2, '0')).join('-');
  });

/** Opens a page, and leaves it as a document where pictures are asked for. */
const open = async (address: string, ready: string): Promise<void> => {
  await phone.page.evaluate((hash) => (location.hash = hash), `#/${address}`);
  await phone.page.locator(ready).first().waitFor({ state: 'attached' });
  if (!process.env.LATHESIDE_SHOTS) return;
  mkdirSync(SHOTS, { recursive: true });
  for (const format of ['A4', 'Letter'] as const)
    writeFileSync(
      join(SHOTS, `${address.replaceAll('/', '-')}-${format}.pdf`),
      await phone.page.pdf({ format, printBackground: false }),
    );
};

/** What of the page goes beyond the width of paper between its margins, and what of the frame is left. */
const onPaper = (): Promise<{ wide: string[]; frame: string[] }> =>
  phone.page.evaluate(() => {
    const wide: string[] = [];
    const frame: string[] = [];
    const look = (root: ParentNode): void => {
      for (const e of root.querySelectorAll('*')) {
        if (e.shadowRoot) look(e.shadowRoot);
        const box = e.getBoundingClientRect();
        if (box.width === 0 || box.height === 0 || e.matches('.vh')) continue;
        if (box.right > innerWidth + 1 || box.left < -1)
          wide.push(`${e.tagName} ${(e.textContent ?? '').trim().slice(0, 40)}`);
        if (e.matches('ls-bar, ls-undo, ls-notices, button:not(.tick), a.key'))
          frame.push(e.tagName + e.className);
      }
    };
    look(document);
    return { wide, frame };
  });

/** Looks at the page as paper shows it, 190 mm wide: Letter and A4 give no less. */
const asPaper = async (look: () => Promise<void>): Promise<void> => {
  await phone.page.setViewportSize({ width: 718, height: 1000 });
  await phone.page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await look();
  await phone.page.emulateMedia({ media: null, colorScheme: null });
  await phone.page.setViewportSize({ width: 390, height: 844 });
};

describe('on paper', () => {
  it.each([
    ['speed/chart', 'ls-chart .hang'],
    ['machine/sheet', 'ls-sheet-page dl'],
    ['machine/wiring/sheet', 'ls-wiring h1'],
    ['checks/list', 'ls-checks .paper'],
  ])('%s: whose machine and of which day, black on white, nothing cut, no keys', async (address, ready) => {
    await open(address, ready);
    await asPaper(async () => {
      const { wide, frame } = await onPaper();
      expect(wide).toEqual([]);
      expect(frame).toEqual([]);
      const words = await person.words();
      expect(words).toContain('Heron');
      expect(words).toContain(await today());
      const colours = await phone.page.evaluate(() => {
        const style = getComputedStyle(document.documentElement);
        return [style.backgroundColor, style.color];
      });
      expect(colours).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
    });
  });

  it('all checks of the job stand on two pages with boxes, and what was recorded of each', async () => {
    await person.place('Checks');
    await person.sees('Belts and pulleys tight?');
    await person.key('DONE');
    await person.sees(/Overload protection/);
    await phone.page.locator('ls-checks .resting').waitFor({ state: 'detached' });
    await person.key('NOT OK');
    await person.sees(/recorded this as not OK/);
    await open('checks/list', 'ls-checks .paper');
    expect(await printedPages(phone.page, 'A4')).toBe(2);
    expect(await printedPages(phone.page, 'Letter')).toBe(2);
    await asPaper(async () => {
      const rows = await phone.page
        .locator('ls-checks .paper tbody tr:has(.box)')
        .evaluateAll((all) => all.map((row) => (row.textContent ?? '').replace(/\s+/g, ' ').trim()));
      // As many as the screen lists, and each of them a check.
      expect(rows).toHaveLength(await phone.page.locator('ls-checks a.line').count());
      const row = (id: string) => rows.find((r) => r.includes(checkText(id).question)) ?? '';
      expect(row('belts')).toMatch(new RegExp(`^✓.*Done · ${await today()} \\d\\d:\\d\\d$`));
      expect(row('overload')).toMatch(/^✕.*Not OK · /);
      // Not answered: an empty box, and room to write.
      expect(row('chuck-key')).toBe(`${checkText('chuck-key').question} ${checkText('chuck-key').look}`);
      expect(rows.filter((r) => ITEMS.some((i) => r.includes(checkText(i.id).question)))).toEqual(rows);
      const head = phone.page.locator('ls-checks thead');
      expect(await head.evaluate((e) => getComputedStyle(e).display)).toBe('table-header-group');
      expect(await head.innerText()).toContain('M10×1.5 · Heron, Example shed, Teal');
      expect(await head.innerText()).toContain('Practice: an invented machine.');
    });
    expect(phone.watch.problems).toEqual([]);
  });
});
