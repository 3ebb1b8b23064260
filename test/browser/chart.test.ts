import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults, printedPages } from './support/faults';
import { Phone } from './support/phone';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
  await person.key('Add to favourites');
  await person.link('Another thread');
  await person.link('Unified coarse, UNC');
  await person.key('1/2');
  await person.link('Another thread');
  await person.key('M10×1.5');
  await person.link('Use it');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// Heron: motor 900 rpm · 0.8 through 3:1 on a 3 mm screw is 720 ÷ lead; stopping time 0.5 s, factor 1.5.
describe('the wall chart', () => {
  it('has each limit by name, the threads in use, and says which lines are no threading speed', async () => {
    await person.link('Wall chart');
    await person.reads('NOT a threading speed to a shoulder.');
    const plot = phone.page.getByRole('img', { name: /Highest spindle speed over lead/ });
    await plot.waitFor();
    // Drawn one after another: axes, lines, names.
    for (const name of ['Motor speed', 'Carriage speed', 'Torque', 'ISO 4755 groove', 'DIN 76 B groove'])
      await person.reads(name);
    // 720 ÷ 1.5. The groove of ISO 4755 leaves 0.95 of 2.5 mm at 0.92 deep: 60 · 0.95 ÷ (1.5 · 0.5 · 1.5) = 50; with 1 mm
    // 31, with 0.5 mm nothing.
    // Lead, the drive, the spindle's own, the three grooves.
    await person.reads('0.5 s × 1.5 to stop');
    // Counter 0.8 · 250 000 · 60 ÷ 4800 = 2500; 30° of phase error leave two thirds of a gap, 1666; 720 ÷ 1666 = 0.432.
    await person.reads(
      'Lowest of the drive’s limits at the finest lead: Shortest gap of edges. From 0.44 mm: Motor speed.',
    );
    await person.reads('M10×1.5 1.5 mm · 16.93 tpi 480 420 50 87 13');
    await person.reads('M6×1 1 mm · 25.4 tpi 720 700 31 ');
    await person.reads('M3×0.5 0.5 mm · 50.8 tpi 1440 1200 nothing left ');
  });

  it('is clean at every width, in both colours, and for a finger', async () => {
    expect(await pageFaults(phone.page, 'wall chart')).toEqual([]);
  });

  it('prints a page to hang up with digits of 12 mm, the drawing, and the table', async () => {
    // The page to hang up, the drawing, and 45 sizes on two pages.
    expect(await printedPages(phone.page, 'A4')).toBe(4);
    expect(await printedPages(phone.page, 'Letter')).toBe(4);
    // A4 between its margins of 10 mm is the narrower: 190 mm.
    await phone.page.setViewportSize({ width: 718, height: 1000 });
    await phone.page.emulateMedia({ media: 'print' });
    const hung = await phone.page.locator('ls-chart').evaluate((chart) => {
      const rows = [...(chart.shadowRoot?.querySelectorAll('.hang li') ?? [])];
      const written = rows.flatMap((row) => [...row.querySelectorAll('span, text')]);
      const context = document.createElement('canvas').getContext('2d');
      const heights = written.map((one) => {
        const { fontWeight, fontSize, fontFamily } = getComputedStyle(one);
        if (!context) return 0;
        // A long name is a drawing in units of its own.
        const scale = one instanceof SVGTextElement ? (one.getScreenCTM()?.d ?? 0) : 1;
        context.font = `${fontWeight} ${fontSize} ${fontFamily}`;
        // A digit's own height, in millimetres on paper: 96 CSS pixels to the inch.
        return (context.measureText('0').actualBoundingBoxAscent * scale * 25.4) / 96;
      });
      const wide = rows.filter((row) => row.scrollWidth > row.clientWidth + 1).length;
      const names = rows.map((row) => row.querySelector('.name')?.textContent?.trim() ?? '');
      const bottom = Math.max(...rows.map((row) => row.getBoundingClientRect().bottom));
      const top = chart.shadowRoot?.querySelector('.hang')?.getBoundingClientRect().top ?? 0;
      const frame = document.querySelector('ls-app')?.shadowRoot?.querySelector('ls-bar, header');
      const framed = frame ? frame.getBoundingClientRect().height : 0;
      return { names, least: Math.min(...heights), wide, high: ((bottom - top) * 25.4) / 96, framed };
    });
    await phone.page.emulateMedia({ media: null });
    await phone.page.setViewportSize({ width: 390, height: 844 });
    expect(hung.names).toHaveLength(16);
    // The favourite first, then what was used last, then usual sizes.
    expect(hung.names.slice(0, 4)).toEqual(['M10×1.5', '1/2-13 UNC', 'M6×1', 'M8×1.25']);
    expect(hung.wide).toBe(0);
    expect(hung.framed).toBe(0);
    // Letter is 279.4 mm high, less 10 mm above and below, less a line below the rows.
    expect(hung.high).toBeLessThan(253);
    expect(hung.least).toBeGreaterThanOrEqual(12);
  });

  it('draws no room to stop in while the stopping time isn’t known, and names what isn’t drawn', async () => {
    await person.place('Machine');
    await person.link(/^Whole stopping time/);
    await person.key('Not known');
    await person.link(/^Largest cutting force/);
    await person.key('Not known');
    await person.place('Speed');
    await person.link('Wall chart');
    await person.reads('the stopping time is not entered.');
    await person.reads('Not known, and so not drawn: Torque.');
    await person.reads('M10×1.5 1.5 mm · 16.93 tpi not known not known not known');
    expect(phone.watch.problems).toEqual([]);
  });
});
