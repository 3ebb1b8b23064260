import { appendFileSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { scan } from './support/axe';
import { DIST } from './support/builds';
import { Phone } from './support/phone';
import { readDatabase, type SavedDatabase } from './support/saved';
import { chooseM10, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeEach(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
});
afterEach(async () => {
  await phone.close();
  await host.close();
});

const setPitch = async (key: string): Promise<void> => {
  await person.place('Machine');
  await person.link(/^Leadscrew pitch/);
  await person.key(key);
  await person.reads(`Leadscrew pitch ${key}`);
};

/** The copy's own count of changes, and whether it went on without the database. */
const head = (): Promise<{ counter: number; ahead: boolean } | null> =>
  phone.page.evaluate(async () => {
    const copy = await caches.open('latheside-mirror');
    const found = await copy.match(`${location.origin}/latheside-mirror/head`);
    return found ? ((await found.json()) as { counter: number; ahead: boolean }) : null;
  });
const lastChange = (): Promise<number> =>
  phone.page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const asked = indexedDB.open('latheside');
        asked.onsuccess = () => {
          const row = asked.result.transaction('meta').objectStore('meta').get('device');
          row.onsuccess = () => {
            asked.result.close();
            resolve((row.result as { value: { counter: number } }).value.counter);
          };
        };
      }),
  );
/** Waits until the copy holds everything that the database holds. */
const copied = (): Promise<void> =>
  expect.poll(async () => (await head())?.counter === (await lastChange()), { timeout: 10_000 }).toBe(true);

/** What the copy's parts hold of machines. */
const copyOfMachines = (): Promise<string> =>
  phone.page.evaluate(async () => {
    const copy = await caches.open('latheside-mirror');
    const mine = (await copy.keys()).filter(({ url }) => url.includes('/machines/'));
    return (await Promise.all(mine.map(async (r) => (await copy.match(r))?.text()))).join('\n');
  });

/** Changes that no part of the copy holds yet. */
const notesLeft = (): Promise<number> =>
  phone.page.evaluate(async () => {
    const copy = await caches.open('latheside-mirror');
    return (await copy.keys()).filter(({ url }) => url.includes('/notes/')).length;
  });

const inUse = async (): Promise<void> => {
  await takeExample(person);
  await chooseM10(person);
  await setPitch('4 mm');
  await person.place('Checks');
  await person.reads('Belts and pulleys tight?');
  await person.key('DONE');
  await person.seesNot('Belts and pulleys tight?');
};
const isAsItWas = async (): Promise<void> => {
  await person.place('Machine');
  await person.reads('Leadscrew pitch 4 mm');
  await person.place('Threads');
  await person.reads('M10');
  await person.place('Checks');
  await person.link('All checks');
  await phone.page.getByRole('link', { name: /^Belts and pulleys tight\?\s+Done/ }).waitFor();
};

describe('a database that the browser lost', () => {
  it('is filled again from the copy beside it, and that is said until it was read', async () => {
    await inUse();
    await copied();
    await phone.quit();
    rmSync(phone.databaseFolder, { recursive: true });
    await phone.start();
    await person.reads('The database on this phone was lost. Its copy of');
    expect(await scan(phone.page)).toEqual([]);
    await isAsItWas();
    await phone.kill();
    await phone.start();
    await person.reads('was lost');
    await person.key('Seen');
    await person.seesNot(/was lost/);
    await isAsItWas();
    expect(phone.watch.problems).toEqual([]);
  });

  it('with its last writes torn on the disk, too', async () => {
    await inUse();
    await copied();
    await phone.quit();
    // What lies in the log and the tables is turned over, bit by bit; the browser makes a new database of it without a word.
    const files = readdirSync(phone.databaseFolder).filter((f) => /\.(log|ldb)$/.test(f));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const path = join(phone.databaseFolder, file);
      writeFileSync(
        path,
        readFileSync(path).map((byte) => byte ^ 0xff),
      );
    }
    await phone.start();
    await person.reads('was put back');
    await isAsItWas();
    expect(phone.watch.problems).toEqual([]);
  });
});

