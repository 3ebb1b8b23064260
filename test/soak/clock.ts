import type { Chance } from './chance';
import type { Kill } from './kills';
import type { Life } from './life';
import { carryOut, drawTries } from './tries';

const DAY = 86_400_000;

/** A check that lapses when a belt was changed, and not by itself on the same day. */
const BELTS = /^Belts and pulleys tight\?/;

/** Records by touch that the belts were looked at, as the person says it. */
const look = async (life: Life): Promise<void> => {
  const { page } = life;
  await page.evaluate(() => (location.hash = '#/checks/item/belts'));
  await page.locator('ls-checks .resting').waitFor({ state: 'detached' });
  await life.phone.finger.tap(/^DONE/);
  await page.waitForFunction(() => location.hash === '#/checks');
  const id = await life.ask((app) =>
    app.undo.newest && 'evidence' in app.undo.newest ? app.undo.newest.evidence : '',
  );
  life.ledger.trying(`evidence ${id}`, id);
  life.ledger.acknowledged(`evidence ${id}`, id);
};

const change = async (life: Life): Promise<void> => {
  await life.ask((app) => app.logEvent('belt'));
  const id = await life.ask((app) =>
    app.undo.newest && 'evidence' in app.undo.newest ? app.undo.newest.evidence : '',
  );
  life.ledger.trying(`evidence ${id}`, id);
  life.ledger.acknowledged(`evidence ${id}`, id);
};

/** What the list of checks says of the belts. */
const said = async ({ page }: Life): Promise<string> => {
  await page.evaluate(() => (location.hash = '#/checks/list'));
  const line = page.getByRole('link', { name: BELTS });
  await line.waitFor();
  const { word } = await line
    .locator('ls-standing')
    .evaluate((e) => ({ word: (e as unknown as { word: string }).word }));
  return `${word} ${(await line.locator('small').allInnerTexts()).join(' ')}`.trim();
};

const expectSaid = async (life: Life, words: RegExp, when: string): Promise<string[]> => {
  const now = await said(life);
  return words.test(now) ? [] : [`${when}: it says "${now}"`];
};

const save = async (life: Life, chance: Chance): Promise<void> => {
  const lanes = drawTries(chance, life.machine, 3);
  for (const { name, n } of lanes.flat()) life.ledger.trying(name, `${n}`);
  await carryOut(life.page, lanes);
};

/**
 * The clock set back and right again, then forward and right again, killed at each. What was recorded after holds or is
 * not known, never what came before it; what the clock hides can be recorded anew.
 */
export const clocks: Kill = async (life, chance) => {
  const wrong: string[] = [];
  const back = -chance.between(2, 400) * DAY;
  const forward = chance.between(2, 400) * DAY;
  const move = async (to: number): Promise<void> => {
    await save(life, chance);
    await life.killAfter(chance.between(0, 100));
    wrong.push(...(await life.revive(to)));
  };
  await look(life);
  wrong.push(...(await expectSaid(life, /^Done/, 'recorded')));
  await move(back);
  wrong.push(...(await expectSaid(life, /^Not known.*set back/, 'clock set back')));
  await look(life);
  wrong.push(...(await expectSaid(life, /^Done/, 'recorded anew under a clock set back')));
  await change(life);
  await move(0);
  wrong.push(...(await expectSaid(life, /(changed|off).* since/, 'a belt changed under a clock set back')));
  await look(life);
  wrong.push(...(await expectSaid(life, /^Done/, 'recorded after that')));
  await move(forward);
  await change(life);
  await look(life);
  wrong.push(...(await expectSaid(life, /^Done/, 'recorded under a clock set forward')));
  await move(0);
  wrong.push(...(await expectSaid(life, /^Not known.*set back/, 'clock right again')));
  await look(life);
  wrong.push(...(await expectSaid(life, /^Done/, 'recorded anew with the clock right again')));
  return wrong;
};
