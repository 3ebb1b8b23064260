import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { serve } from '../../.ci/serve.js';
import { PAGE_POLICY } from '../../.ci/policy.js';
import { DIST } from '../browser/support/builds';
import { atTheLathe } from './journeys/at-the-lathe';
import { kept } from './journeys/kept';
import { offline } from './journeys/offline';
import type { Journey } from './journeys/journey';
import { ABILITIES, gapOf, type Ability } from './support/gaps';
import type { Browser, Engine } from './support/engine';
import { PROBES } from './support/probes';
import { Visitor } from './support/visitor';

/** Where browsers report what breaks the policy, on the page or in a worker. */
const REPORTS = '/breaches';
const JOURNEYS: readonly Journey[] = [...offline, ...atTheLathe, ...kept];

type Host = Awaited<ReturnType<typeof serve>>;

const hostApp = (): Promise<Host> =>
  serve(DIST, { headers: { 'Content-Security-Policy': `${PAGE_POLICY}; report-uri ${REPORTS}` } });

/** What the app itself wrote down as gone wrong. */
const troubles = (browser: Browser): Promise<string> =>
  browser.page.evaluate(() => localStorage.getItem('latheside.log') ?? '', null);

/** The same journeys in any engine, each in a browser that has nothing stored yet. */
export const journeysIn = (engine: Engine): void => {
  let hosts: Host[];
  let browsers: Browser[];

  const open = async (host: Host): Promise<Browser> => {
    const browser = await engine.open(host.url);
    browsers.push(browser);
    return browser;
  };

  beforeEach(async () => {
    browsers = [];
    hosts = [await hostApp()];
  });
  afterEach(async () => {
    for (const browser of browsers) await browser.close();
    for (const host of hosts) await host.close();
  });

  describe(engine.name, () => {
    for (const { name, needs, run } of JOURNEYS) {
      it(name, async (test) => {
        const gap = needs && gapOf(engine.name, needs);
        if (gap) test.skip(`${engine.name}: ${gap}`);
        const [host] = hosts as [Host];
        const browser = await open(host);
        await run({
          host,
          browser,
          visitor: new Visitor(browser.page, engine.name),
          newer: inject('newer'),
          visits: (tab) => new Visitor(tab, engine.name),
          another: () => open(host),
        });
        for (const one of browsers) {
          expect(one.problems).toEqual([]);
          expect(await troubles(one)).toBe('');
        }
        expect(host.requests.filter((path) => path === REPORTS)).toEqual([]);
      });
    }

    it('tells of a breach of the policy', async () => {
      const [host] = hosts as [Host];
      const browser = await open(host);
      await browser.page.evaluate(() => {
        const picture = new Image();
        picture.src = 'http://127.0.0.1:9/planted.png';
      }, null);
      await expect.poll(() => host.requests).toContain(REPORTS);
    });

    const can = (ability: Ability): boolean => gapOf(engine.name, ability) === null;
    const gaps = ABILITIES.filter((ability) => !can(ability)).map((ability) => gapOf(engine.name, ability));
    it(`what its automation can’t do: ${gaps.join('; ') || 'nothing that is asked'}`, async () => {
      const [host] = hosts as [Host];
      const browser = await open(host);
      const found: [Ability, boolean][] = [];
      for (const ability of ABILITIES) found.push([ability, await PROBES[ability](browser, host.url)]);
      expect(found).toEqual(ABILITIES.map((ability) => [ability, can(ability)]));
    });
  });
};
