/** What is timed inside a slowed page: the look-up at each key, and every figure of the speed screen. */
import type { Inputs } from '../../src/core/context';
import { searchTrains, type Gearing } from '../../src/core/drive/trains';
import { figuresFor } from '../../src/core/figures';
import { blankJob } from '../../src/core/job';
import { EXAMPLES } from '../../src/core/machine/examples';
import { lead, ratio, stated } from '../../src/core/quantity';
import { blankOwn, catalogue, threadOfOwn } from '../../src/core/thread';
import { findable, findRuns } from '../../src/core/run/search';
import { indexThreads, search } from '../../src/core/thread/search';

/** Typed one key after another; the list is asked for at each. */
const TYPED = ['10x1.25', '1/4-20', '13 tpi', '0.8', '11 1/2', 'm36', '64'];
const ROUNDS = 20;

function time(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const OWN = 10_000;
/** As many as the app puts into one index. */
const BATCH = 500;

/** A person's own threads: every diameter from 2 mm up by hundredths, in pitches of all kinds. */
function ownThreads(count: number) {
  const pitches = [0.75, 1, 1.25, 1.5, 2].map((p) => stated(ratio(p * 100, 100), 'mm'));
  const tpis = [8, 11, 14, 20, 26].map((n) => stated(ratio(n), 'tpi'));
  return Array.from({ length: count }, (_, at) => {
    const pitch = [...pitches, ...tpis][at % 10] ?? null;
    const own = { ...blankOwn(), major: stated(ratio(1000 + at, 100), 'mm'), pitch };
    return threadOfOwn(`${at}`, own);
  }).filter((thread) => thread !== null);
}

/** Milliseconds of making each index of a person's own threads, and of each look-up among them and the catalogue. */
export function ownLookUps() {
  const threads = ownThreads(OWN);
  const indexing: number[] = [];
  const own: ReturnType<typeof indexThreads>[] = [];
  for (let at = 0; at < threads.length; at += BATCH)
    indexing.push(time(() => own.push(indexThreads(threads.slice(at, at + BATCH)))));
  const [first = 0, ...rest] = indexing;
  return { indexing: { first, each: rest }, lookUp: lookUps(own) };
}

/** Milliseconds of the very first look-up, and of each later one. */
export function lookUps(own: ReturnType<typeof indexThreads>[] = []): { first: number; each: number[] } {
  const first = time(() => void search('1', { limit: 20, own }));
  const each: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const typed of TYPED) {
      for (let keys = 1; keys <= typed.length; keys += 1) {
        each.push(time(() => void search(typed.slice(0, keys), { limit: 20, own })));
      }
    }
  }
  return { first, each };
}

const RECORDS = 10_000;
const MONTHS = ['January', 'March', 'May', 'July', 'October', 'December'];

/** What the record of a finished cut is found by, as long as the app makes it. */
const recordText = (at: number): string =>
  [
    `M${4 + (at % 60)}×${1 + (at % 7) / 4} 6g Kestrel Shed behind the house Free-cutting steel HSS External Right-hand`,
    `Finished: within limits ${1 + (at % 28)} ${MONTHS[at % 6] ?? ''} ${2020 + (at % 7)}`,
    `2024-03-${at % 28} 14:${at % 60} ${1 + (at % 28)}.3.2024 spindle nose for order ${at}, second try`,
  ].join(' ');

/** Milliseconds of making 250 records ready, and of each look-up among ten thousand. */
export function recordLookUps() {
  const records: ReturnType<typeof findable>[] = [];
  const making: number[] = [];
  for (let at = 0; at < RECORDS; at += 250)
    making.push(
      time(() => {
        for (let i = at; i < at + 250; i += 1) records.push(findable(`${i}`, recordText(i)));
      }),
    );
  const each: number[] = [];
  for (const typed of ['m10 kestrel march', '3 may 2024', 'order 9876', 'nothing of that kind'])
    for (let round = 0; round < 5; round += 1)
      for (let keys = 1; keys <= typed.length; keys += 1)
        each.push(time(() => void findRuns(records, typed.slice(0, keys))));
  const [first = 0, ...rest] = making;
  const [firstLookUp = 0, ...others] = each;
  return { making: { first, each: rest }, lookUp: { first: firstLookUp, each: others } };
}

/** Milliseconds of the whole gauge, reckoned anew for a thread and a speed each time. */
export function gauges(): { first: number; each: number[] } {
  const machines = Object.values(EXAMPLES).map((make) => make());
  const context = {
    now: 0,
    day: '2026-01-01',
    hours: null,
    records: [],
    events: [],
    cuttingSince: null,
    cuttingDay: null,
  };
  const threads = catalogue().slice(0, 60);
  const times = threads.flatMap((thread, at) =>
    machines.map((machine) => {
      const job = {
        ...blankJob(),
        thread: { kind: 'catalogue', id: thread.id } as const,
        rpm: ratio(100 + at),
      };
      const inputs: Inputs = { machine, job, context };
      return time(() => {
        const sheet = figuresFor(inputs);
        sheet.get('speed');
        sheet.get('nutRule');
      });
    }),
  );
  const [first = 0, ...each] = times;
  return { first, each };
}

/** A set of twenty wheels on an 8 tpi screw, with what a banjo leaves. */
const GEARING: Gearing = {
  wheels: [20, 24, 25, 28, 30, 32, 35, 38, 40, 42, 45, 48, 50, 55, 60, 63, 65, 70, 80, 127],
  fixed: ratio(1),
  box: [],
  screwLead: ratio(127, 40),
  shaftTurns: 'either',
  banjo: { shafts: 150, least: 60, most: 140, studGap: 50, studs: 2, clearance: 15 },
  mounted: null,
};

/** Milliseconds of the search of all pairs and compound trains, for metric, inch and π leads. */
export function trains(): { first: number; each: number[] } {
  const leads = [
    ...[lead(ratio(3, 2)), lead(ratio(2)), lead(ratio(5, 4)), lead(ratio(7, 10))],
    ...[lead(ratio(127, 100)), lead(ratio(127, 65)), lead(ratio(127, 55)), lead(ratio(1), true)],
  ];
  const one = (at: number): number =>
    time(() => {
      const l = leads[at % leads.length];
      if (l) searchTrains(GEARING, l, { hand: 'right', pairs: 2, order: 'error', keep: 12, within: 20_000 });
    });
  return { first: one(0), each: Array.from({ length: 40 }, (_, at) => one(at)) };
}