/** Sets the screw's pitch and kills the browser as soon as the app says that it is saved; the copy's parts take their time. */
const killedAt = async (pitch: bigint): Promise<void> => {
  await phone.page.evaluate((mm) => {
    const put = Reflect.get(Cache.prototype, 'put');
    Cache.prototype.put = function (request, response) {
      const slow = !(request as string).includes('/notes/');
      return new Promise((resolve) => setTimeout(resolve, slow ? 60_000 : 0)).then(() =>
        put.call(this, request, response),
      );
    };
    const { app } = document.querySelector('ls-app') as unknown as {
      app: { setField(field: string, value: unknown): Promise<void> };
    };
    return app.setField('screwPitch', { value: { n: mm, d: 1n }, unit: 'mm' });
  }, pitch);
  await phone.kill();
};

describe('a write that a kill tore', () => {
  it('costs nothing that was acknowledged, though the browser makes a new database at the start after the next', async () => {
    await inUse();
    await copied();
    await phone.kill();
    // The head of a record of LevelDB's log, 456 bytes to come, and none of them. The next start passes over it and goes on
    // writing behind it; to the one after that the log is broken in the middle.
    const log = readdirSync(phone.databaseFolder).find((f) => f.endsWith('.log')) ?? '';
    appendFileSync(join(phone.databaseFolder, log), Buffer.from([1, 2, 3, 4, 200, 1, 1]));
    await phone.start();
    await isAsItWas();
    await person.seesNot(/was lost/);
    await copied();
    await killedAt(6n);
    await phone.start();
    await person.reads('was put back');
    await person.place('Machine');
    await person.reads('Leadscrew pitch 6 mm');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a database that can’t be opened', () => {
  it('leaves the copy to work with, which keeps what is entered; once it can be had it is given that', async () => {
    await inUse();
    await copied();
    await phone.quit();
    expect(existsSync(join(phone.databaseFolder, 'CURRENT'))).toBe(true);
    // A folder in the place of the file: the store can neither be opened nor made anew.
    rmSync(phone.databaseFolder, { recursive: true });
    writeFileSync(phone.databaseFolder, 'no folder');
    await phone.start();
    await person.reads('The database on this phone can’t be opened.');
    expect(await scan(phone.page)).toEqual([]);
    await isAsItWas();
    await setPitch('6 mm');
    await expect.poll(copyOfMachines, { timeout: 10_000 }).toMatch(/"screwPitch":\{"n":"6"/);
    expect((await head())?.ahead).toBe(true);
    await phone.quit();
    await phone.start();
    await person.reads('Leadscrew pitch 6 mm');
    await phone.quit();

    rmSync(phone.databaseFolder);
    await phone.start();
    await person.reads('was put back');
    await person.reads('Leadscrew pitch 6 mm');
    await setPitch('2 mm');
    await copied();
    await expect.poll(async () => (await head())?.ahead, { timeout: 10_000 }).toBe(false);
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a copy that fell behind', () => {
  /** The database is lost, and what comes back of it is looked at. */
  const restored = async (): Promise<SavedDatabase> => {
    await phone.quit();
    rmSync(phone.databaseFolder, { recursive: true });
    await phone.start();
    await person.reads('was put back');
    return readDatabase(phone.page);
  };

  it('by a reading or an answer taken back catches up at the next start', async () => {
    await inUse();
    await copied();
    await phone.page.evaluate(async () => {
      // Killed before the copy followed.
      Cache.prototype.put = () => new Promise(() => undefined);
      const { app } = document.querySelector('ls-app') as unknown as {
        app: {
          readings: { set(key: string, value: unknown): Promise<void> };
          records: { checks: { id: string }[]; takeBack(id: string): Promise<void> };
        };
      };
      await app.readings.set('dummy.rpm', { value: { n: 77n, d: 1n }, unit: 'rpm' });
      await app.records.takeBack(app.records.checks[0]?.id ?? '');
    });
    await phone.kill();
    await phone.start();
    await person.reads('Heron');
    await copied();
    const { stores } = await restored();
    expect(JSON.stringify(stores.meta)).toContain('77');
    expect(JSON.stringify(stores.evidence)).toContain('takenBack');
    expect(phone.watch.problems).toEqual([]);
  });

  it('with a note left of an answer that was taken back after it, holds it as taken back', async () => {
    await inUse();
    await copied();
    await phone.page.evaluate(() => {
      const put = Reflect.get(Cache.prototype, 'put');
      Cache.prototype.put = function (request, response) {
        return (request as string).includes('/notes/')
          ? put.call(this, request, response)
          : new Promise(() => undefined);
      };
    });
    const question = await phone.page.locator('ls-checks h1').innerText();
    await person.key('DONE');
    await person.seesNot(question);
    await phone.page.evaluate(async () => {
      Cache.prototype.put = () => new Promise(() => undefined);
      const { app } = document.querySelector('ls-app') as unknown as {
        app: { records: { checks: { id: string }[]; takeBack(id: string): Promise<void> } };
      };
      await app.records.takeBack(app.records.checks.at(-1)?.id ?? '');
      // A part that was being written when the browser was killed is gone as a whole.
      const copy = await caches.open('latheside-mirror');
      const machines = (await copy.keys()).filter(({ url }) => url.includes('/machines/'));
      for (const request of machines) await copy.delete(request);
    });
    await phone.kill();
    await phone.start();
    await person.reads(question);
    await copied();
    await expect.poll(copyOfMachines, { timeout: 10_000 }).toContain('Heron');
    await expect.poll(notesLeft, { timeout: 10_000 }).toBe(0);
    const { stores } = await restored();
    expect(JSON.stringify(stores.evidence)).toContain('takenBack');
    expect(phone.watch.problems).toEqual([]);
  });

  it('since there was no room for it, takes the change with the next one', async () => {
    await inUse();
    await copied();
    await phone.page.evaluate(() => {
      const put = Reflect.get(Cache.prototype, 'put');
      Cache.prototype.put = () => Promise.reject(new DOMException('', 'QuotaExceededError'));
      Object.assign(window, { room: () => (Cache.prototype.put = put) });
    });
    await setPitch('6 mm');
    await phone.page.evaluate(() => (window as unknown as { room: () => void }).room());
    await person.place('Checks');
    const question = await phone.page.locator('ls-checks h1').innerText();
    await person.key('DONE');
    await person.seesNot(question);
    await copied();
    await restored();
    await person.place('Machine');
    await person.reads('Leadscrew pitch 6 mm');
    expect(phone.watch.problems).toEqual([]);
  });

  it('catches up at the next start', async () => {
    await inUse();
    await copied();
    await phone.page.evaluate(async () => {
      const copy = await caches.open('latheside-mirror');
      for (const request of await copy.keys())
        if (request.url.includes('/machines/')) await copy.delete(request);
      // Taken out of the database as the phone was killed; it lies in the part that its name gives (FNV-1a).
      const gone = {
        id: 'gone',
        schema: 1,
        kind: 'event',
        machine: 'm',
        at: 1,
        device: 'd',
        body: { kind: 'belt' },
      };
      await copy.put(
        `${location.origin}/latheside-mirror/evidence/14`,
        new Response(JSON.stringify({ gone })),
      );
      const address = `${location.origin}/latheside-mirror/head`;
      const old = (await (await copy.match(address))?.json()) as object;
      await copy.put(address, new Response(JSON.stringify({ ...old, counter: 1 })));
    });
    await phone.kill();
    await phone.start();
    await person.reads('Heron');
    await copied();
    await phone.quit();
    rmSync(phone.databaseFolder, { recursive: true });
    await phone.start();
    await person.reads('was put back');
    await isAsItWas();
    expect(JSON.stringify(await readDatabase(phone.page))).not.toContain('gone');
    expect(phone.watch.problems).toEqual([]);
  });
});
