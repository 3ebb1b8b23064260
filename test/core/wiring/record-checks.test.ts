import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankProfile, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio, read, stated, toNumber, type Stated, type Unit } from '../../../src/core/quantity';
import {
  blankCable,
  blankWiring,
  LAYOUT_IDS,
  LAYOUTS,
  withLayout,
  withoutConnector,
  withThing,
  wiringFindings,
  type Cable,
  type FindingCode,
  type LayoutId,
  type Wire,
  type WiringRecord,
} from '../../../src/core/wiring/record';
import { counter, layoutRecord, wireOf } from './record-support';

const nothing = blankProfile('Bench', 'Shed');
const is = (text: string, unit: Unit): Stated => {
  const r = read(text);
  if (!r.ok) throw new RangeError(text);
  return stated(r.value, unit);
};

const codes = (r: WiringRecord, m: MachineProfile = nothing): FindingCode[] =>
  wiringFindings(r, m).map((f) => f.code);
const found = (r: WiringRecord, code: FindingCode, m: MachineProfile = nothing) =>
  wiringFindings(r, m).find((f) => f.code === code);

const changeWire = (r: WiringRecord, id: string, part: Partial<Wire>): WiringRecord => {
  const wire = r.wires[id];
  if (!wire) throw new Error(`no wire ${id}`);
  return withThing(r, 'wires', id, { ...wire, ...part });
};
const withCable = (kind: LayoutId, part: Partial<Cable>): WiringRecord => {
  const { record, cable } = layoutRecord(kind);
  const now = record.cables[cable];
  if (!now) throw new Error('no cable');
  return withThing(record, 'cables', cable, { ...now, ...part });
};

describe('layouts to start from', () => {
  // Only what the lathe itself can tell is open: length, conductors, screen, supply, contacts, rate.
  it.each(LAYOUT_IDS)('%s: nothing is wrong, and what is open is what only the lathe can tell', (kind) => {
    const all = wiringFindings(layoutRecord(kind).record, nothing);
    expect(all.filter((f) => f.standing === 'over' || f.standing === 'near')).toEqual([]);
    const open = all.filter((f) => f.standing === 'unknown');
    expect(open.every((f) => f.missing.length > 0)).toBe(true);
    const may = ['screen-unknown', 'supply', 'reach-single', 'reach-differential', 'contacts-unknown'];
    expect(open.filter((f) => !may.includes(f.code))).toEqual([]);
    expect(all.map((f) => f.code)).toContain('ends');
    expect(all.map((f) => f.code)).toContain('pins');
  });

  it('stand side by side, each with names of its own', () => {
    const make = counter();
    const r = LAYOUT_IDS.reduce((now, kind) => withLayout(now, kind, make).record, blankWiring());
    expect(Object.values(r.connectors).map((c) => c.name)).toHaveLength(2 * LAYOUT_IDS.length);
    expect(codes(r)).not.toContain('name-twice');
    expect(codes(r)).not.toContain('pin-twice');
  });

  it('of an empty record nothing is said', () => {
    expect(wiringFindings(blankWiring(), nothing)).toEqual([]);
  });
});

