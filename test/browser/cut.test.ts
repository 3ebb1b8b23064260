import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { Person } from './support/app';
import { DIST } from './support/builds';
import { pageFaults } from './support/faults';
import { Phone } from './support/phone';
import { answerChecks, chooseM10, enter, takeExample } from './support/screens';
import { stopsTested } from './support/stops';

let host: Awaited<ReturnType<typeof serve>>;
let phone: Phone;
let person: Person;

beforeAll(async () => {
  host = await serve(DIST);
  phone = await Phone.open(host.url);
  person = new Person(phone);
  await takeExample(person);
});
afterAll(async () => {
  await phone?.close();
  await host?.close();
});

describe('what is to be cut', () => {
  it('begins with a thread', async () => {
    await person.place('Cut');
    await person.reads('Nothing to cut yet');
    expect(await pageFaults(phone.page, 'cut, no thread')).toEqual([]);
    await person.link('Choose a thread');
    await phone.page.goBack();
    await person.place('Threads');
    await chooseM10(person);
    await person.place('Cut');
    await person.reads('ISO metric coarse · 6g · right-hand');
    await person.reads('First: complete the plan');
    expect(await pageFaults(phone.page, 'cut, nothing entered')).toEqual([]);
  });

  it('is asked for by keys and on our own pad', async () => {
    await person.link(/^Work and tool/);
    await person.link(/^Material/);
    await person.reads('What is it made of?');
    expect(await pageFaults(phone.page, 'cut, material')).toEqual([]);
    await person.key('Mild steel');
    // ISO 965-2, M10 6g: 9.732 to 9.968.
    await enter(person, /^Blank as measured/, '10.02', 'mm');
    await person.reads('Too much: 10.02 mm Too large: turn it down first');
    await person.reads('Wanted 9.732 – 9.968 mm');
    await enter(person, /^Blank as measured/, '9.85', 'mm');
    await person.reads('OK: 9.85 mm Wanted 9.732 – 9.968 mm');
    await enter(person, /^Length of the thread/, '25', 'mm');
    await person.key('A groove');
    await person.key('Chuck');
    // 25 ÷ 9.85
    await person.reads('Stands out at least 2.5 diameters; held at one end, up to 3 (rule of thumb).');
    await person.key('HSS');
    await person.key('Round');
    await enter(person, /^Size of the nose/, '0.2', 'mm');
    await person.key('Straight in');
    await person.seesNot(/^Top slide set to/);
    await person.key('Modified flank');
    await person.sees('Top slide set to');
    await person.reads('Cross-slide dial reads Diameter');
    expect(await pageFaults(phone.page, 'cut, work and tool')).toEqual([]);
    await person.link('Back to the cut');
    await person.reads('Work and tool Mild steel 25 mm long · chuck · HSS · Round 0.2 mm');
  });

  it('can’t begin before plan, speed and checks are there', async () => {
    await person.reads('Stopping room ? Not known Highest for this job not known');
    await person.reads('Plan of passes 14 passes Modified flank, top slide at 29.5°');
    await person.reads('Begin the cut First: set the speed');
    expect(await phone.page.getByRole('button', { name: /^Begin the cut/ }).count()).toBe(0);
    expect(await pageFaults(phone.page, 'cut, work entered')).toEqual([]);
  });

  it('names the other work that a job is, with its figures', async () => {
    await person.link('Other work');
    await person.reads('Other work A thread with a relief plunged first');
    await person.link('Back to the cut');
    await person.link(/^Work and tool/);
    await person.key('The open end');
    await person.link('Other work: what differs');
    await person.reads('An outside right-hand thread of one start: nothing here is asked of it.');
    await person.link('Back to the cut');
    await person.link(/^Work and tool/);
    await person.key('A groove');
    await person.place('Threads');
    await person.key('Left-hand');
    await person.key('Internal');
    await person.place('Cut');
    await person.link('Other work');
    // An inside groove of ISO 68-1 is 3/4 P wide at the bore; 0.5 mm over it.
    await person.reads('Other work A left-hand thread Groove to start in, at least 1.63 mm');
    // The bore isn't measured; 8.376 is the basic minor diameter of M10, ISO 724: less 1 mm.
    await person.reads('Point to back of bar, at most 7.38 mm');
    // 25 + 4 · 1.5 + 2: thread, run-out by GB/T 3, mouth.
    await person.reads('Bar reach, at least 33.0 mm');
    // Heron's chuck is screwed on.
    await person.reads(
      'Cutting away from the chuck, spindle reversed You entered that the chuck is screwed on.',
    );
    await person.seesNot('Front tool upside down');
    expect(await pageFaults(phone.page, 'cut, other work')).toEqual([]);
  });

  it('leaves nothing of the work when another thread is chosen, and brings it back undone', async () => {
    await person.place('Threads');
    await person.link('Another thread');
    await person.link('ISO metric coarse');
    await person.key('M8');
    await person.place('Cut');
    await person.reads('Mild steel chuck · HSS · Round 0.2 mm');
    await person.place('Threads');
    await person.link('Another thread');
    await person.link('ISO metric coarse');
    await person.key('M12');
    await person.sees('Back to the thread before');
    await person.key('Undo');
    await person.key('Undo');
    await person.place('Cut');
    await person.reads('Mild steel 25 mm long · chuck · HSS · Round 0.2 mm');
    expect(phone.watch.problems).toEqual([]);
  });
});

