import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { makeShelf } from '../../.ci/shelf.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { setPitch, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let folder: string;
const phones: Phone[] = [];

const newPhone = async (): Promise<Person> => {
  const phone = await Phone.open(host.url);
  phones.push(phone);
  await phone.controlled();
  return new Person(phone);
};

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'latheside-club-'));
  cpSync(DIST, folder, { recursive: true });
  host = await serve(folder);
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

/** The machine in use goes onto the shelf, as the club's own phone would put it there. */
const shelve = async (person: Person): Promise<void> => {
  await toFiles(person);
  const saved = person.phone.page.waitForEvent('download');
  await person.key('Share Heron');
  await (await saved).saveAs(join(folder, 'shelf', 'heron.json'));
  await person.sees('Saved among this phone’s downloads.');
  makeShelf(join(folder, 'shelf'));
};

const shelf = (person: Person): Promise<void> => heading(person, 'Shelf');
const faults = (person: Person, name: string): Promise<string[]> => pageFaults(person.phone.page, name);

/** Starts the app again, and waits until it has looked at the shelf. */
const again = async (person: Person): Promise<void> => {
  await person.phone.page.reload();
  await toFiles(person);
};

describe('the shelf of machines beside the app', () => {
  it('is kept for when there is no network; a machine is brought in from it and held against it by version', async () => {
    const club = await newPhone();
    await takeExample(club);
    await shelve(club);

    const guest = await newPhone();
    await guest.link('Open a file');
    await guest.link('Shelf: 1 machine');
    await shelf(guest);
    await phones[1]?.context.setOffline(true);
    await host.close();
    await guest.phone.page.reload();
    await shelf(guest);
    await guest.reads('Heron Not on this phone');
    await guest.reads('As it was');
    expect(await faults(guest, 'shelf, no network')).toEqual([]);
    await guest.key('Look again');
    await guest.reads('The shelf can’t be reached now. It is shown as it was kept.');
    await guest.key(/^Heron/);
    await heading(guest, 'A machine from elsewhere');
    await guest.key('Bring it in');
    await heading(guest, 'Brought in');
    await guest.key('Use Heron');
    await toFiles(guest);
    await guest.link('Shelf: 1 machine');
    await guest.reads('Heron The same as here');

    // The guest goes on: what lies on the shelf is older.
    await setPitch(guest, '4 mm');
    await toFiles(guest);
    await guest.link('Shelf: 1 machine');
    await guest.reads('Heron Older than here');
    const problems = phones[1]?.watch.problems.filter(
      (p) => !/ERR_(CONNECTION_REFUSED|INTERNET_DISCONNECTED)/.test(p),
    );
    expect(problems).toEqual([]);
  });

  it('that changed is fetched again; what both changed is put together, what the host no longer has is gone', async () => {
    const club = await newPhone();
    await takeExample(club);
    await shelve(club);
    const guest = await newPhone();
    await guest.link('Open a file');
    await guest.link('Shelf: 1 machine');
    await guest.key(/^Heron/);
    await guest.key('Bring it in');
    await guest.key('Use Heron');

    await setPitch(club, '4 mm');
    await shelve(club);
    await again(guest);
    await guest.link('Shelf: 1 machine');
    await guest.key('Look again');
    await guest.reads('Heron Changed on the shelf');
    await guest.key(/^Heron/);
    await guest.reads('Brought up to date');
    await guest.key('Bring it in');
    await guest.key('Use Heron');
    await guest.reads('Leadscrew pitch 4 mm');

    rmSync(join(folder, 'shelf', 'heron.json'));
    makeShelf(join(folder, 'shelf'));
    await toFiles(guest);
    await guest.link('Shelf: 1 machine');
    await guest.key('Look again');
    await guest.reads('Nothing lies on the shelf of this copy of the app.');
    expect(await faults(guest, 'shelf, empty')).toEqual([]);
    expect(phones.map((p) => p.watch.problems)).toEqual([[], []]);
  });
});
