import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeDocument, type CarriedRow } from '../../src/core/carry';
import { beginRun, takeOnAndOn, takenNow } from '../browser/support/run';
import { readDatabase } from '../browser/support/saved';
import type { Chance } from './chance';
import type { Life } from './life';
import { carryOut, drawTries, readName } from './tries';

/** What is under way when the browser is killed. Each gives what was wrong afterwards, one line each. */
export type Kill = (life: Life, chance: Chance) => Promise<string[]>;

/** What the page was asked for when the browser was killed is never answered. */
const unanswered = (work: Promise<unknown>): void => void work.catch(() => undefined);

/** Changes in up to four stores at once. */
export const saves: Kill = async (life, chance) => {
  const lanes = drawTries(chance, life.machine, 60);
  for (const { name, n } of lanes.flat()) life.ledger.trying(name, `${n}`);
  unanswered(carryOut(life.page, lanes));
  await life.killAfter(chance.between(10, 1200));
  return life.revive();
};

/** Settings of a run by hand, divisions of the cross-slide; more passes than a thread has. */
const PASSES = Array.from({ length: 60 }, (_, n) => 40 + n);

/** Says in node which cut the screen stands at, as soon as it does. */
const watchCuts = (life: Life, run: string): Promise<void> =>
  life.page.evaluate((id) => {
    let last = 0;
    setInterval(() => {
      const screen = document.querySelector('ls-app')?.shadowRoot?.querySelector('ls-cut-pass')?.shadowRoot;
      const cut = Number(
        /^Cut (\d+) of/.exec(screen?.querySelector('.where h1')?.textContent?.trim() ?? '')?.[1] ?? 0,
      );
      if (cut > last && cut > 1)
        void (window as unknown as { soakSaid: (name: string, value: string) => void }).soakSaid(
          `run ${id}`,
          `${cut - 1}`,
        );
      last = Math.max(last, cut);
    }, 4);
  }, run);

const currentRun = (life: Life): Promise<{ id: string; taken: number } | null> =>
  life.ask(({ runs: { current } }) => current && { id: current.id, taken: current.run.taken.length });

/** A run whose passes are taken by touch, or as fast as the disk lets it. What was pressed last is asked, not assumed. */
export const passes: Kill = async (life, chance) => {
  const { page, ledger } = life;
  if (((await currentRun(life))?.taken ?? 0) > PASSES.length - 20) {
    await life.ask((app) => app.endRun('not-measured', ''));
  }
  if (!(await currentRun(life))) await beginRun(page, { cross: PASSES });
  await page.evaluate(() => (location.hash = '#/cut/pass'));
  const run = await currentRun(life);
  if (!run) return ['no run is open'];
  for (let n = run.taken; n <= PASSES.length; n += 1) ledger.trying(`run ${run.id}`, `${n}`);
  await watchCuts(life, run.id);
  const asked = page.getByRole('button', { name: chance.next() < 0.5 ? /^YES/ : /^NO/ });
  if (await life.ask((app) => app.runs.asks)) {
    await asked.waitFor();
    await life.phone.finger.tapOn(asked);
  }
  const taken = page.getByRole('button', { name: /^TAKEN/ });
  await taken.waitFor();
  await page.waitForFunction(() => {
    const { app } = document.querySelector('ls-app') as unknown as { app: { runs: { holds: string } } };
    return app.runs.holds === 'held';
  });
  if (chance.next() < 0.5) unanswered(takeOnAndOn(page));
  else {
    const { x, y } = await life.phone.finger.reach(taken);
    const tapping = async (): Promise<void> => {
      for (;;) {
        await page.touchscreen.tap(x, y);
        await new Promise((resolve) => setTimeout(resolve, 120));
      }
    };
    unanswered(tapping());
  }
  await life.killAfter(chance.between(10, 1500));
  const wrong = await life.revive();
  const disk = Number(readName(await readDatabase(life.page), `run ${run.id}`));
  await life.page.evaluate(() => (location.hash = '#/cut/pass'));
  if (disk < PASSES.length) {
    const question = life.page.getByText(`Was cut ${disk + 1} taken?`).first();
    await question.waitFor({ timeout: 10_000 }).catch(() => wrong.push(`it doesn't ask of cut ${disk + 1}`));
  }
  if ((await takenNow(life.page)).length !== disk)
    wrong.push('the run in the app is not the one on the disk');
  return wrong;
};

