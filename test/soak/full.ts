import { readDatabase } from '../browser/support/saved';
import type { Kill } from './kills';
import { carryOut, drawTries, readName, type Try } from './tries';

const FULL = 'storage is full';

/**
 * A phone that fills up in the middle of saves: what is refused is said, and stays as it was typed; with room again it is
 * saved by the key that offers it. Killed at the end.
 */
export const fills: Kill = async (life, chance) => {
  const { ledger } = life;
  const wrong: string[] = [];
  await life.phone.quit();
  const lift = await life.startFull(chance.between(100_000, 500_000));
  const { page } = life;
  let lanes: Try[][] = [];
  // What one kind of change takes is little, of another it is much.
  for (let turn = 0; turn < 8 && life.refused.length === 0; turn += 1) {
    lanes = drawTries(chance, life.machine, 40);
    for (const { name, n } of lanes.flat()) ledger.trying(name, `${n}`);
    await carryOut(page, lanes);
  }
  const refused = [...life.refused];
  if (refused.length === 0) wrong.push('nothing was refused');
  const typed = lanes.flatMap((lane) => lane.slice(-1));
  const live = typed.filter(({ does }) => ['pitch', 'workshop', 'choice', 'rpm', 'wiring'].includes(does));
  const held = live.filter(({ name }) => refused.includes(name));
  const notice = page.locator('ls-notices .bad', { hasText: FULL });
  if (held.length > 0)
    await notice.waitFor({ timeout: 5_000 }).catch(() => wrong.push('nobody says that it is full'));
  await lift();
  if (held.length > 0) {
    await life.phone.finger.tap('Save again');
    await notice.waitFor({ state: 'detached', timeout: 20_000 }).catch(() => wrong.push('it stays refused'));
    // What was typed last is on the disk now, though each was refused when it was typed.
    const db = await readDatabase(page);
    for (const { name, n } of held) {
      if (readName(db, name) !== `${n}`) wrong.push(`${name}: ${n} was typed, ${readName(db, name)} is kept`);
      else ledger.acknowledged(name, `${n}`);
    }
  }
  await life.killAfter(chance.between(0, 300));
  return [...wrong, ...(await life.revive())];
};
