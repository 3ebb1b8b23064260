import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mergeMachine,
  mergeRecord,
  takeTheirs,
  type Merge,
  type RecordRow,
  type VersionRow,
} from '../../../src/core/carry';
import { changes, profileOf, records, start, version } from './support';

const A = version('a1', [], { pitch: 3, lines: 1024, motor: 'stepper' });
const OURS = version('a2', ['a1'], { pitch: 4, lines: 1024, motor: 'stepper' });

const merged = (m: Merge): Merge & { kind: 'merged' } => {
  if (m.kind !== 'merged') throw new Error(m.kind);
  return m;
};

describe('a machine that is here and in a file', () => {
  it('is told by ancestry: the same, ours what came of theirs, or the other way about', () => {
    expect(mergeMachine(A, [], A, [])).toEqual({ kind: 'same' });
    expect(mergeMachine(OURS, [A], A, []).kind).toBe('ours');
    expect(mergeMachine(A, [], OURS, [A])).toEqual({ kind: 'forward', row: OURS });
    // Three steps on, told by what the file knows of the steps between.
    const steps = [OURS, version('a3', ['a2'], { pitch: 5 })];
    const last = version('a4', ['a3'], { pitch: 6 });
    expect(mergeMachine(A, [], last, steps).kind).toBe('forward');
    expect(mergeMachine(last, steps, A, []).kind).toBe('ours');
  });

  it('with different fields changed gets both, and names both as what it came of', () => {
    const theirs = version('b1', ['a1'], { pitch: 3, lines: 2048, motor: 'stepper' });
    const { row, conflicts } = merged(mergeMachine(OURS, [A], theirs, [A]));
    expect(profileOf(row)).toEqual({ pitch: 4, lines: 2048, motor: 'stepper' });
    expect(row.parents).toEqual(['a2', 'b1']);
    expect(conflicts).toEqual([]);
  });

  it('with one field changed twice keeps ours until it is chosen, and has both values', () => {
    const theirs = version('b1', ['a1'], { pitch: 6, lines: 1024, motor: 'servo' });
    const { row, conflicts } = merged(mergeMachine(OURS, [A], theirs, [A]));
    expect(conflicts).toEqual([{ field: 'profile.pitch', ours: 4, theirs: 6 }]);
    expect(profileOf(row)).toEqual({ pitch: 4, lines: 1024, motor: 'servo' });
    expect(profileOf(takeTheirs(row, conflicts))).toEqual({ pitch: 6, lines: 1024, motor: 'servo' });
  });

  it('with no version in common has all that differs to choose, and loses nothing', () => {
    const theirs = version('b9', ['b8'], { pitch: 6, lines: 1024, dial: 12 });
    const { conflicts } = merged(mergeMachine(OURS, [A], theirs, []));
    expect(conflicts.map((c) => c.field).sort()).toEqual(['profile.dial', 'profile.motor', 'profile.pitch']);
  });

  it('keeps a cable that one side took out while the other changed a wire in it', () => {
    const wired = (rev: string, parents: string[], body: unknown): VersionRow => ({
      ...version(rev, parents, {}),
      body,
    });
    const wire = { cable: 'c1', signal: 'A', colour: null };
    const base = wired('w1', [], { cables: { c1: { name: 'Encoder' } }, wires: { x: wire } });
    const ours = wired('w2', ['w1'], { cables: {}, wires: {} });
    const theirs = wired('w3', ['w1'], {
      cables: { c1: { name: 'Encoder' } },
      wires: { x: { ...wire, colour: 'WH' } },
    });
    for (const [here, there] of [
      [ours, theirs],
      [theirs, ours],
    ] as const) {
      const { row, conflicts } = merged(mergeMachine(here, [base], there, [base]));
      const kept = takeTheirs(row, here === ours ? conflicts : []).body as Record<string, object>;
      expect(Object.keys(kept.wires ?? {})).toEqual(['x']);
      expect(kept.cables).toEqual({ c1: { name: 'Encoder' } });
    }
  });

  it('that was put away on one side and changed on the other is put away and changed', () => {
    const theirs = version('b1', ['a1'], { pitch: 3, lines: 1024, motor: 'stepper' }, true);
    const { row, conflicts } = merged(mergeMachine(OURS, [A], theirs, [A]));
    expect(row.deleted).toBe(true);
    expect(profileOf(row)).toEqual(profileOf(OURS));
    expect(conflicts).toEqual([]);
  });

  it('with one name for two contents is for a person to judge', () => {
    const forged = version('a2', ['a1'], { pitch: 99, lines: 1024, motor: 'stepper' });
    expect(merged(mergeMachine(OURS, [A], forged, [A])).conflicts).toHaveLength(1);
  });

  it('has records of many things merged thing by thing, parts with nothing in them kept', () => {
    const wired = (rev: string, parents: string[], body: unknown): VersionRow => ({
      ...version(rev, parents, {}),
      body,
    });
    const base = wired('a', [], { connectors: { x: 1 }, cables: {} });
    const ours = wired('b', ['a'], { connectors: { x: 1, y: 2 }, cables: {} });
    const theirs = wired('c', ['a'], { connectors: { z: 3 }, cables: {} });
    const { row, conflicts } = merged(mergeMachine(ours, [base], theirs, [base]));
    expect(row.body).toEqual({ connectors: { y: 2, z: 3 }, cables: {} });
    expect(conflicts).toEqual([]);
  });

  it('ends although the versions form a ring', () => {
    const ring = [version('x', ['y'], {}), version('y', ['x'], {})];
    expect(mergeMachine(OURS, [A, ...ring], version('z', ['x'], { pitch: 1 }), ring).kind).toBe('merged');
  });
});

