import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Finger } from './support/finger';
import { addMachines, allMachinesRead, type Wanted } from './support/machines';
import { Phone } from './support/phone';
import { beginRun } from './support/run';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
const phones: Phone[] = [];

/** A phone with Heron and M10 on it, which has no network from then on. */
const newPhone = async (wanted: readonly Wanted[]): Promise<Person> => {
  const phone = await Phone.open(host.url);
  phones.push(phone);
  const person = new Person(phone);
  await phone.controlled();
  await phone.context.setOffline(true);
  await takeExample(person);
  await chooseM10(person);
  await addMachines(phone.page, wanted);
  return person;
};

const pageOf = ({ phone }: Person): Page => phone.page;
const phoneOf = (person: Person): Phone => {
  const phone = phones.find((p) => p.page === person.phone.page);
  if (!phone) throw new Error('no such phone');
  return phone;
};

/** Touches the machine's name above every screen. */
const touchName = (person: Person): Promise<void> => person.link(/: change the machine$/);
const header = async (person: Person): Promise<string> =>
  (await pageOf(person).locator('ls-app header').innerText()).replace(/\s+/g, ' ').trim();
const isWith = (person: Person, machine: string): Promise<void> =>
  expect.poll(() => header(person)).toMatch(new RegExp(`^${machine} `));

const faults = (person: Person, name: string): Promise<string[]> => pageFaults(pageOf(person), name);

const CLUB: readonly Wanted[] = [
  { name: 'Smew', workshop: 'Model club', colour: 'plum' },
  { name: 'Gadwall', workshop: 'model club', colour: 'moss' },
  { name: 'Avocet', workshop: 'Model club', colour: 'moss' },
];

beforeEach(async () => {
  host = await serve(DIST);
});
afterEach(async () => {
  for (const phone of phones.splice(0)) {
    expect(phone.watch.problems).toEqual([]);
    await phone.close();
  }
  await host.close();
});

