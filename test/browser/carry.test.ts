import { readFileSync, writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { writeDocument } from '../../src/core/carry';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { chooseM10, setPitch, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let folder: string;
const phones: Phone[] = [];

/** A phone with the app on it, which has no network from then on. */
const newPhone = async (): Promise<Person> => {
  const phone = await Phone.open(host.url);
  phones.push(phone);
  await phone.controlled();
  await phone.context.setOffline(true);
  return new Person(phone);
};

beforeEach(async () => {
  host = await serve(DIST);
  folder = mkdtempSync(join(tmpdir(), 'latheside-carry-'));
});
afterEach(async () => {
  for (const phone of phones.splice(0)) await phone.close();
  await host.close();
  rmSync(folder, { recursive: true, force: true });
});

const heading = (person: Person, name: string | RegExp): Promise<void> =>
  person.phone.page.getByRole('heading', { name }).first().waitFor();

const toFiles = async (person: Person): Promise<void> => {
  await person.place('Machine');
  await person.link('Share, back up, open a file');
  await heading(person, 'Share, back up, open a file');
};

/** The way in of a phone that has no machine yet. */
const toFirstFile = async (person: Person): Promise<void> => {
  await person.link('Open a file');
  await heading(person, 'Share, back up, open a file');
};

/** Presses a key that makes a file, and keeps that; gives where it is. */
const made = async (person: Person, key: string): Promise<string> => {
  const saved = person.phone.page.waitForEvent('download');
  await person.key(key);
  const download = await saved;
  const path = join(folder, `${phones.findIndex((p) => p === person.phone)} ${download.suggestedFilename()}`);
  await download.saveAs(path);
  await person.sees('Saved among this phone’s downloads.');
  return path;
};

const opened = async (person: Person, path: string, title: string | RegExp): Promise<void> => {
  await person.phone.page.locator('ls-carry input[type=file]').setInputFiles(path);
  await heading(person, title);
};

const faults = (person: Person, name: string): Promise<string[]> => pageFaults(person.phone.page, name);

/** A machine in use: its pitch changed, a thread chosen, one check recorded. */
const inUse = async (person: Person): Promise<void> => {
  await takeExample(person);
  await chooseM10(person);
  await setPitch(person, '4 mm');
  await person.place('Checks');
  await person.reads('Belts and pulleys tight?');
  await person.key('DONE');
  await person.seesNot('Belts and pulleys tight?');
};

describe('a machine, and everything, as a file', () => {
  it('goes from one phone to another, and is taken back by one undo', async () => {
    const from = await newPhone();
    await inUse(from);
    await toFiles(from);
    await from.reads('Never backed up.');
    expect(await faults(from, 'files')).toEqual([]);
    const path = await made(from, 'Share Heron');
    expect(path).toMatch(/Heron \d{4}-\d\d-\d\d\.latheside\.json$/);
    const file = JSON.parse(readFileSync(path, 'utf8')) as { kind: string; records: object };
    expect(file.kind).toBe('machine');

    const to = await newPhone();
    await toFirstFile(to);
    await opened(to, path, 'A machine from elsewhere');
    await to.reads('New here');
    await to.reads('Check answers 1 1 new');
    expect(await faults(to, 'file, a new machine')).toEqual([]);
    await to.key('Bring it in');
    await heading(to, 'Brought in');
    expect(await faults(to, 'file, brought in')).toEqual([]);
    await to.key('Use Heron');
    await to.reads('Leadscrew pitch 4 mm');
    await to.place('Threads');
    await heading(to, /^M10/);
    await to.place('Checks');
    await to.seesNot('Belts and pulleys tight?');

    // The way back outlives a killed phone.
    const phone = phones[1];
    await phone?.kill();
    await phone?.start();
    await toFiles(to);
    await to.key('Take back what the file brought');
    await to.seesNot('Heron');
  });

  it('is the same after everything was lost', async () => {
    const person = await newPhone();
    await inUse(person);
    await toFiles(person);
    const path = await made(person, 'Back up everything');
    await person.reads('No change since.');
    const wiped = await newPhone();
    await toFirstFile(wiped);
    await opened(wiped, path, 'A back-up');
    await wiped.key('Bring it in');
    await heading(wiped, 'Brought in');
    await wiped.place('Machine');
    await wiped.reads('Leadscrew pitch 4 mm');
    await wiped.place('Threads');
    await heading(wiped, /^M10/);
    await wiped.place('Checks');
    await wiped.seesNot('Belts and pulleys tight?');
    await toFiles(wiped);
    await opened(wiped, path, 'A back-up');
    await wiped.reads('There is nothing to bring in.');
  });

  it('two phones that both changed it: different fields are put together, the same one is chosen', async () => {
    const one = await newPhone();
    await inUse(one);
    await toFiles(one);
    const first = await made(one, 'Share Heron');
    const two = await newPhone();
    await toFirstFile(two);
    await opened(two, first, 'A machine from elsewhere');
    await two.key('Bring it in');
    await two.key('Use Heron');

    await setPitch(one, '3 mm');
    await two.place('Machine');
    await two.link(/^Motor Stepper/);
    await two.key(/^Servo/);
    await two.reads('Motor Servo');
    await toFiles(two);
    const second = await made(two, 'Share Heron');
    await toFiles(one);
    await opened(one, second, 'A machine from elsewhere');
    await one.reads('Changed here and there: put together');
    await one.key('Bring it in');
    await one.key('Use Heron');
    await one.reads('Leadscrew pitch 3 mm');
    await one.reads('Motor Servo');

    await setPitch(two, '6 mm');
    await toFiles(two);
    const third = await made(two, 'Share Heron');
    await toFiles(one);
    await opened(one, third, 'A machine from elsewhere');
    await one.reads('1 thing to choose');
    await one.reads('Heron: Leadscrew pitch');
    expect(await faults(one, 'file, to choose')).toEqual([]);
    await one.key(/^Take theirs 6 mm/);
    await one.key('Bring it in');
    await one.key('Use Heron');
    await one.reads('Leadscrew pitch 6 mm');
    await one.key('Undo');
    await one.reads('Leadscrew pitch 3 mm');
    await one.reads('Motor Servo');
  });

  it('what is no whole file is refused in words, and changes nothing', async () => {
    const person = await newPhone();
    await inUse(person);
    await toFiles(person);
    const path = await made(person, 'Share Heron');
    const text = readFileSync(path, 'utf8');
    const bad: readonly (readonly [string, string | Uint8Array, string])[] = [
      ['cut off', text.slice(0, text.length / 2), 'Its end is missing.'],
      ['changed', text.replace('"Heron"', '"Stork"'), 'its checksum is wrong'],
      ['newer', text.replace('"version": 1', '"version": 2'), 'A newer version of this app made it.'],
      ['keys', text.replace('"profile": {', '"profile": { "__proto__": {"x": 1},'), 'There are names in it'],
      ['of another', '{"a": 1}', 'It isn’t a file of this app.'],
      ['UTF-16', Buffer.from(text, 'utf16le'), 'It isn’t text as this app writes it'],
      ['latin', Buffer.from('{"format":"caf\u00e9"}', 'latin1'), 'It isn’t text as this app writes it'],
      ['empty', '', 'There is nothing in it.'],
    ];
    for (const [name, content, words] of bad) {
      const wrong = join(folder, `${name}.json`);
      writeFileSync(wrong, content);
      await opened(person, wrong, 'This file was not opened');
      await person.reads(words);
      if (name === 'cut off') expect(await faults(person, 'file, refused')).toEqual([]);
      await person.key('Leave it');
      await heading(person, 'Share, back up, open a file');
    }
    await person.place('Machine');
    await person.reads('Leadscrew pitch 4 mm');
  });

  it('has what can’t be read in it too, as it stands, and says how much that is', async () => {
    const person = await newPhone();
    await takeExample(person);
    await person.phone.page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const asked = indexedDB.open('latheside');
          asked.onsuccess = () => {
            const work = asked.result.transaction(['machines', 'evidence'], 'readwrite');
            const machines = work.objectStore('machines');
            machines.put({ id: 'scrap', torn: 'half a machine' });
            const later = { schema: 1, rev: '1-a', parents: [], device: 'a', counter: 1, changedAt: 1 };
            machines.put({ id: 'later', ...later, deleted: false, body: { lathe: 'of another kind' } });
            // Not even a file can hold this one.
            work.objectStore('evidence').put({ id: 'odd', count: 12n });
            work.oncomplete = () => {
              asked.result.close();
              resolve();
            };
          };
        }),
    );
    await person.phone.page.reload();
    await toFiles(person);
    const path = await made(person, 'Back up everything');
    await person.reads('In it, as they stand: 2 records that this version can’t read.');
    await person.reads('Not in it, and kept on this phone alone: 1 record that can’t be read.');
    expect(await faults(person, 'files, unreadable records')).toEqual([]);
    const text = readFileSync(path, 'utf8');
    expect(text).toContain('half a machine');
    expect(text).toContain('of another kind');

    // On another phone it is kept as it stands, and goes on from there.
    const other = await newPhone();
    await toFirstFile(other);
    await opened(other, path, 'A back-up');
    await other.key('Bring it in');
    await heading(other, 'Brought in');
    await toFiles(other);
    expect(readFileSync(await made(other, 'Back up everything'), 'utf8')).toContain('half a machine');
    for (const { watch } of phones) expect(watch.problems).toEqual([]);
  });

  it('of ten thousand records leaves the screen alive', async () => {
    const person = await newPhone();
    const evidence = Array.from({ length: 10_000 }, (_, n) => ({
      id: `e${n}`,
      schema: 1,
      kind: 'event',
      machine: `m${n % 100}`,
      at: n,
      device: 'a',
      body: { kind: 'other' },
    }));
    const { text } = writeDocument({
      kind: 'everything',
      made: '2026-11-27T14:32:00.000Z',
      app: '0',
      records: { evidence },
      earlier: [],
    });
    const path = join(folder, 'many.json');
    writeFileSync(path, text);
    await toFirstFile(person);
    await person.phone.page.evaluate(() => {
      const tasks: number[] = [];
      Object.assign(window, { tasks });
      new PerformanceObserver((list) => tasks.push(...list.getEntries().map((e) => e.duration))).observe({
        entryTypes: ['longtask'],
      });
    });
    await opened(person, path, 'A back-up');
    await person.reads('Things that happened 10000');
    await person.key('Bring it in');
    await heading(person, 'Brought in');
    const tasks = await person.phone.page.evaluate(() => (window as unknown as { tasks: number[] }).tasks);
    // None on a quiet machine; written in one go they took 421 ms.
    expect(Math.max(0, ...tasks)).toBeLessThan(200);
  });
});
