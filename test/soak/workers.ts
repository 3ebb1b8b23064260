import type { Build } from './life';
import { Phone } from '../browser/support/phone';
import { serve } from '../../.ci/serve.js';
import type { Chance } from './chance';
import type { Kill } from './kills';
import { brokenPlaces, brought, comeBack, versionOf } from './updates';

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** What the first page says of starting offline. */
const promise = async (phone: Phone): Promise<string> =>
  (await phone.page.locator('ls-first [role=status]').innerText()).trim();

/** Stopped while it fetches the files of a first visit: the app never says more than is true, and comes right by itself. */
export const firstVisit = async ([folder]: Build, chance: Chance): Promise<string[]> => {
  let host = await serve(folder);
  host.delay = chance.between(0, 20);
  const phone = await Phone.open(host.url);
  phone.watch.allow(/Failed to load resource|ERR_|404|bad-precaching|ServiceWorker/);
  const wrong: string[] = [];
  try {
    await wait(chance.between(0, 900));
    await phone.stopWorkers();
    await wait(chance.between(300, 3000));
    const said = await promise(phone);
    await host.close();
    // Another page first, or the page that runs would be shown from memory.
    await phone.page.goto('about:blank');
    await phone.page.goto(host.url).catch(() => undefined);
    const first = phone.page.locator('ls-first');
    const starts = await first.waitFor({ timeout: 5_000 }).then(
      () => true,
      () => false,
    );
    if (said === 'Ready offline' && !starts) wrong.push('it said that it starts offline, and does not');
    host = await serve(folder, { port: host.port });
    await phone.page.goto(host.url);
    await phone.page
      .getByText('Ready offline')
      .waitFor({ timeout: 30_000 })
      .catch(() => wrong.push('it never gets ready'));
    await host.close();
    await phone.page.reload();
    await phone.page
      .locator('ls-first')
      .waitFor({ timeout: 10_000 })
      .catch(() => wrong.push('it does not start offline'));
    wrong.push(...phone.watch.problems);
  } finally {
    await phone.close();
    await host.close();
  }
  return wrong;
};

/** Stopped while it fetches the files of an update: the version before starts offline, and the new one comes later. */
export const halfUpdate: Kill = async (life, chance) => {
  const before = await versionOf(life);
  const [folder, version] = life.nextBuild();
  life.host.folder = folder;
  life.host.delay = chance.between(0, 20);
  void life.page.evaluate(() => navigator.serviceWorker.ready.then((r) => r.update())).catch(() => undefined);
  await wait(chance.between(0, 900));
  await life.phone.stopWorkers();
  await wait(chance.between(0, 500));
  await life.host.close();
  await life.page.reload();
  await life.settled();
  const now = await versionOf(life);
  const wrong = now === before ? [] : [`${now} runs, though nobody accepted it`];
  wrong.push(...(await brokenPlaces(life)), ...(await life.notices()));
  await comeBack(life, folder);
  await life.page.reload();
  wrong.push(...(await brought(life, version)), ...life.problems());
  return wrong;
};
