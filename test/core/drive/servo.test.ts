import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choosePulses, electronicGear, mostPulses } from '../../../src/core/drive/servo';
import { servoSheet, sheetRow } from '../../../src/core/figures/settings-sheet';
import { blankJob } from '../../../src/core/job';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio } from '../../../src/core/quantity';
import { is, QUIET } from '../figures/support';

/** Own calculations: 8 tpi through 2 to 1, so a turn of the motor moves the carriage 127/80 mm. */
const bittern = (over = {}) => ({
  machine: { ...EXAMPLES.bittern(), ...over },
  job: blankJob(),
  context: QUIET,
});

describe('the electronic gear of a servo drive', () => {
  it('10 000 counts for 4000 pulses are 5 to 2', () => {
    expect(electronicGear(10_000n, 4000n, 65_535n)).toEqual({ top: 5n, bottom: 2n, exact: true });
  });
  it('17 bits for 10 000 pulses are 8192 to 625, and not exact where the drive takes no such number', () => {
    expect(electronicGear(131_072n, 10_000n, 32_767n)).toEqual({ top: 8192n, bottom: 625n, exact: true });
    expect(electronicGear(131_072n, 10_000n, 5000n)?.exact).toBe(false);
  });
  it('at 2500 rpm an input of 250 kHz bears 4800 pulses a rev with a margin of 0.8', () => {
    // 250 000 × 0.8 × 60 ÷ 2500.
    expect(mostPulses(ratio(250_000), ratio(4, 5), ratio(2500))).toBe(4800n);
  });
  it('4000 is the largest usual number under 4800; a gear that must be exact may ask for less', () => {
    const x = { encoder: 10_000n, most: 65_535n, top: 4800n, perMotorRev: ratio(127, 80) };
    expect(choosePulses(x)).toEqual({ pulses: 4000n, gear: { top: 5n, bottom: 2n, exact: true } });
    // 10 000 ÷ 4000 = 5/2 does not fit in numbers up to 4; 10 000 ÷ 2500 = 4 does.
    expect(choosePulses({ ...x, most: 4n })?.pulses).toBe(2500n);
  });
  it('none where the input bears too little for a fine step: 127/80 mm asks for 318 pulses at least', () => {
    const x = { encoder: 10_000n, most: 65_535n, perMotorRev: ratio(127, 80) };
    expect(choosePulses({ ...x, top: 399n })).toBeNull();
    expect(choosePulses({ ...x, top: 400n })?.pulses).toBe(400n);
  });
  it('whatever it chooses fits the input, is exact and fine enough', () => {
    const big = (a: number, b: number) => fc.integer({ min: a, max: b }).map(BigInt);
    fc.assert(
      fc.property(
        big(100, 200_000),
        big(1, 70_000),
        big(1, 100_000),
        fc.integer({ min: 1, max: 400 }),
        (encoder, most, top, tenths) => {
          const got = choosePulses({ encoder, most, top, perMotorRev: ratio(tenths, 10) });
          if (!got) return;
          expect(got.pulses <= top && got.gear.top <= most && got.gear.bottom <= most).toBe(true);
          expect(got.gear.top * got.pulses).toBe(got.gear.bottom * encoder);
          // perMotorRev ÷ pulses ≤ 1/200 mm.
          expect(BigInt(tenths) * 20n <= got.pulses).toBe(true);
        },
      ),
    );
  });
});

describe('the settings sheet', () => {
  it('Bittern: 4000 pulses, 5 to 2, 166.7 of 250 kHz at 2500 rpm, a step of 0.397 µm; nothing better is asked', () => {
    const s = servoSheet(bittern());
    expect(s).toMatchObject({
      pulses: 4000n,
      gear: { top: 5n, bottom: 2n, exact: true },
      fine: true,
      better: null,
    });
    expect([s?.rate, s?.bears, s?.step]).toEqual([ratio(500_000, 3), ratio(250_000), ratio(127, 320_000)]);
  });
  it('10 000 pulses are too fast: 4000 are offered', () => {
    expect(servoSheet(bittern({ servoPulses: is('10000', 'steps') }))?.better?.pulses).toBe(4000n);
  });
  it('200 pulses are too coarse: 4000 are offered', () => {
    const s = servoSheet(bittern({ servoPulses: is('200', 'steps') }));
    expect([s?.fine, s?.better?.pulses]).toEqual([false, 4000n]);
  });
  it('what isn’t known is null, never fine', () => {
    expect(servoSheet(bittern({ servoEncoder: null }))).toMatchObject({ gear: null, better: null });
    expect(servoSheet(bittern({ motorMaxRpm: null }))).toMatchObject({ rate: null, better: null });
    expect(servoSheet(bittern({ screwPitch: null }))).toMatchObject({ step: null, fine: null });
    expect(servoSheet(bittern({ servoPulses: null }))).toBeNull();
    expect(servoSheet({ ...bittern(), machine: EXAMPLES.heron() })).toBeNull();
  });
  it('a row is the thread’s own, not the job’s: 1875/2032 for 1.5 mm, three times it for three starts', () => {
    const m10 = { kind: 'catalogue', id: 'iso-coarse:M10' } as const;
    const row = sheetRow(bittern(), m10, 1);
    expect(row.held.value?.held).toEqual({ top: 1875n, bottom: 2032n, exact: true });
    expect(sheetRow(bittern(), m10, 3).held.value?.held).toEqual({ top: 5625n, bottom: 2032n, exact: true });
    expect(row.lead?.mm).toEqual(ratio(3, 2));
  });
});