describe('another workshop', () => {
  it('that takes its time to come leads nobody away from where they went meanwhile', async () => {
    const person = await newPhone(CLUB);
    await touchName(person);
    await pageOf(person).evaluate(() => {
      const { app } = document.querySelector('ls-app') as unknown as {
        app: { useMachine(id: string): Promise<void> };
      };
      const use = app.useMachine.bind(app);
      app.useMachine = async (id) => {
        await use(id);
        await new Promise((resolve) => setTimeout(resolve, 1000));
        document.body.dataset.used = id;
      };
    });
    await person.key('Show the 3 machines of Model club');
    await person.key(/^Smew/);
    await person.place('Speed');
    await pageOf(person).locator('body[data-used]').waitFor();
    await isWith(person, 'Smew');
    expect(new URL(pageOf(person).url()).hash).toBe('#/speed');
    await person.reads('Speed');
  });

  it('is two taps away from any of the five places, with no network, and undo goes back', async () => {
    const person = await newPhone(CLUB);
    const { finger } = person.phone;
    for (const place of ['Threads', 'Speed', 'Checks', 'Cut', 'Machine'] as const) {
      await person.place(place);
      const before = finger.taps;
      const counted = new Person({ page: pageOf(person), finger });
      await touchName(counted);
      await counted.key(/^Model club/);
      expect([place, finger.taps - before, finger.screenfuls]).toEqual([place, 2, 0]);
      // The first by name: none there was used yet. It goes on where the name was touched, with its own job.
      await isWith(person, 'Avocet');
      await expect.poll(() => new URL(pageOf(person).url()).hash).toBe(`#/${place.toLowerCase()}`);
      expect(await person.words()).not.toContain('M10');
      await person.sees('Back to Heron');
      await person.key('Undo');
      await isWith(person, 'Heron');
      if (place === 'Threads' || place === 'Cut') await person.reads('M10');
    }
  });

  it('puts the machine used last there in use, and what was used last stands first', async () => {
    const person = await newPhone([...CLUB, { name: 'Crake', workshop: 'Example shed', colour: 'slate' }]);
    await touchName(person);
    await person.key('Show the 3 machines of Model club');
    await person.key(/^Gadwall/);
    await isWith(person, 'Gadwall');
    // The list goes when all of it is done.
    await pageOf(person).locator('ls-machines').waitFor({ state: 'detached' });
    await touchName(person);
    await person.key(/^Example shed/);
    await person.sees('Back to Gadwall');
    // What was used outlives a killed phone.
    await phoneOf(person).kill();
    await phones[0]?.start();
    await isWith(person, 'Heron');
    await allMachinesRead(pageOf(person));
    await touchName(person);
    await person.reads(
      'Machines Example shed Heron Example Crake Other workshops Model club Gadwall, one of 3',
    );
    expect(await faults(person, 'machines, by workshop')).toEqual([]);
    await person.key(/^Model club/);
    await isWith(person, 'Gadwall');
  });

  it('leaves no cut without a word, and nothing is updated meanwhile', async () => {
    const person = await newPhone(CLUB);
    await beginRun(pageOf(person), { cross: [46, 80, 106] });
    await person.reads('Cut 1 of 3');
    const locks = (): Promise<number> =>
      pageOf(person).evaluate(async () => {
        const { held = [] } = await navigator.locks.query();
        return held.filter((lock) => lock.name === 'cutting').length;
      });
    expect(await locks()).toBe(1);
    await touchName(person);
    await person.reads('Heron Example Run not ended: M10×1.5');
    await person.key(/^Model club/);
    await isWith(person, 'Avocet');
    await person.reads('Heron: you recorded at');
    await person.reads('that a cut began. It is not ended.');
    expect(await locks()).toBe(1);
    expect(await faults(person, 'a cut left running')).toEqual([]);
    // It is said after a restart as well, on every place.
    await phoneOf(person).kill();
    await phones[0]?.start();
    for (const place of ['Threads', 'Checks', 'Machine'] as const) {
      await person.place(place);
      await person.reads('It is not ended.');
    }
    await expect.poll(locks).toBe(1);
    await person.key('To Heron');
    await isWith(person, 'Heron');
    await person.seesNot('It is not ended.');
    await pageOf(person).evaluate(() => (location.hash = '#/cut/pass'));
    await person.reads('Was cut 1 taken?');
  });

  it('chosen in one tab leaves the machine of another tab alone, where a cut runs', async () => {
    const person = await newPhone(CLUB);
    await beginRun(pageOf(person), { cross: [46, 80, 106] });
    await person.reads('Cut 1 of 3');
    const page = await phones[0]!.newTab(`${host.url}#/speed`);
    const second = new Person({ page, finger: new Finger(page) });
    await isWith(second, 'Heron');
    await allMachinesRead(page);
    await touchName(second);
    await second.key(/^Model club/);
    await isWith(second, 'Avocet');
    await second.reads('Heron: you recorded at');
    await pageOf(person).bringToFront();
    await isWith(person, 'Heron');
    await pageOf(person).locator('ls-cut-pass .resting').waitFor({ state: 'detached' });
    await person.key(/^TAKEN/);
    await person.reads('Cut 2 of 3');
    expect(await person.words()).not.toContain('It is not ended.');
    await page.bringToFront();
    await isWith(second, 'Avocet');
  });
});

