import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults, printedPages } from './support/faults';
import { Phone } from './support/phone';
import { putSaved, readDatabase, readSaved } from './support/saved';
import { enter, takeExample } from './support/screens';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

const heading = (name: string | RegExp): Promise<void> =>
  phone.page.getByRole('heading', { name }).first().waitFor();
const faults = (name: string): Promise<string[]> => pageFaults(phone.page, name);
/** A key of one of the choices on a page, by the name of its group. */
const choose = (group: string | RegExp, name: string | RegExp): Promise<void> =>
  phone.finger.tapOn(
    phone.page
      .getByRole('group', { name: group, exact: typeof group === 'string' })
      .getByRole('button', { name }),
  );
/** A change shows before it is written: a phone killed in between has not got it. */
const onDisk = (store: string, text: string): Promise<void> =>
  expect
    .poll(async () => JSON.stringify((await readDatabase(phone.page)).stores[store]), { timeout: 10_000 })
    .toContain(text);
const again = async (): Promise<void> => {
  await phone.kill();
  await phone.start();
};

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
  await person.place('Machine');
  await person.link('Wiring record');
  await heading('Wiring record');
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('the wiring record', () => {
  it('begins with cautions, and with nothing in it', async () => {
    await person.reads('Before a box is opened Switch off');
    await person.reads('Nothing recorded yet.');
    expect(await faults('wiring, empty')).toEqual([]);
  });

  it('takes a layout, says what is open, and outlives a killed phone', async () => {
    await person.key('Encoder, differential');
    await heading('W1 · Encoder, differential');
    await person.reads('Screen: whether it has one not known.');
    await person.reads('Supply along the cable: length, conductors,');
    await person.reads('Halves of each signal share a twisted pair.');
    await phone.page.getByRole('img', { name: /^X1\.1 to X2\.1: \+5 V, red, twisted pair 1\./ }).waitFor();
    await enter(person, 'Enter: Length', '2.5', 'm');
    // Heron: 1200 lines at 1200 rpm, 24 kHz and 48 kb/s; the guide ends at 1219 m.
    await person.reads('Length at this rate: 2.5 m, up to 1219 m; at 48 kb/s.');
    expect(await faults('wiring, cable')).toEqual([]);
    await person.link(/^A · WH · X1\.3 – X2\.3/);
    await heading('W1 · A');
    await choose('Colour', /^OG/);
    await person.reads('X1.3 – X2.3, orange');
    await onDisk('wiring', '"colour":"OG"');
    await again();
    await heading('W1 · A');
    await person.reads('X1.3 – X2.3, orange');
    expect(await faults('wiring, wire')).toEqual([]);
  });

  it('finds what lands on one end, and two wires on a pin', async () => {
    await choose(/^Goes to/, 'Open end');
    await person.reads('An end lands on no connector.');
    await person.key('Undo');
    await person.seesNot('An end lands on no connector.');
    await phone.finger.tapOn(phone.page.getByRole('link', { name: 'Pin: 3' }).last());
    await person.types('4');
    await person.reads('Two wires on one pin.');
    await person.link('Back to the cable');
    await heading('W1 · Encoder, differential');
    await person.link('Back to the record');
    await person.reads('X2.4 · A, /A');
    await person.reads('By what you recorded; the app saw none of it.');
    expect(await faults('wiring, list')).toEqual([]);
    await person.key('Undo');
    await person.seesNot('Two wires on one pin.');
    // No more pins than the connector has.
    await person.link(/^X2 · Controller, 8 pins/);
    await enter(person, 'Number of pins: 8', '7');
    await person.reads('The connector has no such pin.');
    expect(await faults('wiring, connector')).toEqual([]);
    await person.key('Undo');
  });

  it('takes a screen’s bonds, the supply, and names', async () => {
    await person.link('Back to the record');
    await person.link(/^W1 · Encoder/);
    await choose('Screen', 'Has one');
    for (const at of [/^Screen at X1/, /^Screen at X2/]) await choose(at, 'Clamp');
    await person.reads('Screen recorded as bonded.');
    await person.key('0.25 mm²');
    await enter(person, 'Enter: Supply at its near end', '5');
    await enter(person, 'Enter: Least voltage borne at the far end', '4.75');
    await enter(person, 'Enter: Current drawn', '150', 'mA');
    // 2 × 2.5 m × 0.15 A × 80 Ω/km.
    await person.reads('0.06 V of 0.25 V that may be lost');
    await phone.page.getByLabel('Name').fill('A name that is too long');
    await phone.page.getByLabel('Name').blur();
    await person.reads('No more than 12 signs.');
    await phone.page.getByLabel('Name').fill('Enc');
    await phone.page.getByLabel('Name').blur();
    await heading('Enc · Encoder, differential');
    await phone.page.getByRole('img', { name: /Clamp to Clamp: Screen/ }).waitFor();
    expect(await faults('wiring, cable complete')).toEqual([]);
  });

  it('brings back what was taken out, with no network', async () => {
    await phone.controlled();
    phone.watch.allow(/ERR_CONNECTION_REFUSED|ERR_INTERNET_DISCONNECTED|Failed to load resource/);
    await host.close();
    await phone.page.reload();
    await heading('Enc · Encoder, differential');
    await person.key('Take out Enc');
    await heading('Wiring record');
    await person.seesNot(/^Enc · Encoder/);
    await person.reads('Bring back Enc');
    await person.key('Undo');
    await onDisk('wiring', '"name":"Enc"');
    await again();
    await person.link(/^Enc · Encoder, differential/);
    await person.reads('0.06 V of 0.25 V that may be lost');
    await phone.page.getByRole('img', { name: /A, orange, twisted pair 2/ }).waitFor();
    await person.link('Back to the record');
  });

  it('asks of a stop circuit for closed contacts', async () => {
    await person.key('Stop circuit');
    await person.reads('Stop button: which contacts not known.');
    await choose(/^Contacts while/, 'Open');
    await person.reads('Open contacts: a broken wire goes unnoticed');
    await choose(/^Contacts while/, 'Closed');
    await person.reads('Recorded: contacts closed');
    await person.link('Back to the record');
  });

  it('is ticked with a meter; a tick lapses when its wire changes', async () => {
    await person.link('Page for the lid, and continuity');
    await person.key(/^X1\.3 – X2\.3 A closed/);
    await phone.page.getByRole('button', { name: /^X1\.3 – X2\.3 A closed ticked/, pressed: true }).waitFor();
    await onDisk('wiring', '"print"');
    expect(await faults('wiring, lid')).toEqual([]);
    await again();
    await phone.page.getByRole('button', { name: /^X1\.3 – X2\.3 A closed ticked/, pressed: true }).waitFor();
    await person.link('Back to the record');
    await person.link(/^Enc · Encoder/);
    await person.link(/^A · OG/);
    await choose('Colour', /^BK/);
    await person.link('Back to the cable');
    await person.link('Back to the record');
    await person.link('Page for the lid, and continuity');
    await phone.page.getByRole('button', { name: /A closed changed since/, pressed: false }).waitFor();
  });

  it('prints on one page of A4, and of Letter, with a cable of each kind', async () => {
    for (const kind of [
      'Encoder, single-ended',
      'Display',
      'Step and direction, single-ended',
      'Step and direction, differential',
    ]) {
      await person.link('Back to the record');
      await person.key(kind);
      await heading(new RegExp(`· ${kind}`));
      await person.link('Back to the record');
      await person.link('Page for the lid, and continuity');
    }
    await phone.page.getByRole('button', { name: /^X11\.4 – X12\.4/ }).waitFor();
    expect(await printedPages(phone.page, 'A4')).toBe(1);
    expect(await printedPages(phone.page, 'Letter')).toBe(1);
    await phone.page.emulateMedia({ media: 'print' });
    await person.seesNot('Print, one page');
    await person.reads('Enc · Encoder, differential');
    await person.reads('STOP 1+');
    await phone.page.emulateMedia({ media: null });
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('a database of version 2', () => {
  it('is brought up to date with all that is in it, and takes a wiring record', async () => {
    const server = await serve(DIST);
    const other = await Phone.open(server.url);
    const owner = new Person(other);
    try {
      const saved = readSaved(2);
      // The icon that a browser asks for beside any page.
      other.watch.allow(/404 \(Not Found\)/);
      await other.page.goto(`${server.url}manifest.webmanifest`);
      await putSaved(other.page, saved);
      await other.page.goto(`${server.url}#/machine/wiring`);
      await owner.reads('Nothing recorded yet.');
      const now = await readDatabase(other.page);
      expect(now.version).toBe(3);
      for (const name of ['machines', 'jobs', 'evidence', 'history', 'settings', 'threads', 'runs'])
        expect(now.stores[name]).toEqual(saved.stores[name]);
      expect(now.stores.wiring).toEqual([]);
      await owner.key('Display');
      await owner.reads('Undo the change of wiring');
      expect((await readDatabase(other.page)).stores.wiring).toHaveLength(1);
      expect(other.watch.problems).toEqual([]);
    } finally {
      await other.close();
      await server.close();
    }
  });
});
