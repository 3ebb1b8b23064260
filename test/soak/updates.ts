import { serve } from '../../.ci/serve.js';
import type { Kill } from './kills';
import type { Life } from './life';
import { carryOut, drawTries } from './tries';

/** How long the new version may take to come and to take over, ms. */
const PATIENCE = 40_000;
const PLACES = ['threads', 'speed', 'checks', 'cut', 'machine', 'settings'];
const VERSION = /Latheside (\S+)/;

/** The version that runs, as the page of settings says it. */
export const versionOf = async ({ page }: Life): Promise<string> => {
  await page.evaluate(() => (location.hash = '#/settings'));
  const line = page.getByText(VERSION).first();
  await line.waitFor();
  return VERSION.exec(await line.innerText())?.[1] ?? '';
};

/** Places that can't be shown. */
export const brokenPlaces = async ({ page }: Life): Promise<string[]> => {
  const broken: string[] = [];
  for (const place of PLACES) {
    await page.evaluate((hash) => (location.hash = `#/${hash}`), place);
    const screen = page.locator(`ls-app .screen`).first();
    await screen.waitFor({ timeout: 10_000 }).catch(() => broken.push(`${place} can't be shown`));
  }
  return broken;
};

export const offlineOf = ({ page }: Life): Promise<string> =>
  page.evaluate(() => {
    const { offline } = document.querySelector('ls-app') as unknown as {
      offline: { offline: string } | null;
    };
    return offline?.offline ?? 'checking';
  });

const lookForUpdate = ({ page }: Life): Promise<unknown> =>
  page.evaluate(() => navigator.serviceWorker.ready.then((r) => r.update()).then(() => undefined));

/** Online, until the version that is served runs and says that it starts offline; or what keeps it from that. */
export const brought = async (life: Life, version: string): Promise<string[]> => {
  const accept = life.page.getByRole('button', { name: 'Change to it now' });
  let now = '';
  for (const end = Date.now() + PATIENCE; Date.now() < end;) {
    await life.settled();
    now = await versionOf(life);
    if (now === version && (await offlineOf(life)) === 'ready-offline') return [];
    if (now !== version && (await accept.isVisible())) {
      const loaded = life.page.waitForEvent('load', { timeout: 20_000 });
      await life.phone.finger.tapOn(accept);
      await loaded;
    } else {
      void lookForUpdate(life).catch(() => undefined);
      await life.page.waitForTimeout(400);
    }
  }
  return [`${version} doesn't come: ${now} runs, ${await offlineOf(life)}`];
};

/** The server is stopped while the browser is dead, and comes back at the same address. */
export const comeBack = async (life: Life, folder: string): Promise<void> => {
  life.host = await serve(folder, { port: life.host.port });
};

/** A newer version arrives while changes are saved; killed while it installs, is accepted, or loads. */
export const updates: Kill = async (life, chance) => {
  const { page, ledger, host } = life;
  const before = await versionOf(life);
  await life.ask(async (app) => {
    if (app.runs.current) await app.endRun('not-measured', '');
    if (app.jobs.cuttingSince !== null) await app.endCut();
  });
  const [folder, version] = life.nextBuild();
  host.folder = folder;
  host.delay = chance.between(0, 15);
  const lanes = drawTries(chance, life.machine, 20);
  for (const { name, n } of lanes.flat()) ledger.trying(name, `${n}`);
  void carryOut(page, lanes).catch(() => undefined);
  void lookForUpdate(life).catch(() => undefined);
  const when = chance.pick(['installing', 'accepting', 'loading'] as const);
  if (when === 'installing') await life.killAfter(chance.between(0, 1500));
  else {
    const accept = page.getByRole('button', { name: 'Change to it now' });
    await accept.waitFor();
    await life.phone.finger.tapOn(accept);
    await life.killAfter(when === 'accepting' ? chance.between(0, 200) : chance.between(200, 1200));
  }
  await host.close();
  const wrong = await life.revive();
  const now = await versionOf(life);
  if (now !== before && now !== version) wrong.push(`${now} runs, neither ${before} nor ${version}`);
  wrong.push(...(await brokenPlaces(life)));
  await comeBack(life, folder);
  await life.page.reload();
  wrong.push(...(await brought(life, version)), ...life.problems());
  return wrong;
};
