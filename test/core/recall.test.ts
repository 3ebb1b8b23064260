import { describe, expect, it } from 'vitest';
import { ITEMS } from '../../src/core/checks';
import { TEST_IDS, testNow } from '../../src/core/context';
import { makeTest, RULES } from '../../src/core/prove';
import { formulasOf, RECALLS, recordRecalls, reviewId, type Recall } from '../../src/core/recall';
import type { Run } from '../../src/core/run';
import { runRecalls } from '../../src/core/run/recalls';
import { readRun, storeRun } from '../../src/core/run/stored';
import { FAMILIES, threadsOf } from '../../src/core/thread';
import { figureName } from '../../src/text/paths';
import { recallSaid, recallWords } from '../../src/text/recall';
import { inputsOf } from './checks/support';
import { planOf, runOf } from './run/support';

const TABLE: readonly Recall[] = [
  { id: 'counts-per-rev', corrected: '1.1.0', formulas: 2, tests: ['counts'], checks: ['count-ten-turns'] },
  { id: 'whitworth-depth', corrected: '1.2.0', formulas: 3, figures: ['depth'], families: ['bsw'] },
  { id: 'wires', corrected: '1.3.0', formulas: 4, figures: ['measured'] },
];
const made = (formulas: number) => ({ made: { app: '1.0.0', formulas } });
const ids = (found: readonly Recall[]): string[] => found.map((r) => r.id);
/** A thread of a family. */
const idOf = (family: string): string => threadsOf(family)[0]?.id ?? '';
const recalls = { table: TABLE, reviewed: [] as string[] };

describe('a corrected formula', () => {
  it('puts in question what was recorded by an earlier one, and nothing else', () => {
    const record = { id: 'r', test: 'counts' };
    expect(ids(recordRecalls({ ...record, ...made(1) }, recalls))).toEqual(['counts-per-rev']);
    // Before it was kept what made a record, nothing can be said for it.
    expect(ids(recordRecalls(record, recalls))).toEqual(['counts-per-rev']);
    expect(recordRecalls({ ...record, ...made(2) }, recalls)).toEqual([]);
    expect(recordRecalls({ ...record, test: 'drift' }, recalls)).toEqual([]);
    // A check of that name is another thing.
    expect(recordRecalls({ id: 'r', item: 'counts' }, recalls)).toEqual([]);
    expect(ids(recordRecalls({ id: 'r', item: 'count-ten-turns' }, recalls))).toEqual(['counts-per-rev']);
    expect(recordRecalls(record, undefined)).toEqual([]);
  });

  it('counts no more once a person has looked the record over; another record stays', () => {
    const reviewed = [reviewId('counts-per-rev', 'r')];
    const seen = { table: TABLE, reviewed };
    expect(recordRecalls({ id: 'r', test: 'counts' }, seen)).toEqual([]);
    expect(ids(recordRecalls({ id: 's', test: 'counts' }, seen))).toEqual(['counts-per-rev']);
  });

  it('lets a test that passed lapse until then, and leaves one that failed as failed', () => {
    const context = (result: 'passed' | 'failed', reviewed: string[] = []) => {
      const record = makeTest('counts', RULES.counts, inputsOf(), 'r', {
        result,
        readings: {},
        choices: {},
      });
      return inputsOf({ context: { tests: [record], recalls: { table: TABLE, reviewed } } });
    };
    const now = (...of: Parameters<typeof context>) => testNow(context(...of), 'counts', RULES.counts);
    expect(now('passed')).toMatchObject({ code: 'lapsed', lapse: { code: 'recalled' } });
    expect(now('passed', [reviewId('counts-per-rev', 'r')]).code).toBe('passed');
    expect(now('failed').code).toBe('failed');
  });

  it('of a figure concerns the runs of its threads; one of measuring, those that were measured', () => {
    const thread = (id: string) => ({ kind: 'catalogue', id }) as const;
    const run = (id: string, part: Partial<Run> = {}) => {
      const base = runOf(planOf([10, 20]), { ...made(1), ...part });
      return { ...base, job: { ...base.job, thread: thread(id) } };
    };
    const bsw = idOf('bsw');
    expect(ids(runRecalls('r', run(bsw), recalls))).toEqual(['whitworth-depth']);
    expect(runRecalls('r', run(idOf('iso-coarse')), recalls)).toEqual([]);
    const reading = {
      at: 1,
      way: 'gauge',
      reading: null,
      felt: 'goes',
      pitchDiameter: null,
      uncertainty: null,
      after: 1,
    } as const;
    expect(ids(runRecalls('r', run(idOf('iso-coarse'), { readings: [reading] }), recalls))).toEqual([
      'wires',
    ]);
    expect(runRecalls('r', run(bsw, made(3)), recalls)).toEqual([]);
  });

  it('raises the number that new records carry', () => {
    expect(formulasOf([])).toBe(1);
    expect(formulasOf(TABLE)).toBe(4);
  });
});

describe('what made a run', () => {
  it('is kept with it, and what can’t be read of that counts as not kept', () => {
    const run = runOf(planOf([10]), made(3));
    expect(readRun(storeRun(run))?.made).toEqual({ app: '1.0.0', formulas: 3 });
    const stored = storeRun(run);
    expect(readRun({ ...stored, made: { app: 1 } })).not.toHaveProperty('made');
    expect(readRun({ ...stored, made: null })).not.toHaveProperty('made');
    const { made: _, ...before } = stored;
    expect(readRun(before)).not.toHaveProperty('made');
  });
});

describe('the table of this release', () => {
  /** What is wrong with a table, one line each. */
  const faults = (table: readonly Recall[], words: typeof recallWords): string[] =>
    table.flatMap((r, i) => [
      ...(r.formulas === i + 2 ? [] : [`${r.id} has not the next number`]),
      ...(words[r.id] ? [] : [`${r.id} has no words`]),
      ...(r.checks ?? []).filter((c) => !ITEMS.some((item) => item.id === c)),
      ...(r.tests ?? []).filter((t) => !(TEST_IDS as readonly string[]).includes(t)),
      ...(r.figures ?? []).filter((f) => f !== 'measured' && !Object.hasOwn(figureName, f)),
      ...(r.families ?? []).filter((f) => !FAMILIES.some((known) => known.id === f)),
    ]);

  it('names what there is, is numbered without a gap, and has words for each entry', () => {
    expect(faults(RECALLS, recallWords)).toEqual([]);
    // It could fail.
    expect(faults(TABLE, {})).toEqual([
      'counts-per-rev has no words',
      'count-ten-turns',
      'whitworth-depth has no words',
      'wires has no words',
    ]);
    expect(faults([{ id: 'x', corrected: '1', formulas: 7 }], { x: { what: '', todo: '' } })).toEqual([
      'x has not the next number',
    ]);
  });

  it('is said with the versions it lies between', () => {
    const [said] = recallSaid(TABLE.slice(0, 1), made(1)).all;
    expect(said?.between).toBe('Made by version 1.0.0, corrected in 1.1.0. Nothing was reckoned anew.');
    expect(recallSaid(TABLE, {}).all[0]?.between).toContain('Made by an early version');
  });
});
