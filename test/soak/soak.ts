import { Chance } from './chance';
import { imports, passes, saves, type Kill } from './kills';
import { Life } from './life';
import { updates } from './updates';

const KINDS: Readonly<Record<string, { share: number; kill: Kill }>> = {
  'in saves': { share: 8, kill: saves },
  'in passes': { share: 5, kill: passes },
  'in an update': { share: 4, kill: updates },
  'in an import': { share: 3, kill: imports },
};

export const soak = async (dist: string, kills: number, seed: number): Promise<void> => {
  const chance = new Chance(seed);
  const life = await Life.begin([
    [dist, '0.1.0'],
    ['/tmp/soak-dist-next', '9.9.9'],
  ]);
  const names = Object.entries(KINDS).flatMap(([n, { share }]) => Array(share).fill(n) as string[]);
  for (let at = 0; at < kills; at += 1) {
    const name = chance.pick(names);
    const begun = Date.now();
    const before = life.ledger.said;
    const wrong = await KINDS[name]!.kill(life, chance);
    console.log(
      at,
      name,
      Date.now() - begun,
      'ms',
      life.ledger.said - before,
      'acks',
      wrong.length,
      wrong.slice(0, 4),
    );
  }
  await life.end();
};
