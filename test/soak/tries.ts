import type { Page } from 'playwright-core';
import type { SavedDatabase } from '../browser/support/saved';
import type { Chance } from './chance';

/** One change that the app is asked for. `name` is what the ledger calls it by, `n` what it is set to. */
export interface Try {
  readonly does: (typeof DOES)[number];
  readonly name: string;
  readonly n: number;
}

/** What is changed, each in its own store or in its own way. */
const DOES = [
  'pitch',
  'workshop',
  'choice',
  'reading',
  'rpm',
  'wiring',
  'new-thread',
  'check',
  'test',
  'hours',
] as const;

/** Every value that is tried is another one, so that none can be taken for an earlier one. */
const next = { n: 0 };

type Raw = Record<string, unknown>;
const body = (row: unknown): Raw => (row as { body?: Raw } | undefined)?.body ?? {};
const ratioOf = (x: unknown): bigint | undefined => {
  const { n } = (x ?? {}) as { n?: string };
  return n === undefined ? undefined : BigInt(n);
};

/** Reads what the ledger calls `name` off the database. */
export const readName = (db: SavedDatabase, name: string): string | undefined => {
  const [does = '', id = ''] = name.split(' ');
  const find = (store: string, key: string): unknown =>
    (db.stores[store] ?? []).find((row) => (row as { id: string }).id === key);
  const text = (x: unknown): string | undefined =>
    x === undefined || x === null ? undefined : `${x as string}`;
  switch (does) {
    case 'pitch':
      return text(ratioOf((body(find('machines', id)).profile as Raw | undefined)?.screwPitch));
    case 'workshop':
      return text((body(find('machines', id)).profile as Raw | undefined)?.workshop)?.replace('Shed ', '');
    case 'choice':
      return text((body(find('settings', 'person')).choices as Raw | undefined)?.soak);
    case 'reading':
      return text(
        ratioOf(((find('meta', 'value/readings') as { value?: Raw } | undefined)?.value ?? {}).soak),
      );
    case 'rpm':
      return text(ratioOf((body(find('jobs', id)).job as Raw | undefined)?.rpm));
    case 'wiring':
      return text(
        ((body(find('wiring', id)).connectors as Raw | undefined)?.soak as Raw | undefined)?.name,
      )?.slice(2);
    case 'new-thread':
      return (db.stores.threads ?? []).some((row) => body(row).name === `Soak ${id}`) ? id : undefined;
    case 'hours':
      return (db.stores.evidence ?? []).some((row) => body(row).hours === Number(id)) ? id : undefined;
    case 'evidence':
      return find('evidence', id) ? id : undefined;
    case 'run':
      return text((body(find('runs', id)).taken as unknown[] | undefined)?.length);
    case 'import':
      return text(
        [...(db.stores.machines ?? []), ...(db.stores.threads ?? []), ...(db.stores.evidence ?? [])].filter(
          (row) => !(row as { deleted?: boolean }).deleted && (row as { id: string }).id.startsWith(id),
        ).length,
      );
    default:
      return find('evidence', `soak-${id}`) ? id : undefined;
  }
};

/** So many changes of some kinds, in lanes that go on at the same time. */
export const drawTries = (chance: Chance, machine: string, each: number): Try[][] =>
  chance
    .shuffled(DOES)
    .slice(0, chance.between(1, 4))
    .map((does) =>
      Array.from({ length: each }, () => {
        next.n += 1;
        const one = {
          pitch: machine,
          workshop: machine,
          rpm: machine,
          wiring: machine,
          choice: 'soak',
          reading: 'soak',
        };
        const key = (one as Record<string, string>)[does] ?? `${next.n}`;
        return { does, name: `${does} ${key}`, n: valueOf(does, next.n) };
      }),
    );

/** Leads and speeds have bounds: these stay within, and are another for some thousands of changes. */
const valueOf = (does: string, n: number): number => (does === 'pitch' ? 2 * (600 + (n % 10_000)) + 1 : n);

/** Does the tries of each lane one after another, and says after each whether the app called it saved. */
export const carryOut = (page: Page, lanes: readonly (readonly Try[])[]): Promise<void> =>
  page.evaluate((all) => {
    /* eslint-disable -- reaches into the app as it runs, as a person's touch does */
    const { app } = document.querySelector('ls-app') as any;
    const { soakSaid, soakRefused } = window as any;
    const stated = (n: number, d = 1, unit = 'mm') => ({ value: { n: BigInt(n), d: BigInt(d) }, unit });
    const saved = (live: { state: { kind: string } }) => live.state.kind !== 'failed';
    const does: Record<string, (n: number) => Promise<boolean>> = {
      pitch: (n) => app.setField('screwPitch', stated(n, 1024)).then(() => saved(app.machine)),
      workshop: (n) => app.setField('workshop', `Shed ${n}`).then(() => saved(app.machine)),
      choice: (n) => app.choose('soak', `${n}`).then(() => saved(app.person)),
      reading: (n) => app.readings.set('soak', stated(n)).then(() => true),
      rpm: (n) => app.jobs.change({ rpm: { n: BigInt(n), d: 1n } }).then(() => saved(app.jobs.current)),
      wiring: (n) => {
        const was = app.wiring.value;
        const soak = { name: `J ${n}`, place: 'controller', pins: 9 };
        return app.wiring
          .set({ ...was, connectors: { ...was.connectors, soak } })
          .then(() => saved(app.wiring));
      },
      'new-thread': (n) => {
        const figures = { angle: null, crest: null, depth: null, starts: 1, hand: 'right' };
        const own = {
          name: `Soak ${n}`,
          major: stated(1000 + n, 100),
          pitch: stated(1),
          profile: 'iso60',
          ...figures,
        };
        return app.own.add(own).then((key: string) => saved(app.own.open.get(key)));
      },
      check: (n) => {
        const { day, hours } = app.inputs.context;
        const record = {
          answer: 'done',
          at: Date.now(),
          day,
          hours,
          inputs: {},
          rule: 1,
          reading: null,
          cut: null,
        };
        return app.records.addCheck({ id: `soak-${n}`, item: 'chips', ...record }).then(() => true);
      },
      test: (n) => {
        const record = {
          at: Date.now(),
          rule: 1,
          result: 'passed',
          readings: { play: stated(n) },
          choices: {},
        };
        return app.records
          .addTest({ id: `soak-${n}`, test: 'backlash', ...record, inputs: {}, note: `Test ${n}` })
          .then(() => true);
      },
      hours: (n) => app.logHours(n).then(() => true),
    };
    const lanes = all.map(async (lane) => {
      for (const { does: what, name, n } of lane) {
        const ok = await does[what]!(n).catch(() => false);
        await (ok ? soakSaid : soakRefused)(name, `${n}`);
      }
    });
    return Promise.all(lanes).then(() => undefined);
    /* eslint-enable */
  }, lanes);
