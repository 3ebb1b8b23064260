import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { readRunsFile, RUNS_SCHEMA, runsFile } from '../../../src/core/run/export';
import { readRun, storeRun } from '../../../src/core/run/stored';
import type { Run } from '../../../src/core/run';
import { ratio, stated } from '../../../src/core/quantity';
import { planOf, runOf } from './support';

/** A run with a reading of any exact figure. */
const anyRun: fc.Arbitrary<Run> = fc
  .record({ n: fc.bigInt(1n, 10n ** 30n), d: fc.bigInt(1n, 10n ** 30n), notes: fc.string() })
  .map(({ n, d, notes }) =>
    runOf(planOf([12, 20]), {
      notes,
      readings: [
        {
          at: 5,
          way: 'wires',
          reading: stated(ratio(n, d), 'in'),
          felt: null,
          pitchDiameter: 9.2191,
          uncertainty: null,
          after: 2,
        },
      ],
    }),
  );

describe('runs as JSON', () => {
  it('are read back as they were, every figure exact', () => {
    fc.assert(
      fc.property(fc.array(anyRun, { maxLength: 4 }), (runs: Run[]) => {
        const list = runs.map((run, i) => ({ id: `${i}`, run }));
        const text = runsFile(list.map(({ id, run }) => ({ id, run: storeRun(run) })));
        expect(readRunsFile(text, readRun)).toEqual(list);
      }),
    );
  });

  it('names its form, and refuses what has another or none', () => {
    expect(JSON.parse(runsFile([]))).toEqual({ schema: 'latheside-runs-1', runs: [] });
    for (const text of ['', '{', '[]', 'null', '{"schema":"latheside-runs-2","runs":[]}', '{"runs":[]}'])
      expect(readRunsFile(text, readRun)).toBeNull();
  });

  it('leaves out what is no run', () => {
    const text = JSON.stringify({
      schema: RUNS_SCHEMA,
      runs: [null, { id: 'a', run: { notes: 1 } }, { run: {} }],
    });
    expect(readRunsFile(text, readRun)).toEqual([]);
  });

  it('never writes an exact figure as a float: a run that was not made ready is refused', () => {
    expect(() => runsFile([{ id: 'a', run: { reading: { value: { n: 1n, d: 3n } } } }])).toThrow(TypeError);
  });
});
