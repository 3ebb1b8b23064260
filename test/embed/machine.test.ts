import { describe, expect, it } from 'vitest';
import { storeProfile } from '../../src/core/machine';
import { EXAMPLES } from '../../src/core/machine/examples';
import { inBase, ratio } from '../../src/core/quantity';
import { readMachine } from '../../src/embed/machine';

const base = (x: unknown) => inBase(x as Parameters<typeof inBase>[0]);

describe('a machine in a page’s words', () => {
  it('keeps numbers exact and in the unit that was said', () => {
    const { profile, misread } = readMachine(
      {
        ...{ screwPitch: '8 tpi', encoderLines: 1200, controllerMaxSteps: '100 kHz', backlash: '0,12' },
        ...{ screwEfficiency: '30 %', pulseHigh: '2.5 µs', gearboxRatio: '1 1/2' },
      },
      'Machine',
    );
    expect(misread).toEqual([]);
    expect(profile.screwPitch?.unit).toBe('tpi');
    expect(base(profile.screwPitch)).toEqual(ratio(127, 40));
    expect(base(profile.encoderLines)).toEqual(ratio(1200));
    expect(base(profile.controllerMaxSteps)).toEqual(ratio(100_000));
    expect(base(profile.backlash)).toEqual(ratio(3, 25));
    expect(base(profile.screwEfficiency)).toEqual(ratio(3, 10));
    expect(base(profile.pulseHigh)).toEqual(ratio(1, 400_000));
    expect(base(profile.gearboxRatio)).toEqual(ratio(3, 2));
  });

  it('takes spindle speeds in a row, in order', () => {
    const { profile } = readMachine({ spindleSpeeds: '270 80; 160' }, 'Machine');
    expect(profile.spindleSpeeds?.map(base)).toEqual([ratio(80), ratio(160), ratio(270)]);
    expect(profile.spindleDrive).toBe('speeds');
  });

  it('leaves what isn’t said not known, but for the safety factor that every machine starts with', () => {
    const { profile } = readMachine({}, 'Machine');
    const { safetyFactor, ...rest } = profile;
    expect(base(safetyFactor)).toEqual(ratio(3, 2));
    expect(Object.values(rest).filter((v) => typeof v === 'object' && v !== null)).toEqual([]);
  });

  it.each([
    ['screwPitch', '3 furlongs', 'wrong-unit'],
    ['screwPitch', 'three', 'wrong-unit'],
    ['screwPitch', '300 mm', 'out-of-range'],
    ['encoderLines', '1200.5', 'not-whole'],
    ['spindleSpeeds', '80 x', 'not-a-number'],
    ['motorKind', 'steam', 'not-an-option'],
    ['colourOfPaint', 'grey', 'not-an-option'],
  ])('says that %s can’t be %s, and takes it as not known', (field, said, code) => {
    const { profile, misread } = readMachine({ [field]: said }, 'Machine');
    expect(misread).toEqual([{ field, refusal: expect.objectContaining({ code }) as object }]);
    expect((profile as Record<string, unknown>)[field] ?? null).toBeNull();
  });

  it('reads a machine’s body as a file has it', () => {
    const heron = EXAMPLES.heron();
    expect(readMachine(storeProfile(heron), 'Machine')).toEqual({ profile: heron, misread: [] });
  });
});