describe('ends and pins', () => {
  const { record } = layoutRecord('step-single');
  const dir = wireOf(record, 'DIR');

  it('an open end is found, and so is one at a connector that is gone', () => {
    expect(found(changeWire(record, dir, { to: null }), 'end-open')).toMatchObject({
      standing: 'over',
      wires: [dir],
    });
    const at = record.wires[dir]?.to?.connector ?? '';
    const gone = withThing(record, 'connectors', at, null);
    expect(wiringFindings(gone, nothing).filter((f) => f.code === 'end-open')).toHaveLength(4);
    expect(codes(withoutConnector(record, at)).filter((c) => c === 'end-open')).toHaveLength(4);
    expect(codes(gone)).not.toContain('ends');
  });

  it('a pin beyond the connector, and one that is not known', () => {
    const end = record.wires[dir]?.to;
    if (!end) throw new Error('no end');
    expect(found(changeWire(record, dir, { to: { ...end, pin: 5 } }), 'pin-beyond')).toMatchObject({
      standing: 'over',
      pin: 5,
    });
    expect(codes(changeWire(record, dir, { to: { ...end, pin: 4 } }))).not.toContain('pin-beyond');
    expect(found(changeWire(record, dir, { to: { ...end, pin: null } }), 'pin-unknown')?.standing).toBe(
      'unknown',
    );
  });

  it('both ends on one pin count as two on a pin', () => {
    const from = record.wires[dir]?.from ?? null;
    expect(codes(changeWire(record, dir, { to: from }))).toContain('pin-twice');
  });

  it('any wire put on a pin that is taken is found, in any layout', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LAYOUT_IDS),
        fc.nat(),
        fc.nat(),
        fc.constantFrom('from', 'to'),
        (kind, i, j, side) => {
          const r = layoutRecord(kind).record;
          const ids = Object.keys(r.wires);
          const [a, b] = [ids[i % ids.length], ids[j % ids.length]];
          fc.pre(a !== b);
          const wire = r.wires[b ?? ''];
          if (!a || !wire) throw new Error('no wire');
          const twice = found(changeWire(r, a, { [side]: wire[side as 'from'] }), 'pin-twice');
          expect(twice?.standing).toBe('over');
          expect([...(twice?.wires ?? [])].sort()).toEqual([a, b].sort());
        },
      ),
    );
  });

  // What a cable of each kind works without; everything else is missed when it is gone.
  const SPARE: Partial<Record<LayoutId, string[]>> = {
    'encoder-single': ['Z'],
    'step-single': ['ENABLE'],
    display: ['TX', 'RX'],
  };
  it.each(LAYOUT_IDS)('%s: any wire that is taken out, or hangs at one end, is missed', (kind) => {
    const r = layoutRecord(kind).record;
    for (const [id, w] of Object.entries(r.wires)) {
      for (const side of ['from', 'to'])
        expect(codes(changeWire(r, id, { [side]: null }))).toContain('end-open');
      if (SPARE[kind]?.includes(w.signal)) continue;
      const without = codes(withThing(r, 'wires', id, null));
      expect(
        without.filter((c) => c === 'usual-missing' || c === 'partner-missing'),
        w.signal,
      ).not.toEqual([]);
    }
  });
});

describe('pairs', () => {
  const { record } = layoutRecord('encoder-differential');
  const [b, notB] = [wireOf(record, 'B'), wireOf(record, '/B')];

  it('halves of a signal in two pairs, or in none that is known', () => {
    const split = found(changeWire(record, notB, { pair: 1 }), 'pair-split');
    expect([...(split?.wires ?? [])].sort()).toEqual([b, notB].sort());
    expect(split?.standing).toBe('over');
    expect(found(changeWire(record, notB, { pair: null }), 'pair-unknown')?.standing).toBe('unknown');
    expect(codes(record)).toContain('pairs');
  });
  it('three wires in a pair', () => {
    expect(found(changeWire(record, wireOf(record, 'Z'), { pair: 3 }), 'pair-crowd')?.wires).toHaveLength(3);
  });
  it('a minus sign of either kind makes a pair', () => {
    const step = layoutRecord('step-differential').record;
    expect(codes(changeWire(step, wireOf(step, 'DIR-'), { signal: 'DIR−' }))).not.toContain(
      'partner-missing',
    );
    expect(codes(changeWire(step, wireOf(step, 'DIR-'), { signal: 'DIRX' }))).toContain('partner-missing');
  });
});

describe('the screen', () => {
  const at = (part: Partial<Cable>, kind: LayoutId = 'encoder-single') =>
    wiringFindings(withCable(kind, part), nothing).find((f) => f.code.startsWith('screen'));

  it.each<[Cable['bondFrom'], Cable['bondTo'], FindingCode, string]>([
    ['clamp', 'clamp', 'screen', 'within'],
    ['clamp', 'shell', 'screen', 'within'],
    ['clamp', 'capacitor', 'screen', 'within'],
    ['clamp', 'wire', 'screen-pigtail', 'near'],
    ['clamp', 'open', 'screen-one-end', 'near'],
    ['open', 'open', 'screen-open', 'over'],
    ['capacitor', 'open', 'screen-open', 'over'],
    ['clamp', null, 'screen-unknown', 'unknown'],
    [null, 'open', 'screen-unknown', 'unknown'],
  ])('%s and %s', (bondFrom, bondTo, code, standing) => {
    expect(at({ screen: 'yes', bondFrom, bondTo })).toMatchObject({ code, standing });
  });
  it('none, not known, and not asked of a display', () => {
    expect(at({ screen: 'no' })).toMatchObject({ code: 'screen-none', standing: 'near' });
    expect(at({})).toMatchObject({ code: 'screen-unknown', standing: 'unknown' });
    expect(at({ screen: 'no' }, 'display')).toBeUndefined();
    expect(at({ screen: 'yes', bondFrom: 'open', bondTo: 'open' }, 'display')?.code).toBe('screen-open');
  });
  it('of a motor’s cable at one end is too little', () => {
    const motor = { ...blankCable('W9', 'motor'), screen: 'yes', bondFrom: 'clamp', bondTo: 'open' } as const;
    expect(found(withThing(blankWiring(), 'cables', 'm', motor), 'screen-one-end')?.standing).toBe('over');
  });
});

