import type { Page } from 'playwright-core';

/** A machine as a journey wants it; what isn't said is as on the machine in use. */
export interface Wanted {
  readonly name: string;
  readonly workshop: string;
  readonly colour?: string | null;
}

interface Reached {
  readonly app: {
    readonly profile: object;
    readonly machines: { add(profile: object, example: boolean): Promise<string>; readonly loaded: boolean };
  };
}

/** Adds machines like the one in use, as if each had been entered. */
export const addMachines = (page: Page, wanted: readonly Wanted[]): Promise<void> =>
  page.evaluate(async (all) => {
    const { app } = document.querySelector('ls-app') as unknown as Reached;
    const { profile } = app;
    for (const one of all) await app.machines.add({ ...profile, ...one }, false);
  }, wanted);

/** Resolves when the app has read all machines: what is listed is listed whole. */
export const allMachinesRead = async (page: Page): Promise<void> => {
  await page.waitForFunction(
    () => (document.querySelector('ls-app') as unknown as Partial<Reached> | null)?.app?.machines.loaded,
  );
};