let files = 0;

/** Rows as another phone would have made them: machines like this one, threads, things that happened. */
const rowsOf = (like: CarriedRow, prefix: string, many: number): Record<string, CarriedRow[]> => {
  const envelope = (id: string) => ({
    ...{ id: `${prefix}${id}`, schema: 1, rev: `1-${prefix}${id}`, parents: [], device: prefix },
    ...{ counter: 1, changedAt: 0, deleted: false },
  });
  const { body } = like as unknown as { body: object };
  const own = {
    major: { n: '10', d: '1', unit: 'mm' },
    pitch: { n: '1', d: '1', unit: 'mm' },
    profile: 'iso60',
  };
  const rest = { angle: null, crest: null, depth: null, starts: 1, hand: 'right' };
  const list = <T>(count: number, make: (n: number) => T): T[] =>
    Array.from({ length: count }, (_, n) => make(n));
  return {
    machines: list(3, (n) => ({ ...envelope(`m${n}`), body })),
    threads: list(many, (n) => ({
      ...envelope(`t${n}`),
      body: { name: `${prefix} ${n}`, ...own, ...rest },
    })),
    evidence: list(many, (n) => ({
      ...{ id: `${prefix}e${n}`, schema: 1, kind: 'event', machine: `${prefix}m0`, at: n },
      ...{ device: prefix, body: { kind: 'other' } },
    })),
  };
};

/** Says in node that the file was brought in, as soon as the screen does. */
const watchImport = (life: Life, name: string, all: string): Promise<number> =>
  life.page.evaluate(
    (said) => {
      const timer = setInterval(() => {
        const screen = document.querySelector('ls-app')?.shadowRoot?.querySelector('ls-carry')?.shadowRoot;
        if (screen?.querySelector('h1')?.textContent?.trim() !== 'Brought in') return;
        clearInterval(timer);
        void (window as unknown as { soakSaid: (name: string, value: string) => void }).soakSaid(...said);
      }, 4);
      return Number(timer);
    },
    [name, all] as [string, string],
  );

/** A file brought in, killed anywhere from the touch on. All of it is there afterwards, or nothing. */
export const imports: Kill = async (life, chance) => {
  const { page, ledger } = life;
  files += 1;
  const prefix = `file${files}x`;
  const many = chance.between(10, 400);
  const db = await readDatabase(page);
  const like = db.stores.machines?.find((row) => (row as { id: string }).id === life.machine) as CarriedRow;
  const records = rowsOf(like, prefix, many);
  const made = '2026-11-27T14:32:00.000Z';
  const { text } = writeDocument({ kind: 'everything', made, app: '0', records, earlier: [] });
  const folder = mkdtempSync(join(tmpdir(), 'latheside-soak-'));
  try {
    const path = join(folder, 'file.json');
    writeFileSync(path, text);
    await page.evaluate(() => (location.hash = '#/machine/carry'));
    await page.locator('ls-carry input[type=file]').setInputFiles(path);
    const bring = page.getByRole('button', { name: 'Bring it in' });
    await bring.waitFor();
    const all = `${3 + 2 * many}`;
    ledger.trying(`import ${prefix}`, '0');
    ledger.trying(`import ${prefix}`, all);
    await watchImport(life, `import ${prefix}`, all);
    await life.phone.finger.tapOn(bring);
    if (chance.next() < 0.4) {
      // Brought in, and killed while it is taken back.
      await page.getByRole('heading', { name: 'Brought in' }).waitFor();
      ledger.trying(`import ${prefix}`, '0');
      const back = life.ask((app) => app.takeBack());
      unanswered(back.then(() => ledger.acknowledged(`import ${prefix}`, '0')));
    }
    await life.killAfter(chance.between(0, 100 + 2 * many));
    const wrong = await life.revive();
    const found = readName(await readDatabase(life.page), `import ${prefix}`) ?? '';
    if (!['0', all].includes(found)) wrong.push(`${found} of ${all} rows of a file are there`);
    return wrong;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
