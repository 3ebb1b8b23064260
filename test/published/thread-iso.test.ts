import { describe, expect, it } from 'vitest';
import { ratio, stated } from '../../src/core/quantity';
import { limits } from '../../src/core/thread/limits';
import type { Thread } from '../../src/core/thread/thread';
import { thread } from './printed';

/** Refusal of a class for a thread of any diameter and pitch in mm/100; "ok" where there is none. */
const refusal = (d: number, pitchHundredths: number, cls: string): string => {
  const t: Thread = {
    ...thread('iso-fine:M10x1'),
    major: stated(ratio(d), 'mm'),
    pitch: stated(ratio(pitchHundredths, 100), 'mm'),
  };
  const l = limits(t, cls);
  return l.ok ? 'ok' : l.refusal;
};

describe('what ISO 965-1 does not define is refused with the reason', () => {
  it.each([
    ['iso-coarse:M1', '6H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M1.2', '6H', 'no-grade-at-this-pitch'],
    ['iso-fine:M2x0.25', '6H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M3', '7H', 'ok'],
    ['iso-coarse:M2', '7H', 'no-grade-at-this-pitch'],
    ['iso-coarse:M3', '8g', 'no-grade-at-this-pitch'],
    ['iso-coarse:M2', '6e', 'no-deviation-at-this-pitch'],
    ['iso-coarse:M1', '6f', 'no-deviation-at-this-pitch'],
    ['iso-coarse:M10', '5Q', 'class-unreadable'],
    ['iso-coarse:M10', '6g6H', 'class-unreadable'],
    ['iso-coarse:M10', '', 'class-unreadable'],
    ['iso-coarse:M10', '9H', 'class-not-in-standard'],
    ['iso-coarse:M10', '7g', 'class-not-in-standard'],
    ['optical:M58x0.75', '6g', 'pitch-too-fine-for-diameter'],
    ['optical:M28x0.6', '6g', 'pitch-not-in-standard'],
  ])('%s %s', (id, cls, code) => {
    const l = limits(thread(id), cls);
    expect(l.ok ? 'ok' : l.refusal).toBe(code);
  });

  it('a pitch that no ISO thread has, and a diameter beyond the tables', () => {
    expect(refusal(10, 110, '6g')).toBe('pitch-not-in-standard');
    expect(refusal(400, 600, '6g')).toBe('diameter-not-in-standard');
    expect(refusal(10, 600, '6g')).toBe('pitch-not-in-standard');
  });
});
