import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  readBox,
  readTrain,
  readWheels,
  writeBox,
  writeTrain,
  writeWheels,
} from '../../../../src/core/drive/trains';
import { ratio } from '../../../../src/core/quantity';

const errorOf = (r: { ok: boolean; error?: string }): string => (r.ok ? 'ok' : (r.error ?? ''));

describe('a set of wheels as text', () => {
  it('counts doubles and stands in rising order', () => {
    const read = readWheels('40, 30x2  20 30');
    expect(read).toEqual({ ok: true, value: [20, 30, 30, 30, 40] });
    expect(read.ok && writeWheels(read.value)).toBe('20 30×3 40');
  });
  it.each([
    ['', 'empty'],
    ['20 thirty', 'not-wheels'],
    ['20 30×0', 'not-wheels'],
    ['20 -30', 'not-wheels'],
    ['9', 'teeth-out-of-range'],
    ['10', 'ok'],
    ['200', 'ok'],
    ['201', 'teeth-out-of-range'],
    ['20×40', 'ok'],
    ['20×40 21', 'too-many-wheels'],
  ])('%j: %s', (text, what) => expect(errorOf(readWheels(text))).toBe(what));
  it('comes back as it went, whatever the wheels', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 10, max: 200 }), { minLength: 1, maxLength: 40 }), (wheels) => {
        const sorted = [...wheels].sort((a, b) => a - b);
        expect(readWheels(writeWheels(wheels))).toEqual({ ok: true, value: sorted });
      }),
    );
  });
});

describe('a train as text', () => {
  it('names drivers, idlers and driven wheels in order, and the lever', () => {
    const train = {
      stages: [
        [40, 70, 60],
        [20, 80],
      ],
      box: 'A',
    };
    expect(readTrain('40/70/60  20/80 @A')).toEqual({ ok: true, value: train });
    expect(writeTrain(train)).toBe('40/70/60 20/80 @A');
    expect(readTrain('60/127')).toEqual({ ok: true, value: { stages: [[60, 127]], box: null } });
  });
  it.each([
    ['', 'empty'],
    ['@A', 'not-a-train'],
    ['40', 'not-a-train'],
    ['40/', 'not-a-train'],
    ['40/5', 'teeth-out-of-range'],
    ['20/30/40/50/60', 'too-long-a-train'],
    ['20/30 20/30 20/30 20/30', 'too-long-a-train'],
    ['20/30 @', 'not-a-train'],
  ])('%j: %s', (text, what) => expect(errorOf(readTrain(text))).toBe(what));
});

describe('a quick-change box as text', () => {
  it('holds exact ratios by name', () => {
    const read = readBox('A=1/2 B=1; C=1.25');
    expect(read).toEqual({
      ok: true,
      value: [
        { name: 'A', ratio: ratio(1, 2) },
        { name: 'B', ratio: ratio(1) },
        { name: 'C', ratio: ratio(5, 4) },
      ],
    });
    expect(read.ok && writeBox(read.value)).toBe('A=1/2 B=1 C=5/4');
  });
  it.each([
    ['', 'empty'],
    ['A', 'not-a-box'],
    ['A=0', 'not-a-box'],
    ['A=-1', 'not-a-box'],
    ['A=1/0', 'not-a-box'],
    ['A=1 A=2', 'name-twice'],
    ['__proto__=1', 'not-a-box'],
  ])('%j: %s', (text, what) => expect(errorOf(readBox(text))).toBe(what));
});
