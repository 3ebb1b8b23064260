import type { Page } from 'playwright-core';
import type { Evaluates } from './evaluates';

/** What of the app a journey reaches for: the key that begins a run is on another page. */
interface Reached {
  readonly app: {
    readonly runs: {
      begin(plan: unknown, names: unknown): Promise<{ ok: boolean }>;
      take(n: number): Promise<boolean>;
      readonly current: { readonly run: { readonly taken: readonly { readonly n: number }[] } } | null;
    };
  };
}

export interface PlanOfRun {
  /** Cross-slide, divisions of 0.02 mm on the diameter, 100 to a turn; one for each cut. */
  readonly cross?: readonly number[];
  /** Top slide, divisions of 0.02 mm, 50 to a turn. */
  readonly top?: readonly number[];
  readonly springs?: number;
}

/** Begins a run of the machine and job in use, and shows its first pass. */
export const beginRun = async (page: Evaluates, plan: PlanOfRun): Promise<void> => {
  const ok = await page.evaluate(async ({ cross = [], top = [], springs = 0 }) => {
    const dial = (divisions: number | undefined, perTurn: number) =>
      divisions === undefined
        ? null
        : {
            divisions,
            reading: { value: { n: BigInt(divisions), d: 50n }, unit: 'mm' },
            turns: Math.floor(divisions / perTurn),
            past: divisions % perTurn,
          };
    const cuts = Math.max(cross.length, top.length);
    const at = (list: readonly number[], i: number) =>
      list.length > 0 ? list[Math.min(i, cuts - 1)] : undefined;
    const depth = (i: number) => (at(cross, i) ?? at(top, i) ?? 0) / 100;
    const passes = Array.from({ length: cuts + springs }, (_, i) => ({
      n: i + 1,
      kind: i < cuts ? 'cut' : 'spring',
      cross: dial(at(cross, i), 100),
      top: dial(at(top, i), 50),
      depth: depth(i),
      step: i < cuts ? depth(i) - (i > 0 ? depth(i - 1) : 0) : 0,
      chip: 0.02,
    }));
    const { app } = document.querySelector('ls-app') as unknown as Reached;
    const begun = await app.runs.begin(passes, {
      machineName: 'Heron',
      workshop: 'Example',
      threadName: 'M10×1.5',
    });
    location.hash = '#/cut/pass';
    return begun.ok;
  }, plan);
  if (!ok) throw new Error('no run was begun');
};

/** Takes pass after pass as fast as the disk lets it, telling each that was acknowledged on the console. */
export const takeOnAndOn = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { app } = document.querySelector('ls-app') as unknown as Reached;
    const go = async (): Promise<void> => {
      for (;;) {
        const n = (app.runs.current?.run.taken.length ?? 0) + 1;
        if (!(await app.runs.take(n))) return;
        console.log(`acknowledged ${n}`);
      }
    };
    void go();
  });

/** Numbers of the passes said to be taken, as the app read them. */
export const takenNow = (page: Evaluates): Promise<number[]> =>
  page.evaluate(() => {
    const { app } = document.querySelector('ls-app') as unknown as Reached;
    return (app.runs.current?.run.taken ?? []).map((t) => t.n);
  }, null);
