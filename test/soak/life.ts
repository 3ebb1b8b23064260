import type { Page } from 'playwright-core';
import type { App } from '../../src/state';
import { serve } from '../../.ci/serve.js';
import { prepare } from '../bench/moves.js';
import { Phone } from '../browser/support/phone';
import { readDatabase, type SavedDatabase } from '../browser/support/saved';
import { aheadOf, differences, deviceOf, halves, readCopy } from './inspect';
import { Ledger } from './ledger';
import { readName } from './tries';

/** How long the copy may take to catch up after a start, ms. */
const PATIENCE = 15_000;
/** A file of the app's own that doesn't run it: the disk is looked at before the app touches it. */
const STILL = 'manifest.webmanifest';

/** Runs in the page, before anything of the app. */
const shiftClock = (by: number): void => {
  const Right = Date;
  const now = (): number => Right.now() + by;
  const Wrong = function (...given: []): Date {
    return given.length > 0 ? new Right(...given) : new Right(now());
  };
  globalThis.Date = Object.assign(Wrong, {
    now,
    parse: Right.parse,
    UTC: Right.UTC,
    prototype: Right.prototype,
  }) as unknown as DateConstructor;
};

/** The folder of a built app, and its version. */
export type Build = readonly [folder: string, version: string];

/** One phone with the app and a machine in use, on which it goes on being killed; and what it acknowledged. */
export class Life {
  readonly ledger = new Ledger(readName);
  /** Changes that the app said it could not save. */
  readonly refused: string[] = [];
  machine = '';
  /** Times the browser had made a new, empty database, and the app filled it from its copy. */
  refilled = 0;
  /** The database has been one of those since then. */
  private anew = false;

  private constructor(
    public host: Awaited<ReturnType<typeof serve>>,
    readonly phone: Phone,
    /** Folders of two versions of the app, with their numbers. */
    private readonly builds: readonly Build[],
  ) {}

  static async begin(builds: readonly Build[]): Promise<Life> {
    const host = await serve(builds[0]?.[0] ?? '');
    const phone = await Phone.open(host.url);
    // The server is stopped now and then, and the icon asked for beside any page isn't there.
    phone.watch.allow(/Failed to load resource|ERR_|404|bad-precaching/);
    const life = new Life(host, phone, builds);
    await life.listen();
    await phone.controlled();
    await prepare(phone.page);
    life.machine = await life.ask((app) => app.machine?.id ?? '');
    await life.settled();
    return life;
  }

  /** The version that isn't served now. */
  nextBuild(): Build {
    return this.builds.find(([folder]) => folder !== this.host.folder) as Build;
  }

  get page(): Page {
    return this.phone.page;
  }

  /** Asks something of the app on the page. */
  ask<T>(question: (app: App) => T | Promise<T>): Promise<T> {
    return this.page.evaluate<T>(`(${question.toString()})(document.querySelector('ls-app').app)`);
  }

  private async listen(): Promise<void> {
    const { context } = this.phone;
    await context.exposeFunction('soakSaid', (name: string, value: string) =>
      this.ledger.acknowledged(name, value),
    );
    await context.exposeFunction('soakRefused', (name: string) => void this.refused.push(name));
  }

  /** Waits until the app has read everything, and the copy holds what the database holds. */
  async settled(): Promise<void> {
    await this.page.waitForFunction(() => {
      const shell = document.querySelector('ls-app') as {
        app?: { wiring?: unknown };
        updates?: unknown;
      } | null;
      return Boolean(shell?.app?.wiring && shell.updates);
    });
  }