describe('the supply along the cable', () => {
  const supplied = (part: Partial<Cable>) =>
    found(
      withCable('encoder-single', {
        length: is('10', 'm'),
        section: 'mm2-0.08',
        supply: is('5', 'V'),
        least: is('4.5', 'V'),
        current: is('100', 'mA'),
        ...part,
      }),
      'supply',
    );

  it('drops by what a control maker’s cable table prints for 10 m and 100 mA', () => {
    // 0.08 mm²: 235 Ω/km, 0.47 V there and back; of 0.5 V borne that is more than four fifths.
    const f = supplied({});
    expect(toNumber(f?.values.drop ?? ratio(0))).toBeCloseTo(0.47, 9);
    expect(f?.standing).toBe('near');
    // 0.25 mm²: 2 × 10 × 0.1 × 0.08 = 0.16 V.
    expect(supplied({ section: 'mm2-0.25' })?.standing).toBe('within');
    expect(supplied({ length: is('11', 'm') })?.standing).toBe('over');
    // 0.5 / (2 × 0.1 × 0.235) = 10.638 m.
    expect(toNumber(f?.values.reach ?? ratio(0))).toBeCloseTo(10.6383, 4);
  });
  it('is not known while anything is missing, which is named', () => {
    for (const field of ['length', 'section', 'supply', 'least', 'current'] as const) {
      const f = supplied({ [field]: null });
      expect(f?.standing).toBe('unknown');
      expect(f?.missing).toEqual([{ of: 'cable', field }]);
      expect(f?.values).toEqual({});
    }
  });
  it('below what the encoder bears at the very start', () => {
    const r = withCable('encoder-single', {
      length: is('1', 'm'),
      section: 'mm2-0.25',
      supply: is('4.5', 'V'),
      least: is('4.75', 'V'),
      current: is('50', 'mA'),
    });
    expect(found(r, 'supply-below')?.standing).toBe('over');
  });
  it('is asked of a display once one figure is entered', () => {
    expect(found(withCable('display', {}), 'supply')).toBeUndefined();
    expect(found(withCable('display', { supply: is('5', 'V') }), 'supply')?.standing).toBe('unknown');
  });
});

describe('length against rate', () => {
  const reach = (kind: LayoutId, length: string, m: MachineProfile) =>
    wiringFindings(withCable(kind, { length: is(length, 'm') }), m).find((f) => f.code.startsWith('reach'));
  const heron = EXAMPLES.heron();

  it('single-ended: 3 m near an inverter', () => {
    expect(reach('encoder-single', '2.4', heron)?.standing).toBe('within');
    expect(reach('encoder-single', '3', heron)?.standing).toBe('near');
    expect(reach('step-single', '3.1', heron)?.standing).toBe('over');
  });
  it('differential: by the rate at the highest spindle speed', () => {
    // 1200 lines at 1200 rpm, 1 to 1: 24 kHz in a channel, 48 kb/s.
    expect(reach('encoder-differential', '20', heron)?.values.rate).toEqual(ratio(48_000));
    expect(reach('encoder-differential', '200', heron)?.standing).toBe('within');
    // 100 thousand steps a second: 200 kb/s, between 1219 m at 100 and 122 m at 1000 on log scales: 1219 · (122 ÷ 1219)^0.30103 = 609.7 m.
    expect(reach('step-differential', '200', heron)?.values.reach).toEqual(ratio(609));
    // 5 MHz: 10 Mb/s, 12 m.
    const fast = { ...heron, controllerMaxSteps: is('5', 'MHz') };
    expect(reach('step-differential', '12', fast)?.standing).toBe('near');
    expect(reach('step-differential', '12.1', fast)?.standing).toBe('over');
    const faster = { ...heron, controllerMaxSteps: is('6', 'MHz') };
    expect(reach('step-differential', '1', faster)).toMatchObject({
      code: 'reach-too-fast',
      standing: 'over',
    });
  });
  it.each([
    ['10000000', 12],
    ['1000000', 122],
    ['100000', 1219],
  ])('never says more than the guide of TIA-422 at %s b/s', (rate, metres) => {
    const m = { ...heron, controllerMaxSteps: stated(ratio(BigInt(rate), 2), 'Hz') };
    const value = toNumber(reach('step-differential', '1', m)?.values.reach ?? ratio(0));
    expect(value).toBeLessThanOrEqual(metres);
    expect(value).toBeGreaterThan(0.98 * metres);
  });
  it('names what of the machine is missing', () => {
    const of = (f: ReturnType<typeof reach>) => f?.missing.map((m) => m.field);
    expect(of(reach('encoder-differential', '2', nothing))).toEqual([
      'encoderLines',
      'spindlePulley',
      'encoderPulley',
      'spindleDrive',
    ]);
    expect(of(reach('encoder-differential', '2', { ...heron, spindleSpeeds: null }))).toEqual([
      'spindleSpeeds',
    ]);
    const range = { ...heron, spindleDrive: 'range', spindleMax: null } as const;
    expect(of(reach('encoder-differential', '2', range))).toEqual(['spindleMax']);
    expect(of(reach('step-differential', '2', { ...heron, controllerMaxSteps: null }))).toEqual([
      'controllerMaxSteps',
    ]);
  });
});