const pair = fc.record({ base: start, ours: changes, theirs: changes }).map(({ base, ours, theirs }) => ({
  base: version('r0', [], base),
  ours: version('r1', ['r0'], { ...base, ...ours }),
  theirs: version('r2', ['r0'], { ...base, ...theirs }),
}));
const content = (m: Merge, ours: VersionRow): string => {
  const fields = profileOf('row' in m ? m.row : ours);
  return JSON.stringify(Object.entries(fields).sort(([x], [y]) => (x < y ? -1 : 1)));
};

describe('merging, whatever was changed', () => {
  it('does nothing more the second time', () => {
    fc.assert(
      fc.property(pair, ({ base, ours, theirs }) => {
        const once = mergeMachine(ours, [base], theirs, [base]);
        if (once.kind !== 'merged') return;
        const written = { ...once.row, rev: 'r3' };
        const again = mergeMachine(written, [base, ours, theirs], theirs, [base]);
        expect(['same', 'ours']).toContain(again.kind);
      }),
    );
  });

  it('gives both phones the same where nothing was changed twice, and the same to choose where it was', () => {
    fc.assert(
      fc.property(pair, ({ base, ours, theirs }) => {
        const here = mergeMachine(ours, [base], theirs, [base]);
        const there = mergeMachine(theirs, [base], ours, [base]);
        const fields = (m: Merge): string[] =>
          'conflicts' in m ? m.conflicts.map((c) => c.field).sort() : [];
        expect(fields(here)).toEqual(fields(there));
        if (fields(here).length === 0) expect(content(here, ours)).toBe(content(there, theirs));
      }),
    );
  });

  it('drops no change: each is in what comes of it, or has to be chosen', () => {
    fc.assert(
      fc.property(pair, ({ base, ours, theirs }) => {
        const m = mergeMachine(ours, [base], theirs, [base]);
        const now = profileOf('row' in m ? m.row : ours);
        const asked = 'conflicts' in m ? m.conflicts.map((c) => c.field) : [];
        for (const side of [ours, theirs])
          for (const [field, value] of Object.entries(profileOf(side))) {
            if (JSON.stringify(value) === JSON.stringify(profileOf(base)[field])) continue;
            if (!asked.includes(`profile.${field}`)) expect(now[field]).toEqual(value);
          }
      }),
    );
  });
});

/** Records of two sides by id, as storage brings one into the other (test/storage/carry.test.ts holds it to that). */
const mergeRecords = (ours: readonly RecordRow[], theirs: readonly RecordRow[]): readonly RecordRow[] => {
  const all = new Map(ours.map((row) => [row.id, row]));
  for (const row of theirs) {
    const mine = all.get(row.id);
    all.set(row.id, mine ? mergeRecord(mine, row) : row);
  }
  return [...all.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
};

describe('records of both phones', () => {
  it('are all there, in any order and however often, and one that was taken back stays so', () => {
    fc.assert(
      fc.property(records, records, records, (a, b, c) => {
        const all = mergeRecords(mergeRecords(a, b), c);
        expect(mergeRecords(a, mergeRecords(b, c))).toEqual(all);
        expect(mergeRecords(mergeRecords(c, b), a)).toEqual(all);
        expect(mergeRecords(all, b)).toEqual(all);
        for (const row of [...a, ...b, ...c]) {
          const kept = all.find((r) => r.id === row.id);
          expect(kept?.body).toEqual(row.body);
          if (row.takenBack !== undefined) expect(kept?.takenBack).toBeLessThanOrEqual(row.takenBack);
        }
      }),
    );
  });
});
