import { expect } from 'vitest';
import { enterProfileA } from '../../browser/support/profile-a';
import { beginRun, takenNow } from '../../browser/support/run';
import { chooseM10, takeExample } from '../../browser/support/screens';
import type { Visitor } from '../support/visitor';
import type { Journey } from './journey';

/** Heron with M10 × 1.5 at 160 rpm, and 4 mm to stop in. */
const setUp = async (visitor: Visitor): Promise<void> => {
  await takeExample(visitor);
  await chooseM10(visitor);
  await visitor.link('Use it');
  await visitor.enters('Enter stopping room', '4', 'mm');
  await visitor.key(/^160/);
  await visitor.reads('OK at 160 rpm');
};

/** Runs in the page: whether the way back from a check is on the disk, where it comes a moment after the check. */
const wayBackKept = (): Promise<boolean> =>
  new Promise((resolve) => {
    const asked = indexedDB.open('latheside');
    asked.onsuccess = () => {
      const row = asked.result.transaction('meta').objectStore('meta').get('value/undo');
      row.onsuccess = () => {
        asked.result.close();
        const kept = row.result as { value: { code: string }[] } | undefined;
        resolve(kept?.value.some(({ code }) => code === 'check') ?? false);
      };
    };
  });

/** What a person does with the lathe before and while it turns. Figures are those of the journeys in test/browser. */
export const atTheLathe: readonly Journey[] = [
  {
    name: 'a lathe entered by hand gives exact figures, and is there after a reload',
    async run({ visitor }) {
      await visitor.link('Enter my lathe');
      await visitor.fills('What is it called?', 'Sturdy');
      await visitor.fills('Where does it stand? May stay empty.', 'Back room');
      await visitor.key('Add this machine');
      await enterProfileA(visitor, 'levers stand');
      await visitor.looks('guided entry');
      await visitor.place('Threads');
      await chooseM10(visitor);
      await visitor.reads('375/508');
      await visitor.reads('KEEP THE NUT CLOSED');
      await visitor.tab.reload();
      await visitor.reads('375/508');
      await visitor.place('Machine');
      await visitor.reads('Sturdy');
      await visitor.reads('4096');
    },
  },
  {
    name: 'a thread found by typing, its speed with Why, a check that stands after a reload, undo',
    async run({ visitor }) {
      await takeExample(visitor);
      await visitor.link('Choose a thread');
      await visitor.link('Type a size or pitch');
      for (const key of ['1', 'Over', '4']) await visitor.key(key);
      await visitor.looks('look-up');
      await visitor.key('1/4-20 UNC');
      await visitor.reads('20 tpi');
      await visitor.link('Another thread');
      await visitor.link('ISO metric coarse');
      await visitor.key('M10');
      await visitor.link('Use it');
      await visitor.link('Enter stopping room');
      await visitor.looks('number pad');
      await visitor.types('4', 'mm');
      await visitor.key(/^700/);
      await visitor.reads('Too much at 700 rpm');
      await visitor.key(/^160/);
      await visitor.reads('OK at 160 rpm');
      await visitor.looks('speed');
      await visitor.key(/^Stopping room/);
      await visitor.heads('Stopping room');
      await visitor.looks('why');
      await visitor.key('Close');
      await visitor.place('Checks');
      await visitor.reads('Belts and pulleys tight?');
      await visitor.key('DONE');
      await visitor.reads('Overload protection tried?');
      await expect.poll(() => visitor.tab.evaluate(wayBackKept, null)).toBe(true);
      await visitor.tab.reload();
      await visitor.reads('Overload protection tried?');
      await visitor.key(/^Undo/);
      await visitor.reads('Belts and pulleys tight?');
    },
  },
  {
    name: 'a run opened again in mid-pass asks, another tab only reads, and takes over',
    async run({ visitor, browser, host, visits }) {
      await setUp(visitor);
      await beginRun(visitor.tab, { cross: [46, 80, 106] });
      await visitor.reads('46 divisions 0.92 mm DIAMETER');
      await visitor.looks('pass');
      await visitor.key(/^TAKEN/);
      await visitor.reads('Cut 2 of 3');
      await visitor.tab.reload();
      await visitor.reads('Was cut 2 taken?');
      await visitor.looks('was it taken');
      await visitor.key(/^YES/);
      await visitor.reads('Cut 3 of 3');
      expect(await takenNow(visitor.tab)).toEqual([1, 2]);

      const second = visits(await browser.newTab(`${host.url}#/cut/pass`));
      await second.reads('Another tab takes the passes of this run. Here it can only be read.');
      expect(await second.keys(/^TAKEN/)).toBe(0);
      await second.key('Take passes here');
      await second.reads('Was cut 3 taken?');
      await visitor.tab.front();
      await visitor.reads('Another tab takes the passes of this run.');
      await second.tab.close();
      await visitor.reads('Was cut 3 taken?');
    },
  },
  {
    name: 'long reckonings run in workers: lead error in time, trains of change wheels',
    async run({ visitor }) {
      await setUp(visitor);
      await visitor.link('Lead error along the thread');
      await visitor.key('Run the model');
      await visitor.reads('The class allows 132');
      await visitor.reads('assumed figures are true.');
      await visitor.looks('lead error');
      await visitor.place('Machine');
      await visitor.link('Another machine');
      await visitor.key(/^Dunlin/);
      await visitor.heads('No thread chosen');
      await chooseM10(visitor);
      await visitor.link('Change gears');
      await visitor.reads('0.0375 mm in 300 mm too long (125.0 ppm)');
      await visitor.looks('trains');
    },
  },
];