describe('the stop circuit', () => {
  it.each([
    ['closed', 'contacts', 'within'],
    ['open', 'contacts-open', 'over'],
    [null, 'contacts-unknown', 'unknown'],
  ] as const)('with contacts %s', (contacts, code, standing) => {
    expect(found(withCable('stop', { contacts }), code)?.standing).toBe(standing);
  });
});

describe('mains and inverter', () => {
  const { record, cable } = layoutRecord('display');
  const rx = wireOf(record, 'RX');

  it.each(['L', 'N', 'L1', 'U', 'live', '230 V', '60V'])('%s in a signal cable', (signal) => {
    const f = found(changeWire(record, rx, { signal }), 'dangerous-cable');
    expect(f).toMatchObject({ standing: 'over', cable, wires: [rx] });
    expect(codes(changeWire(record, rx, { signal }))).toContain('dangerous-connector');
  });
  it.each(['LED', '+24 V', '48 V', 'NC', 'PE'])('%s is none', (signal) => {
    const all = codes(changeWire(record, rx, { signal }));
    expect(all.filter((c) => c.startsWith('dangerous'))).toEqual([]);
  });
  it('a power cable may share no connector with signals, but for the protective conductor', () => {
    const [at] = Object.keys(record.connectors);
    const power = withThing(record, 'cables', 'p', blankCable('W9', 'power'));
    const wire = (signal: string): Wire => ({
      cable: 'p',
      signal,
      colour: null,
      from: { connector: at ?? '', pin: 9 },
      to: null,
      pair: null,
    });
    expect(found(withThing(power, 'wires', 'p1', wire('F1')), 'dangerous-connector')?.connector).toBe(at);
    expect(found(withThing(power, 'wires', 'p1', wire('A')), 'dangerous-cable')?.wires).toEqual(['p1']);
    const alone = { ...withThing(power, 'wires', 'p1', wire('L')), wires: { p1: wire('L'), p2: wire('PE') } };
    expect(codes(alone).filter((c) => c.startsWith('dangerous'))).toEqual([]);
  });
  it('green and yellow on anything but earth', () => {
    expect(found(changeWire(record, rx, { colour: 'GN/YE' }), 'earth-colour')?.standing).toBe('over');
    expect(codes(changeWire(record, rx, { colour: 'GN/YE', signal: 'PE' }))).not.toContain('earth-colour');
  });
});

it('a name given twice is said once', () => {
  const { record, cable } = layoutRecord('display');
  const [first] = Object.entries(record.connectors);
  const c = record.cables[cable];
  if (!first || !c) throw new Error('nothing there');
  const r = withThing(record, 'cables', cable, { ...c, name: first[1].name });
  expect(found(r, 'name-twice')).toMatchObject({ standing: 'near', names: [first[1].name] });
});

it('layouts use each pin once, within the connector', () => {
  for (const { from, to, rows } of Object.values(LAYOUTS))
    for (const [pins, at] of [[from[1], 2] as const, [to[1], 3] as const]) {
      const used = rows.map((row) => row[at]);
      expect(new Set(used).size).toBe(used.length);
      expect(Math.max(...used)).toBeLessThanOrEqual(pins);
    }
});
