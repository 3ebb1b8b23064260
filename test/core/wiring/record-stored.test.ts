import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ratio, stated } from '../../../src/core/quantity';
import {
  BONDS,
  CABLE_KINDS,
  COLOURS,
  isWireColour,
  LAYOUT_IDS,
  WIRING_BOUNDS,
  withThing,
  type WiringRecord,
} from '../../../src/core/wiring/record';
import { readWiring, storeWiring } from '../../../src/core/wiring/record/stored';
import { layoutRecord } from './record-support';

const text = (most: number) => fc.string({ maxLength: most });
const orNull = <T>(a: fc.Arbitrary<T>) => fc.option(a, { nil: null });
const id = fc.stringMatching(/^[a-z0-9]{1,12}$/).filter(
  // Names that an object has of itself; the app's own are random figures.
  (s) => s !== 'constructor' && s !== 'prototype',
);
const figure = orNull(fc.integer({ min: 1, max: 50 }).map((n) => stated(ratio(n), 'V')));
const end = orNull(fc.record({ connector: id, pin: orNull(fc.integer({ min: 1, max: 100 })) }));
const record: fc.Arbitrary<WiringRecord> = fc.record({
  connectors: fc.dictionary(
    id,
    fc.record({
      name: text(12),
      place: fc.constantFrom('encoder', 'other'),
      pins: fc.integer({ min: 1, max: 100 }),
    }),
  ),
  cables: fc.dictionary(
    id,
    fc.record({
      name: text(12),
      kind: fc.constantFrom(...CABLE_KINDS),
      length: orNull(fc.integer({ min: 1, max: 200 }).map((n) => stated(ratio(n), 'm'))),
      section: fc.constantFrom(null, 'mm2-0.25', 'awg-24'),
      screen: fc.constantFrom(null, 'yes', 'no'),
      bondFrom: orNull(fc.constantFrom(...BONDS)),
      bondTo: orNull(fc.constantFrom(...BONDS)),
      supply: figure,
      least: figure,
      current: orNull(fc.integer({ min: 1, max: 5000 }).map((n) => stated(ratio(n), 'mA'))),
      contacts: fc.constantFrom(null, 'closed', 'open'),
    }),
  ),
  wires: fc.dictionary(
    id,
    fc.record({
      cable: id,
      signal: text(12),
      colour: orNull(fc.constantFrom('WH', 'WH/GN')),
      from: end,
      to: end,
      pair: orNull(fc.integer({ min: 1, max: 50 })),
    }),
  ),
  ticks: fc.dictionary(id, fc.record({ at: fc.nat(), print: text(200) })),
});

const plain = (x: unknown): unknown =>
  JSON.parse(JSON.stringify(x, (_k, v: unknown) => (typeof v === 'bigint' ? `${v}` : v)));

describe('a wiring record on the disk', () => {
  it('comes back as it was stored, whatever is in it', () => {
    fc.assert(
      fc.property(record, (r) => {
        const back = readWiring(structuredClone(storeWiring(r)));
        expect(back).not.toBeNull();
        expect(plain(back)).toEqual(plain(r));
      }),
    );
  });
  it('of every layout too', () => {
    for (const kind of LAYOUT_IDS) {
      const { record: r } = layoutRecord(kind);
      expect(readWiring(storeWiring(r))).toEqual(r);
    }
  });

  const { record: r, cable } = layoutRecord('stop');
  const stored = storeWiring(r) as unknown as Record<string, Record<string, Record<string, unknown>>>;
  const spoilt = (part: string, thing: unknown): unknown => ({
    ...stored,
    [part]: { ...stored[part], x: thing },
  });

  it.each<[string, unknown]>([
    ['nothing', null],
    ['a list', []],
    ['a part missing', { ...stored, wires: undefined }],
    ['a kind of a later version', spoilt('cables', { ...stored.cables?.[cable], kind: 'optical' })],
    ['a colour that is none', spoilt('wires', { ...Object.values(stored.wires ?? {})[0], colour: 'WH/WH' })],
    ['pin 0', spoilt('wires', { ...Object.values(stored.wires ?? {})[0], from: { connector: 'x', pin: 0 } })],
    ['a name too long', spoilt('connectors', { name: 'x'.repeat(13), place: 'other', pins: 2 })],
    ['a connector with half a pin', spoilt('connectors', { name: 'x', place: 'other', pins: 2.5 })],
    ['an id that is none', { ...stored, connectors: { 'A b': { name: 'x', place: 'other', pins: 2 } } }],
    [
      'more than it may hold',
      {
        ...stored,
        connectors: Object.fromEntries(
          Array.from({ length: 4 * WIRING_BOUNDS.connectors + 1 }, (_, i) => [
            `x${i}`,
            { name: `X${i}`, place: 'other', pins: 1 },
          ]),
        ),
      },
    ],
  ])('with %s isn’t read', (_name, body) => {
    expect(readWiring(body)).toBeNull();
  });
  it('a figure that can’t be read is not known, and the rest stays', () => {
    const now = r.cables[cable];
    if (!now) throw new Error('no cable');
    const body = storeWiring(withThing(r, 'cables', cable, { ...now, length: stated(ratio(3), 'm') })) as {
      cables: Record<string, object>;
    };
    const read = readWiring({
      ...body,
      cables: { [cable]: { ...body.cables[cable], length: { n: '1', d: '0' } } },
    });
    expect(read?.cables[cable]?.length).toBeNull();
    expect(Object.keys(read?.wires ?? {})).toHaveLength(4);
    // Longer than a cable of signals is.
    const far = { ...now, length: stated(ratio(300), 'm') };
    expect(readWiring(storeWiring(withThing(r, 'cables', cable, far)))?.cables[cable]?.length).toBeNull();
  });
});

it('colours are the twelve codes of IEC 60757, alone or two of them', () => {
  expect([...COLOURS].sort()).toEqual([
    'BK',
    'BN',
    'BU',
    'GN',
    'GY',
    'OG',
    'PK',
    'RD',
    'TQ',
    'VT',
    'WH',
    'YE',
  ]);
  for (const good of ['WH', 'WH/GN', 'GN/YE']) expect(isWireColour(good)).toBe(true);
  for (const bad of ['', 'wh', 'WH/', '/WH', 'WH/WH', 'WH/GN/BN', 'XX', null, 3])
    expect(isWireColour(bad)).toBe(false);
});