  /** SIGKILL after so many ms. */
  async killAfter(ms: number): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, ms));
    await this.phone.kill();
  }

  /**
   * Starts again after a kill and looks at everything; gives what is wrong, one line each.
   * @param clock by how many ms the phone's clock is wrong from now on
   */
  async revive(clock = 0): Promise<string[]> {
    await this.phone.start(`${this.host.url}${STILL}`);
    const wrong: string[] = [];
    const dead = await this.dead();
    if (dead) wrong.push(...aheadOf(dead, await readCopy(this.page)));
    wrong.push(...(await this.open(clock)));
    const counter = dead ? deviceOf(dead).counter : 0;
    const now = await readDatabase(this.page);
    if (deviceOf(now).counter < counter) wrong.push(`the count went back from ${counter}`);
    return wrong;
  }

  /**
   * The database as it lies on the disk after a kill. null where there is none any more, or the browser can't open its store
   * (it makes a new one the moment after): the app has to fill it again, and the ledger says whether it did.
   */
  private async dead(): Promise<SavedDatabase | null> {
    try {
      const names = await this.page.evaluate(async () =>
        (await indexedDB.databases()).map(({ name }) => name),
      );
      return names.includes('latheside') ? await readDatabase(this.page) : null;
    } catch (e) {
      if (/backing store/.test(String(e))) return null;
      throw e;
    }
  }

  /** Starts again with so many bytes left on the phone; gives what lifts that. */
  async startFull(room: number): Promise<() => Promise<void>> {
    await this.phone.start(`${this.host.url}${STILL}`);
    const debug = await this.phone.debug();
    const { origin } = new URL(this.host.url);
    // Before the app's first write: the browser asks then what is left, and counts down by itself.
    const { usage } = await debug.send('Storage.getUsageAndQuota', { origin });
    await debug.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: usage + room });
    await this.listen();
    await this.page.goto(this.host.url);
    await this.settled();
    return async () => {
      await debug.send('Storage.overrideQuotaForOrigin', { origin });
    };
  }

  /** Opens the app in the browser that runs, and looks at everything. */
  async open(clock = 0): Promise<string[]> {
    await this.listen();
    if (clock !== 0) await this.phone.context.addInitScript(shiftClock, clock);
    await this.page.goto(this.host.url);
    await this.settled();
    const wrong = await this.notices();
    const db = await this.caughtUp();
    if (typeof db === 'string') return [...wrong, db];
    wrong.push(
      ...halves(db, this.anew),
      ...this.ledger.missing(db),
      ...(await this.shown(db)),
      ...this.problems(),
    );
    return wrong;
  }

  /** What the app says above every screen of what can't be opened, saved or shown. */
  async notices(): Promise<string[]> {
    const { durable, trouble, restored } = await this.ask(({ storage }) => ({
      durable: storage.durable,
      trouble: storage.trouble,
      restored: storage.restored !== null,
    }));
    // The copy is for that; whether it had everything, the ledger says.
    const refilled = durable && trouble === null && restored;
    if (refilled) this.refilled += 1;
    this.anew ||= refilled;
    const bad = await this.page.locator('ls-notices .bad').allInnerTexts();
    return [
      ...bad.map((text) => `it says: ${text}`),
      ...(durable && trouble === null ? [] : [`storage: ${durable} ${trouble} ${restored}`]),
    ];
  }

  /** The database, once the copy holds the same; or how they differ. */
  private async caughtUp(): Promise<SavedDatabase | string> {
    let differ: string[] = [];
    for (const end = Date.now() + PATIENCE; Date.now() < end;) {
      const db = await readDatabase(this.page);
      const copy = await readCopy(this.page);
      differ = [
        ...(copy.head?.counter === deviceOf(db).counter ? [] : ['the counts differ']),
        ...(copy.notes === 0 ? [] : [`${copy.notes} notes`]),
        ...differences(db, copy),
      ];
      if (differ.length === 0) return db;
      await this.page.waitForTimeout(250);
    }
    return `the copy doesn't catch up: ${differ.length} rows, ${differ.slice(0, 3).join('; ')}`;
  }

  /** Where the screen shows something else than the disk holds: workshop above every screen, screw and hours on Machine. */
  private async shown(db: SavedDatabase): Promise<string[]> {
    await this.page.evaluate(() => (location.hash = '#/machine'));
    const row = this.page.getByRole('link', { name: /^Leadscrew pitch/ });
    await row.waitFor();
    const shop = await this.page.locator('ls-app header .second:not(.paper)').innerText();
    const disk = readName(db, `workshop ${this.machine}`) ?? '';
    const wrong = shop === disk || shop === `Shed ${disk}` ? [] : [`${shop} is shown, ${disk} on the disk`];
    // "1201/1024 mm": a lead that was typed as a fraction is shown as one.
    const pitch = readName(db, `pitch ${this.machine}`) ?? '';
    const figure = await row.locator('.figure').innerText();
    if (/^\d+/.exec(figure)?.[0] !== pitch) wrong.push(`screw of ${figure} is shown, ${pitch} on the disk`);
    return wrong;
  }

  problems(): string[] {
    return this.phone.watch.problems.splice(0);
  }

  async end(): Promise<void> {
    await this.phone.close();
    await this.host.close();
  }
}
