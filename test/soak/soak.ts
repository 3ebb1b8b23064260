import { rmSync } from 'node:fs';
import { build } from '../browser/support/builds';
import { Chance } from './chance';
import { clocks } from './clock';
import { fills } from './full';
import { imports, passes, saves, type Kill } from './kills';
import { Life, type Build } from './life';
import { updates } from './updates';
import { firstVisit, halfUpdate } from './workers';

/** What the browser is killed in, in tenths. */
const KILLS: readonly (readonly [name: string, tenths: number, kill: Kill])[] = [
  ['killed in saves', 4, saves],
  ['killed in passes of a run', 2, passes],
  ['killed in an import', 2, imports],
  ['killed in an update', 2, updates],
];
/** So many kills on one phone, then a new one. */
const KILLS_OF_A_LIFE = 20;

/** One thing done to a phone, and what came of it. */
export interface Trial {
  readonly name: string;
  readonly wrong: readonly string[];
  /** Times the app said that something was saved, and that it could not be. */
  readonly acknowledged: number;
  readonly refused: number;
  /** Times the browser had lost the database, and it was filled from the copy. */
  readonly refilled: number;
  readonly ms: number;
}

export interface SoakOptions {
  readonly kills: number;
  readonly seed: number;
  /** A built app, and its version. */
  readonly built: Build;
  /** Called after each. */
  readonly onTrial: (trial: Trial) => void;
}

const lineOf = (e: unknown): string => (e instanceof Error ? (e.message.split('\n')[0] ?? '') : String(e));

class Soak {
  private life: Life | null = null;

  constructor(
    private readonly chance: Chance,
    private readonly onTrial: (trial: Trial) => void,
  ) {}

  /** Tries one thing on the phone that there is, or on a new one; a phone on which something was wrong is done with. */
  async on(name: string, builds: readonly Build[], kill: Kill): Promise<void> {
    const begun = Date.now();
    let wrong: string[];
    try {
      this.life ??= await Life.begin(builds);
      wrong = await kill(this.life, this.chance);
    } catch (e) {
      wrong = [lineOf(e), ...(this.life?.problems() ?? [])];
    }
    const acknowledged = this.life?.ledger.take() ?? 0;
    const refused = this.life?.refused.splice(0).length ?? 0;
    const refilled = this.life?.refilled ?? 0;
    if (this.life) this.life.refilled = 0;
    this.onTrial({ name, wrong, acknowledged, refused, refilled, ms: Date.now() - begun });
    if (wrong.length > 0) await this.renew();
  }

  async renew(): Promise<void> {
    await this.life?.end().catch(() => undefined);
    this.life = null;
  }
}

/** Does everything to the app that it has to survive, in an order that the seed gives. */
export const soak = async ({ kills, seed, built, onTrial }: SoakOptions): Promise<void> => {
  const chance = new Chance(seed);
  const others = Math.max(1, Math.round(kills / 20));
  const next = build({ version: '9.9.9' });
  try {
    for (let n = 0; n < others; n += 1) {
      const begun = Date.now();
      const wrong = await firstVisit(built, chance).catch((e: unknown) => [lineOf(e)]);
      const name = 'worker stopped in a first visit';
      onTrial({ name, wrong, acknowledged: 0, refused: 0, refilled: 0, ms: Date.now() - begun });
    }
    const builds = [built, [await next, '9.9.9']] as const;
    const all = new Soak(chance, onTrial);
    for (const [name, kill] of [
      ['worker stopped in an update', halfUpdate],
      ['phone full in the middle of saves', fills],
      ['clock set back and forward', clocks],
    ] as const) {
      for (let n = 0; n < others; n += 1) await all.on(name, builds, kill);
      if (others > 3) await all.renew();
    }
    const ten = KILLS.flatMap((kind) => Array(kind[1]).fill(kind) as (typeof KILLS)[number][]);
    for (let n = 0; n < kills;) {
      for (const [name, , kill] of chance.shuffled(ten).slice(0, kills - n)) {
        if (n > 0 && n % KILLS_OF_A_LIFE === 0) await all.renew();
        await all.on(name, builds, kill);
        n += 1;
      }
    }
    await all.renew();
  } finally {
    rmSync(await next, { recursive: true, force: true });
  }
};