describe('from blank to gauge, with no network', () => {
  it(
    'is planned, checked, begun, cut through a dead battery, gauged and recorded',
    { timeout: 300_000 },
    async () => {
      const other = await Phone.open(host.url);
      const own = new Person(other);
      try {
        await other.controlled();
        await takeExample(own);
        await stopsTested(own);
        await own.place('Machine');
        await own.link('Settings, cautions and log');
        await own.sees('Ready offline');
        other.watch.allow(/ERR_CONNECTION_REFUSED|Failed to load resource/);
        await host.close();
        await own.place('Threads');
        await chooseM10(own);

        // The work and the tool.
        await own.place('Cut');
        await own.link(/^Work and tool/);
        await own.link(/^Material/);
        await own.key('Mild steel');
        await enter(own, /^Blank as measured/, '9.85', 'mm');
        await enter(own, /^Length of the thread/, '25', 'mm');
        for (const key of ['The open end', 'Chuck and centre', 'HSS', 'Round', 'Straight in'])
          await own.key(key);
        await enter(own, /^Size of the nose/, '0.2', 'mm');
        await own.link(/^Speed set/);
        await enter(own, 'Enter stopping room', '4', 'mm');
        await own.key(/^160/);
        await own.reads('OK at 160 rpm');

        // The checks, and only then the cut.
        await own.place('Cut');
        await own.reads('Begin the cut First: the checks that are left');
        await own.link(/^Begin the cut/);
        await answerChecks(own, /^All checks recorded/);
        await own.link('To the cut');
        await own.reads('Checks All recorded');
        const [, planned] = /Plan of passes (\d+) passes/.exec(await own.words()) ?? [];
        const cuts = Number(planned);
        expect(cuts).toBeGreaterThan(5);
        await own.key('Begin the cut');
        await own.sees(`Cut 1 of ${cuts}`);

        // Pass by pass; in the middle the phone dies, and asks when it is back.
        const settings: number[] = [];
        for (let n = 1; n <= cuts; n += 1) {
          await own.sees(`Cut ${n} of ${cuts}`);
          if (n === 5) {
            await other.kill();
            await other.start();
            await own.reads('Was cut 5 taken?');
            await own.key(/^NO/);
            await own.sees(`Cut 5 of ${cuts}`);
          }
          if (n === 3) {
            await own.place('Cut');
            await own.reads('A cut is under way');
            await own.link(`Go on with cut 3 of ${cuts}`);
            await other.page.getByRole('button', { name: /^TAKEN/ }).waitFor();
          }
          const [, divisions] = /(\d+) divisions/.exec(await own.words()) ?? [];
          settings.push(Number(divisions));
          await own.key(/^TAKEN/);
        }
        await own.reads(`All ${cuts} cuts are taken`);

        // (9.85 − 8.928) ÷ 2 + 0.433013 · 1.5 − 0.2 = 0.9105 mm deep: from the blank to the middle of ISO 965's 8.862 and 8.994
        // with a nose of 0.2; of Heron's 0.02 mm a division 45, the 46th would be past it. Spring passes stay there.
        const last = settings.indexOf(45);
        expect(settings.slice(0, last + 1)).toEqual([...new Set(settings)].sort((a, b) => a - b));
        expect(settings.slice(last).every((d) => d === 45)).toBe(true);

        // The gauge, and the record.
        await other.finger.tapOn(other.page.getByRole('link', { name: 'Measure now' }).first());
        await own.key('Gauge or nut');
        await own.key('Go and no-go');
        await own.key('Goes freely');
        await own.key('Binds within 2 turns');
        await own.key(/^Finished/);
        await own.reads('M10×1.5 6g Gauge or mating part fits');
        await other.finger.tapOn(other.page.locator('ls-bar').getByRole('link', { name: 'Cut' }));
        // The run is over: another cut asks for its own start.
        await own.reads('Begin the cut First: the checks that are left');
        await own.link('Records');
        await own.reads('M10×1.5 6g');
        expect(other.watch.problems).toEqual([]);
      } finally {
        await other.close();
      }
    },
  );
});
