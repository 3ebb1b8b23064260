import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scanEverywhere } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { chooseM10, enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const to = (hash: string): Promise<void> =>
  phone.page.evaluate((h) => {
    location.hash = h;
  }, hash);

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await chooseM10(person);
  await to('#/cut/measure');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

// M10×1.5 6g, wires of 0.866 mm, 10.520 over them (ISO 965 limits, three-wire formula with its lead term): pitch diameter
// 9.219, 0.1457 radially to 8.928. Heron's cross-slide: 0.04 mm on the diameter a division, so 0.02 radially: seven.
describe('measuring on the lathe', () => {
  it('asks for wire and reading, and says what is left in divisions', async () => {
    await person.reads('Measure M10×1.5 6g');
    await enter(person, 'Enter: Wire in use', '0.866', 'mm');
    await person.reads('Over these wires for 6g');
    await enter(person, 'Enter: Reading over three wires', '10.52', 'mm');
    await person.reads('Above the limits: more to take off.');
    await person.reads('Cross-slide, still to go 7 divisions = 0.28 mm');
    await person.reads('0.146 mm');
    await person.key('High-speed steel');
    await person.reads('Before that a spring pass');
    await person.reads('Take 70 %, then measure: ');
    await person.reads('No run is open: nothing of this is recorded.');
    expect(await scanEverywhere(phone.page, 'cut, measure')).toEqual([]);
  });

  it('knows the size within only when the uncertainty is', async () => {
    await enter(person, 'Reading over three wires: 10.52 mm', '10.23', 'mm');
    await person.reads('within limits by your wires; lead and form not checked');
    await enter(person, 'Reading over three wires: 10.23 mm', '10.29', 'mm');
    await person.reads('Not known: a limit lies inside the uncertainty.');
    await enter(person, 'Reading over three wires: 10.29 mm', '10.1', 'mm');
    await person.reads('Below the limits. No infeed corrects that.');
    await person.seesNot('still to go');
    expect(await scanEverywhere(phone.page, 'cut, measure, below')).toEqual([]);
  });

  it('takes a gauge’s word without inventing a size', async () => {
    await person.key('Gauge or nut');
    await person.key('Go and no-go');
    await person.key('Goes freely');
    await person.reads('Now the no-go gauge.');
    await person.key('Binds within 2 turns');
    await person.reads('within limits as far as these gauges tell');
    expect(await scanEverywhere(phone.page, 'cut, measure, gauge')).toEqual([]);
    await person.key('Three wires');
    expect(phone.watch.problems).toEqual([]);
  });
});

const measure = (): Promise<void> =>
  phone.finger.tapOn(phone.page.getByRole('link', { name: 'Measure now' }).first());

/** Begins a run of four cuts by the cross-slide and a spring pass, as the page of the plan does. */
const begin = (): Promise<void> =>
  phone.page.evaluate(async () => {
    const { app } = [...document.body.children].find((e) => 'app' in e) as unknown as {
      app: { runs: { begin(plan: unknown, names: unknown): Promise<{ ok: boolean }> } };
    };
    const dial = (divisions: number) => ({
      divisions,
      reading: { value: { n: BigInt(divisions), d: 25n }, unit: 'mm' },
      turns: 0,
      past: divisions,
    });
    const plan = [20, 30, 36, 41, 41].map((divisions, i, all) => ({
      n: i + 1,
      kind: i === 4 ? 'spring' : 'cut',
      cross: dial(divisions),
      top: null,
      depth: divisions * 0.02,
      step: (divisions - (all[i - 1] ?? 0)) * 0.02,
      chip: i === 4 ? 0 : 0.1,
    }));
    const names = { machineName: 'Heron', workshop: 'Example shed', threadName: 'M10×1.5' };
    const begun = await app.runs.begin(plan, names);
    if (!begun.ok) throw new Error('not begun');
  });

// As above 10.520 over the wires leaves 0.1457 mm: seven divisions from 36 on; 70 % of it is five, in one pass of 0.1 mm
// or two by the plan's chip of 0.1 mm²: 0.82² − 0.72² = 0.154, × tan 30° = 0.089.
describe('a run, measured and ended', () => {
  it('takes a part and goes on from what the dial reads', async () => {
    await begin();
    await to('#/cut/pass');
    for (const n of [1, 2, 3]) {
      await person.sees(`Cut ${n} of 5`);
      await person.key(/^TAKEN/);
    }
    await person.sees('Cut 4 of 5');
    await measure();
    await enter(person, /^(Enter: )?Reading over three wires/, '10.52', 'mm');
    await person.reads('Cross-slide, still to go 7 divisions = 0.28 mm');
    expect(await scanEverywhere(phone.page, 'cut, measure in a run')).toEqual([]);
    await person.key('Take 70 %: 5 divisions in 1 pass, then measure');
    await person.sees('Cut 4 of 5');
    await person.reads('41 divisions');
    await person.key(/^TAKEN/);
    await person.sees(/^Spring pass/);
    await person.key(/^TAKEN/);
    await measure();
    await person.sees('Enter: Reading over three wires');
  });

  it('ends within limits, and can be taken up again', async () => {
    await enter(person, 'Enter: Reading over three wires', '10.23', 'mm');
    await person.key('Finished: within limits');
    await person.reads('M10×1.5 6g Within limits by my reading');
    await person.reads('10.52 mm: effective diameter 9.219 ± 0.020 mm');
    await person.reads('Cross-slide 41 divisions (1.64 mm)');
    await person.key('Undo');
    await to('#/cut/pass');
    await person.sees('Paused');
    await person.key('Go on');
    await measure();
    await enter(person, 'Enter: Reading over three wires', '10.23', 'mm');
    await person.key('Finished: within limits');
    await person.reads('Within limits by my reading');
  });
});

describe('the records', () => {
  it('keep their notes when the phone is killed', async () => {
    await phone.page.getByLabel('Notes').fill('Spindle nose for the gate');
    expect(await scanEverywhere(phone.page, 'cut, a record')).toEqual([]);
    await phone.kill();
    await phone.start();
    await person.sees('Use again as a new job');
    await expect.poll(() => phone.page.getByLabel('Notes').inputValue()).toBe('Spindle nose for the gate');
    await person.link('All records');
  });

  it('are found by any word of them', async () => {
    await phone.page.getByLabel('Look up').fill('m10 heron gate');
    await person.sees('1 record');
    await phone.page.getByLabel('Look up').fill('m10 heron brass');
    await person.sees('Nothing of that in the records.');
    await phone.page.getByLabel('Look up').fill('');
    expect(await scanEverywhere(phone.page, 'cut, records')).toEqual([]);
  });

  it('are handed on as a table and as data', async () => {
    const file = async (key: string): Promise<string> => {
      const saved = phone.page.waitForEvent('download');
      await person.key(key);
      return readFileSync(await (await saved).path(), 'utf8');
    };
    const [header, row, rest] = (await file('Share as a table (CSV)')).split('\r\n');
    expect(header).toMatch(/^\ufeffBegun,Ended,Outcome,Thread/);
    expect(row).toContain(',Within limits by my reading,M10×1.5,6g,External,');
    expect(row).toContain('Spindle nose for the gate');
    expect(rest).toBe('');
    const { schema, runs } = JSON.parse(await file('Share as data (JSON)')) as {
      schema: string;
      runs: { run: { readings: { reading: unknown }[] } }[];
    };
    expect(schema).toBe('latheside-runs-1');
    expect(runs[0]?.run.readings[0]?.reading).toEqual({ n: '263', d: '25', unit: 'mm' });
  });

  it('become a new job, are put away and brought back', async () => {
    await person.link(/^M10×1.5/);
    await person.key('Use again as a new job');
    await person.sees('Plan of passes');
    await to('#/cut/records');
    await person.link(/^M10×1.5/);
    await person.key('Put away this record');
    await person.sees('Bring back M10×1.5 6g');
    await person.key('Undo');
    await person.sees('1 record');
    expect(phone.watch.problems).toEqual([]);
  });
});
