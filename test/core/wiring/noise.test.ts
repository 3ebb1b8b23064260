import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankProfile, withFields, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { inBase, ratio, read, stated, toNumber, type Unit } from '../../../src/core/quantity';
import {
  CALCULATIONS,
  NOISE_FIELDS,
  NOISE_NAMES,
  OUTPUTS,
  SUMS,
  type NoiseGiven,
  type NoiseName,
  type Output,
  type SumId,
} from '../../../src/core/wiring/noise';

type Entered = Partial<Record<NoiseName, string>>;
const base = (text: string): number => {
  const [number = '', unit = ''] = text.split(' ');
  const r = read(number);
  if (!r.ok) throw new RangeError(text);
  return toNumber(inBase(stated(r.value, unit as Unit)));
};

/** An encoder of 1024 lines on the spindle itself, its channels a quarter apart. */
const plain: MachineProfile = {
  ...EXAMPLES.heron(),
  encoderLines: stated(ratio(1024), 'lines'),
  encoderPhaseError: stated(ratio(0), 'deg'),
};

const given = (
  entered: Entered,
  more: { profile?: MachineProfile; rpm?: number; output?: Output } = {},
): NoiseGiven => ({
  entered: (name) => {
    const text = entered[name];
    return text === undefined ? null : base(text);
  },
  profile: more.profile ?? plain,
  rpm: more.rpm === undefined ? null : ratio(more.rpm),
  output: more.output ?? null,
});
const work = (id: SumId, ...args: Parameters<typeof given>) => {
  const worked = CALCULATIONS[id].work(given(...args));
  return { ...worked, line: (code: string) => worked.lines.find((l) => l.code === code) };
};

describe('every calculation', () => {
  it.each(SUMS)('%s: with nothing known nothing is fine, and what is asked first is missing', (id) => {
    const { standing, missing, lines } = work(id, {}, { profile: blankProfile('', '') });
    expect(standing === null || standing === 'unknown').toBe(true);
    expect(missing).toContain(CALCULATIONS[id].asks[0]);
    expect(lines.every((l) => l.value === null || l.code.startsWith('reach-'))).toBe(true);
  });

  it('never says within or near while something is missing, whatever is known', () => {
    const any = fc.record(
      Object.fromEntries(
        NOISE_NAMES.map((name) => {
          const { min, max, units } = NOISE_FIELDS[name];
          return [name, fc.constantFrom(`${min} ${units[0]}`, `${max} ${units[0]}`)];
        }),
      ),
      { requiredKeys: [] },
    ) as fc.Arbitrary<Entered>;
    const lacking = fc.constantFrom(
      ...(['encoderLines', 'encoderPulley', 'encoderPhaseError', 'notes'] as const),
    );
    fc.assert(
      fc.property(
        any,
        fc.constantFrom(...SUMS),
        lacking,
        fc.constantFrom(...OUTPUTS),
        (entered, id, f, o) => {
          const profile = withFields(plain, { [f]: f === 'notes' ? '' : null });
          const worked = work(id, entered, {
            profile,
            output: o,
            ...('rpm' in entered ? { rpm: 2000 } : {}),
          });
          if (worked.missing.length > 0) expect(['unknown', 'over', null]).toContain(worked.standing);
          for (const l of worked.lines) expect(Number.isNaN(l.value ?? 0)).toBe(false);
        },
      ),
      { numRuns: 400 },
    );
  });
});

describe('open collector at 1024 lines and 2000 rpm: 7.3 µs between edges (worked by hand)', () => {
  const cable = { length: '5 m', perMetre: '100 pF/m', inputCapacitance: '47 pF', threshold: '70 percent' };
  const rest = { ...cable, pullVolts: '5 V', sink: '20 mA' } as const;

  it('4.7 kΩ comes 3.1 µs late: too much; 1 kΩ 0.66 µs: within', () => {
    const slow = work('pull-up', { ...rest, pullUp: '4.7 kohm' }, { rpm: 2000 });
    expect((slow.line('delay')?.value ?? 0) * 1e6).toBeCloseTo(3.095, 3);
    expect((slow.line('delay-most')?.value ?? 0) * 4e6).toBeCloseTo(7.324, 3);
    expect(slow.standing).toBe('over');
    const quick = work('pull-up', { ...rest, pullUp: '1 kohm' }, { rpm: 2000 });
    expect(quick.standing).toBe('within');
    expect(quick.missing).toEqual([]);
  });

  it('its largest pull-up is just within, a little more is over', () => {
    const most = work('pull-up', { ...rest, pullUp: '1 kohm' }, { rpm: 2000 }).line('largest')?.value ?? 0;
    for (const [share, standing] of [
      [0.999, 'within'],
      [1.001, 'over'],
    ] as const) {
      const pullUp = `${(most * share).toFixed(3)} ohm`;
      expect(work('pull-up', { ...rest, pullUp }, { rpm: 2000 }).standing).toBe(standing);
    }
  });

  it('a sink of 5 mA can’t hold 5 V over 680 Ω; where it can hold nothing that is quick enough that is said', () => {
    expect(
      work('pull-up', { ...rest, sink: '5 mA', pullUp: '680 ohm' }, { rpm: 2000 }).line('sunk')?.standing,
    ).toBe('over');
    const none = work('pull-up', { ...rest, sink: '1 mA', pullUp: '1 kohm' }, { rpm: 2000 });
    expect(none.notes).toContain('no-pull-up');
  });

  it('without the phase error: too long for the best encoder is over, else not known', () => {
    const profile = withFields(plain, { encoderPhaseError: null });
    const at = (pullUp: string) => work('pull-up', { ...rest, pullUp }, { rpm: 2000, profile });
    expect(at('4.7 kohm').line('delay')?.standing).toBe('over');
    expect(at('1 kohm').line('delay')?.standing).toBe('unknown');
    expect(at('1 kohm').missing).toEqual(['encoderPhaseError']);
    expect(at('1 kohm').line('delay-most-best')?.value).not.toBeNull();
  });
});

