import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EVENT_KINDS,
  fingerprint,
  inputAt,
  newestOf,
  readCheckBody,
  readEventKind,
  readHoursBody,
  storeCheck,
  type CheckRecord,
} from '../../../src/core/context';
import { ratio, stated } from '../../../src/core/quantity';
import { inputsOf } from '../checks/support';

const made: CheckRecord = {
  id: 'a',
  item: 'gap',
  answer: 'done',
  at: 5,
  day: '2026-05-03',
  hours: 12.5,
  inputs: { 'machine.screwPitch': '{"value":{"n":"3","d":"1"},"unit":"mm"}' },
  rule: 1,
  reading: ratio(31, 10),
  cut: null,
};

describe('a check record on the disk', () => {
  it('comes back as it went, but for its id and time, which its row holds', () => {
    const { id: _id, at: _at, ...rest } = made;
    expect(readCheckBody(JSON.parse(JSON.stringify(storeCheck(made))))).toEqual(rest);
    expect(readCheckBody(storeCheck({ ...made, reading: null, hours: null, cut: 9 }))).toEqual({
      ...rest,
      reading: null,
      hours: null,
      cut: 9,
    });
  });

  it('with any part missing or of another kind is not recorded at all: the check is asked again', () => {
    const kept = storeCheck(made);
    for (const part of ['item', 'answer', 'day', 'hours', 'inputs', 'rule', 'cut']) {
      const { [part]: _, ...without } = kept;
      expect([part, readCheckBody(without)]).toEqual([part, null]);
      expect([part, readCheckBody({ ...kept, [part]: { x: 1 } })]).toEqual([part, null]);
    }
    expect(readCheckBody({ ...kept, answer: 'maybe' })).toBeNull();
    expect(readCheckBody({ ...kept, reading: { n: '3', d: '0' } })?.reading).toBeNull();
  });

  it('never throws on rubbish', () => {
    fc.assert(
      fc.property(fc.anything(), (x) => {
        readCheckBody(x);
        const kind = readEventKind(x);
        if (kind) expect(EVENT_KINDS).toContain(kind);
        const hours = readHoursBody(x);
        if (hours !== null) expect(hours >= 0 && hours < Infinity).toBe(true);
      }),
    );
    for (const kind of EVENT_KINDS) expect(readEventKind({ kind })).toBe(kind);
    expect([readEventKind({ kind: 'toString' }), readEventKind('power')]).toEqual([null, null]);
    expect([0, 7.5, -1, Infinity, '3'].map((hours) => readHoursBody({ hours }))).toEqual([
      0,
      7.5,
      null,
      null,
      null,
    ]);
  });
});

describe('what tells one value from another', () => {
  const value = fc.oneof(
    fc.constant(null),
    fc.string(),
    fc.boolean(),
    fc.integer(),
    fc.tuple(fc.bigInt(-99n, 99n), fc.bigInt(1n, 99n)).map(([n, d]) => ratio(n, d)),
    fc
      .tuple(fc.bigInt(-99n, 99n), fc.constantFrom('mm' as const, 'in' as const))
      .map(([n, u]) => stated(ratio(n), u)),
  );
  it('is the same for the same value and another for another, lists included', () => {
    fc.assert(
      fc.property(fc.array(value, { maxLength: 3 }), fc.array(value, { maxLength: 3 }), (a, b) => {
        expect(fingerprint(a)).toBe(fingerprint(structuredClone(a)));
        let same = true;
        try {
          expect(a).toStrictEqual(b);
        } catch {
          same = false;
        }
        expect(fingerprint(a) === fingerprint(b)).toBe(same);
      }),
    );
    expect(fingerprint(stated(ratio(8), 'tpi'))).not.toBe(fingerprint(stated(ratio(127, 40), 'mm')));
  });
});

describe('inputs by path', () => {
  it('are the values that stand there', () => {
    const inputs = inputsOf();
    expect(inputAt(inputs, 'machine.screwPitch')).toEqual(stated(ratio(3), 'mm'));
    expect(inputAt(inputs, 'job.starts')).toBe(1);
    expect(inputAt(inputs, 'context.hours')).toBe(100);
  });
  it('the newest record of an item is the last one of that item', () => {
    const list = [made, { ...made, id: 'b' }, { ...made, id: 'c', item: 'belts' }];
    expect([newestOf(list, 'gap')?.id, newestOf(list, 'belts')?.id, newestOf(list, 'guard')]).toEqual([
      'b',
      'c',
      undefined,
    ]);
  });
});