describe('a workshop', () => {
  it('is renamed for all its machines at once, and one undo takes that back', async () => {
    const person = await newPhone(CLUB);
    await touchName(person);
    await person.key(/^Model club/);
    await isWith(person, 'Avocet');
    await touchName(person);
    await person.link('Rename Model club');
    expect(await faults(person, 'workshop of many machines')).toEqual([]);
    const typed = pageOf(person).getByLabel('Workshop', { exact: true });
    await typed.fill('x'.repeat(31));
    await person.key('Rename Model club: all 3 machines');
    await pageOf(person).getByRole('alert').filter({ hasText: /30/ }).first().waitFor();
    expect(await typed.inputValue()).toHaveLength(31);
    await typed.fill('EXAMPLE  shed');
    await person.reads('Example shed is there already. Renamed, all stand together in it.');
    await typed.fill('Engine house');
    await person.key('Rename Model club: all 3 machines');
    await person.reads('Machines Engine house Avocet');
    await person.reads('Same colour as Gadwall');
    await person.reads('Smew');
    expect(await header(person)).toBe('Avocet Engine house : change the machine');
    await person.sees('The workshop was called Model club');
    await person.key('Undo');
    await person.reads('Machines Model club Avocet');
    expect(await header(person)).toBe('Avocet Model club : change the machine');
  });

  it('need not be named; one machine is moved to another by one key', async () => {
    const person = await newPhone(CLUB);
    await touchName(person);
    await person.link('New machine');
    await pageOf(person).getByLabel('What is it called?').fill('Wigeon');
    await pageOf(person).getByRole('button', { name: 'Model club' }).waitFor();
    await person.key('Add this machine');
    await person.reads('What turns the leadscrew?');
    expect(await header(person)).toBe('Wigeon No workshop named : change the machine');
    await touchName(person);
    await person.reads('Machines No workshop named Wigeon Other workshops');
    expect(await faults(person, 'machines, none named')).toEqual([]);
    await person.link('Name this workshop');
    await person.key('Model club');
    await person.reads('Machines Model club Wigeon');
    await person.seesNot('No workshop named');
    await person.key('Undo');
    await person.reads('Machines No workshop named');
  });

  it('is clean with the longest names on the narrowest screen', async () => {
    const long = (sign: string): string => sign.repeat(30);
    const person = await newPhone([
      { name: long('W'), workshop: long('M'), colour: 'plum' },
      { name: long('X'), workshop: long('M'), colour: 'plum' },
      { name: 'A friend’s lathe, tested twice', workshop: 'The long shop behind the mill', colour: 'brick' },
    ]);
    await pageOf(person).setViewportSize({ width: 320, height: 640 });
    await touchName(person);
    await person.key(`Show the 2 machines of ${long('M')}`);
    expect(await faults(person, 'machines, long names')).toEqual([]);
    await pageOf(person).setViewportSize({ width: 320, height: 640 });
    await person.key(/^X+/);
    await isWith(person, long('X'));
    expect(await faults(person, 'threads, long names')).toEqual([]);
  });

  it('of a machine that is carried comes along, merged field by field; what is the person’s stays', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'latheside-workshops-'));
    const files = async (person: Person): Promise<void> => {
      await pageOf(person).evaluate(() => (location.hash = '#/machine/carry'));
    };
    const share = async (person: Person, key: string): Promise<string> => {
      await files(person);
      const saved = pageOf(person).waitForEvent('download');
      await person.key(key);
      const path = join(folder, `${Date.now()}.json`);
      await (await saved).saveAs(path);
      return path;
    };
    const bring = async (person: Person, path: string): Promise<void> => {
      await files(person);
      await pageOf(person).locator('ls-carry input[type=file]').setInputFiles(path);
      await person.key('Bring it in');
      await person.sees('Brought in');
      await person.key(/^Use /);
    };
    const settings = (person: Person): Promise<unknown> =>
      pageOf(person).evaluate(() => {
        const { app } = document.querySelector('ls-app') as unknown as {
          app: { settings: Record<string, unknown> };
        };
        const { machine: _machine, used: _used, ...own } = app.settings;
        return own;
      });
    const pick = async (person: Person, ...keys: string[]): Promise<void> => {
      await pageOf(person).evaluate(() => (location.hash = '#/settings'));
      for (const key of keys) await person.key(key);
    };
    try {
      const home = await newPhone(CLUB);
      await touchName(home);
      await home.key(/^Model club/);
      await isWith(home, 'Avocet');
      // Who chose a machine is taken back to where the list was called from.
      const address = (): Promise<string> => pageOf(home).evaluate(() => location.hash);
      await expect.poll(address).not.toContain('list');
      const first = await share(home, 'Share Avocet');
      const file = JSON.parse(readFileSync(first, 'utf8')) as { records: Record<string, unknown> };
      expect(Object.keys(file.records)).not.toContain('settings');

      const club = await newPhone([{ name: 'Knot', workshop: 'MODEL CLUB', colour: 'brick' }]);
      await pick(club, 'Inches', 'Dark', 'American');
      const own = await settings(club);
      await bring(club, first);
      await isWith(club, 'Avocet');
      expect(await settings(club)).toEqual(own);
      // It stands with what was there already, whoever wrote the name in whatever way.
      await touchName(club);
      await club.reads('Knot');
      await club.reads('Other workshops Example shed Heron');

      // Renamed here, its screw changed there: both are kept, and nothing is asked.
      await club.link(/^Rename /);
      await pageOf(club).getByLabel('Workshop', { exact: true }).fill('Engine house');
      await club.key(/: all 2 machines$/);
      await club.reads('Machines Engine house');
      await home.place('Machine');
      await home.link(/^Leadscrew pitch/);
      await home.key('4 mm');
      await home.reads('Leadscrew pitch 4 mm');
      await bring(club, await share(home, 'Share Avocet'));
      await isWith(club, 'Avocet');
      await club.reads('Leadscrew pitch 4 mm');
      expect(await header(club)).toBe('Avocet Engine house : change the machine');
      expect(await settings(club)).toEqual(own);

      // A back-up of everything has the person's settings too.
      const all = JSON.parse(readFileSync(await share(club, 'Back up everything'), 'utf8')) as {
        records: { settings: { body: object }[] };
      };
      expect(all.records.settings[0]?.body).toMatchObject({ units: 'in', theme: 'dark', words: 'us' });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('a thousand machines in fifty workshops', () => {
  it('are listed by workshop, and changed like a few', { timeout: 200_000 }, async () => {
    const person = await newPhone(CLUB);
    const page = pageOf(person);
    const many = Array.from({ length: 1000 }, (_, i) => ({
      name: `Lathe ${i}`,
      workshop: `Shop ${i % 50}`,
      colour: 'brick',
    }));
    await addMachines(page, many);
    await page.reload();
    await allMachinesRead(page);
    await person.place('Speed');
    await touchName(person);
    await person.sees('Other workshops');
    await person.reads('Shop 7 Lathe 7, one of 20 machines');
    expect(await faults(person, 'machines, a thousand')).toEqual([]);
    await person.key(/^Shop 49/);
    await isWith(person, 'Lathe 49');
    await touchName(person);
    await person.reads('Machines Shop 49 Lathe 49');
    await person.reads('17 more machines here');
  });
});

describe('records', () => {
  it('of the workshop at hand stand first, wherever its machines went since', async () => {
    const person = await newPhone(CLUB);
    const page = pageOf(person);
    const cut = async (machine: RegExp | null): Promise<void> => {
      if (machine) {
        await touchName(person);
        await person.key(machine);
        await person.sees(/^Back to /);
      }
      await beginRun(page, { cross: [46] });
      await page.evaluate(async () => {
        const { app } = document.querySelector('ls-app') as unknown as {
          app: {
            runs: { take(n: number): Promise<boolean> };
            endRun(o: string, n: string): Promise<boolean>;
          };
        };
        await app.runs.take(1);
        await app.endRun('gauged', '');
      });
    };
    await cut(null);
    await cut(/^Model club/);
    await page.goto(`${host.url}#/cut/records`);
    const titles = (): Promise<string[]> => page.locator('ls-cut-records h2').allInnerTexts();
    await expect.poll(titles).toEqual(['Model club', 'In other workshops']);
    await touchName(person);
    await person.key(/^Example shed/);
    await person.sees(/^Back to /);
    await page.goto(`${host.url}#/cut/records`);
    await expect.poll(titles).toEqual(['Example shed', 'In other workshops']);
    expect(await faults(person, 'records, by workshop')).toEqual([]);
  });
});
