/** What is timed inside a slowed page: the look-up at each key, and every figure of the speed screen. */
import type { Inputs } from '../../src/core/context';
import { figuresFor } from '../../src/core/figures';
import { blankJob } from '../../src/core/job';
import { EXAMPLES } from '../../src/core/machine';
import { ratio } from '../../src/core/quantity';
import { catalogue, search } from '../../src/core/thread';

/** Typed one key after another; the list is asked for at each. */
const TYPED = ['10x1.25', '1/4-20', '13 tpi', '0.8', '11 1/2', 'm36', '64'];
const ROUNDS = 20;

function time(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds of the very first look-up, and of each later one. */
export function lookUps(): { first: number; each: number[] } {
  const first = time(() => void search('1', { limit: 20 }));
  const each: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const typed of TYPED) {
      for (let keys = 1; keys <= typed.length; keys += 1) {
        each.push(time(() => void search(typed.slice(0, keys), { limit: 20 })));
      }
    }
  }
  return { first, each };
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
