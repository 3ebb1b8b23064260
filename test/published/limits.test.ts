import { describe, expect, it } from 'vitest';
import { pulseRate } from '../../src/core/drive';
import { decimalText, ratio } from '../../src/core/quantity';

describe('pulse times and step frequency', () => {
  // Data sheets of step driver circuits: least high and low time of 1 µs each beside 500 kHz, of 1.9 µs each beside
  // 250 kHz (stated rounded down).
  const us = (n: number) => ratio(n, 10_000_000);
  it('1 µs and 1 µs: 500 kHz', () => {
    expect(pulseRate(us(10), us(10))).toEqual(ratio(500_000));
  });
  it('1.9 µs and 1.9 µs: 250 kHz and a little', () => {
    const rate = pulseRate(us(19), us(19));
    expect(decimalText(rate, { places: 0, rule: 'down' })).toBe('263157');
  });
});