describe('cable length', () => {
  it('5 m: enough for a pair, too long single-ended near an inverter, just as far as an open collector goes', () => {
    const at = (output: Output) => work('reach', { length: '5 m' }, { rpm: 2000, output }).standing;
    expect(at('differential')).toBe('within');
    expect(at('single')).toBe('over');
    expect(at('collector')).toBe('near');
  });
  it('asks for the speed where the rate counts, and not elsewhere', () => {
    expect(work('reach', { length: '2 m' }, { output: 'differential' }).missing).toEqual(['rpm']);
    expect(work('reach', { length: '2 m' }, { output: 'single' })).toMatchObject({
      missing: [],
      standing: 'within',
    });
  });
  it('of more than 10 Mb/s the guide says nothing: not known', () => {
    const profile = { ...plain, encoderLines: stated(ratio(100_000), 'lines') };
    const fast = work('reach', { length: '1 m' }, { rpm: 4000, output: 'differential', profile });
    expect(fast.standing).toBe('unknown');
    expect(fast.notes).toEqual(['beyond-guide']);
  });
});

describe('supply', () => {
  // 138 Ω/km, 0.15 A, 5 to 4.75 V: 6.04 m (worked by hand).
  const fed = { volts: '5 V', least: '4.75 V', draw: '150 mA', perKm: '138 ohm/km' } as const;
  it.each([
    ['4 m', 'within'],
    ['5 m', 'near'],
    ['6.1 m', 'over'],
  ] as const)('%s: %s', (length, standing) => {
    const worked = work('supply', { ...fed, length });
    expect(worked.standing).toBe(standing);
    expect(worked.line('longest')?.value).toBeCloseTo(6.0386, 3);
    expect((worked.line('arrives')?.value ?? 0) >= 4.75).toBe(standing !== 'over');
  });
  it('its data sheet counts before area, area before AWG', () => {
    const each = (entered: Entered) => work('supply', entered).line('per-metre')?.value ?? NaN;
    expect(each({ awg: '24 count', area: '1 mm2', perKm: '138 ohm/km' })).toBeCloseTo(0.138, 9);
    expect(each({ awg: '24 count', area: '1 mm2' })).toBeCloseTo(0.0195, 6);
    expect(each({ awg: '24 count' })).toBeCloseTo(0.0842, 3);
  });
});

describe('input filter between the noise and a third of 7.3 µs', () => {
  it.each([
    ['2 us', '0.5 us', 'within'],
    ['2.5 us', '0.5 us', 'over'],
    ['0.4 us', '0.5 us', 'over'],
  ] as const)('%s against noise of %s: %s', (filterTime, noiseTime, standing) => {
    expect(work('input', { filterTime, noiseTime }, { rpm: 2000 }).standing).toBe(standing);
  });
  it('says so when no filter does', () => {
    expect(work('input', { filterTime: '2 us', noiseTime: '3 us' }, { rpm: 2000 }).notes).toEqual([
      'no-filter',
    ]);
  });
});

describe('supply filter', () => {
  const parts = { inductance: '1 mH', capacitance: '1 uF', source: '0.1 ohm', load: '100 ohm' } as const;
  it('near its corner the carrier is amplified: over; at 8 kHz it hardly loses: near; far above within', () => {
    expect(work('low-pass', { ...parts, carrier: '5 kHz' }).standing).toBe('over');
    expect(work('low-pass', { ...parts, carrier: '8 kHz' }).standing).toBe('near');
    expect(work('low-pass', { ...parts, carrier: '40 kHz' }).standing).toBe('within');
  });
  it('a multiple at the corner counts too', () => {
    const low = work('low-pass', { ...parts, carrier: '2.5 kHz' });
    expect(low.line('multiple')).toMatchObject({ standing: 'over', at: 5000 });
  });
  it('half a damping is named as missing, and damps nothing', () => {
    const half = work('low-pass', { ...parts, carrier: '40 kHz', dampResistance: '33 ohm' });
    expect(half.missing).toEqual(['dampCapacitance']);
    expect(half.standing).toBe('unknown');
  });
  it('without source and load only the ideal is known', () => {
    const bare = work('low-pass', { inductance: '1 mH', capacitance: '1 uF', carrier: '40 kHz' });
    expect(bare.standing).toBe('unknown');
    expect(bare.shape?.part).toBeNull();
    expect(bare.line('amplifies-ideal')?.value).toBeCloseTo(5032.92 * Math.SQRT2, 1);
  });
});
