import { expect } from 'vitest';
import { chooseM10, takeExample } from '../../browser/support/screens';
import type { Journey, Stage } from './journey';

const readyOffline = async ({ visitor }: Stage): Promise<void> => {
  await visitor.reads('Ready offline');
  await visitor.tab.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller) return;
    await new Promise((done) =>
      navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }),
    );
  }, null);
};
const inUse = async (stage: Stage): Promise<void> => {
  await readyOffline(stage);
  await takeExample(stage.visitor);
  await chooseM10(stage.visitor);
  await stage.visitor.reads('16.93 tpi');
};

/** Runs in the page: how the first of these is underlined; a row whose name has a dotted line tells more when it is touched. */
const lineUnder = (selector: string): string => {
  const look = (root: ParentNode): Element | null => {
    const below = (e: Element): Element | null => e.shadowRoot && look(e.shadowRoot);
    return (
      root.querySelector(selector) ??
      [...root.querySelectorAll('*')].map(below).find((e) => e !== null) ??
      null
    );
  };
  const row = look(document);
  if (!row) return 'none there';
  const { textDecorationLine, textDecorationStyle } = getComputedStyle(row);
  return `${textDecorationLine} ${textDecorationStyle}`;
};

/** What rests on the worker, its files, and locks between pages. */
export const offline: readonly Journey[] = [
  {
    name: 'says that it is ready offline, and with the server gone starts at any address with every place',
    async run(stage) {
      const { visitor, host } = stage;
      await readyOffline(stage);
      await visitor.looks('first visit');
      await inUse(stage);
      await host.close();
      await visitor.tab.reload();
      await visitor.reads('16.93 tpi');
      for (const [place, text] of [
        ['Speed', 'The drive keeps up to'],
        ['Checks', 'Belts and pulleys tight?'],
        ['Cut', 'Work and tool'],
        ['Machine', 'Counts per spindle rev'],
        ['Threads', '16.93 tpi'],
      ] as const) {
        await visitor.place(place);
        await visitor.reads(text);
        await visitor.looks(place);
      }
      expect(await visitor.tab.evaluate(lineUnder, '.why .label')).toBe('underline dotted');
      await visitor.tab.goto(`${host.url}some/old/bookmark`);
      await visitor.reads('16.93 tpi');
    },
  },
  {
    name: 'killed with the server gone, opens with all that was entered',
    needs: 'profile',
    async run(stage) {
      const { visitor, host, browser } = stage;
      await inUse(stage);
      await visitor.place('Checks');
      await visitor.reads('Belts and pulleys tight?');
      await visitor.key('DONE');
      await visitor.reads('Overload protection tried?');
      await host.close();
      await browser.restart(host.url);
      const again = stage.visits(browser.page);
      await again.reads('Overload protection tried?');
      await again.place('Threads');
      await again.reads('16.93 tpi');
    },
  },
  {
    name: 'a newer version is offered, refused while cutting, and accepted comes with everything kept',
    async run(stage) {
      const { visitor, host } = stage;
      await inUse(stage);
      const cutting = await stage.browser.newTab(host.url);
      await cutting.evaluate(() => {
        void navigator.locks.request('cutting', { mode: 'shared' }, () => new Promise(() => undefined));
      }, null);
      await visitor.tab.front();
      host.folder = stage.newer;
      await visitor.tab.evaluate(() => {
        void navigator.serviceWorker.ready.then((r) => r.update());
      }, null);
      await visitor.reads('A newer version is here');
      await visitor.key('Change to it now');
      await visitor.reads('Not while cutting');
      await visitor.looks('newer version, not while cutting');
      await cutting.close();
      await visitor.tab.front();
      await visitor.key('Change to it now');
      await visitor.readsNot('A newer version is here');
      await visitor.place('Machine');
      await visitor.link('Settings, cautions and log');
      await visitor.reads('Latheside 9.9.9');
      await visitor.place('Threads');
      await visitor.reads('16.93 tpi');
    },
  },
];
