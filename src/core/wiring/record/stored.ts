import * as v from 'valibot';
import { checkNumber, readStored, storeStated } from '../../machine';
import { isWireColour } from './colour';
import { CABLE_FIELD_NAMES, CABLE_FIELDS, type CableField } from './fields';
import { SECTION_IDS } from './section';
import { BONDS, CABLE_KINDS, PLACES, WIRING_BOUNDS, type Cable, type WiringRecord } from './shape';

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const whole = v.pipe(v.number(), v.integer(), v.minValue(1));
const name = text(WIRING_BOUNDS.name);

const ConnectorShape = v.object({ name, place: v.picklist(PLACES), pins: whole });
const CableShape = v.object({
  name,
  kind: v.picklist(CABLE_KINDS),
  length: v.unknown(),
  section: v.nullable(v.picklist(SECTION_IDS)),
  screen: v.nullable(v.picklist(['yes', 'no'])),
  bondFrom: v.nullable(v.picklist(BONDS)),
  bondTo: v.nullable(v.picklist(BONDS)),
  supply: v.unknown(),
  least: v.unknown(),
  current: v.unknown(),
  contacts: v.nullable(v.picklist(['closed', 'open'])),
});
const EndShape = v.nullable(v.object({ connector: v.string(), pin: v.nullable(whole) }));
const WireShape = v.object({
  cable: v.string(),
  signal: text(WIRING_BOUNDS.signal),
  colour: v.nullable(v.string()),
  from: EndShape,
  to: EndShape,
  pair: v.nullable(whole),
});
const TickShape = v.object({ at: v.pipe(v.number(), v.finite()), print: text(400) });

const RecordShape = v.object({
  connectors: v.record(v.string(), ConnectorShape),
  cables: v.record(v.string(), CableShape),
  wires: v.record(v.string(), WireShape),
  ticks: v.record(v.string(), TickShape),
});
type Read = v.InferOutput<typeof RecordShape>;

/** Two tabs may have filled a record each before they met: what they merged to is read too, and no more is added to it. */
const MERGED = 4;

const isId = (id: string): boolean => /^[a-z0-9-]{1,100}$/.test(id) && id !== 'constructor';

/** Ids, numbers and colours are such as can be. A pin may be beyond its connector: that is found and said. */
const isSound = (r: Read): boolean => {
  const { pins, pair } = WIRING_BOUNDS;
  const wires = Object.values(r.wires);
  const ends = wires.flatMap((w) => [w.from, w.to]).filter((e) => e !== null);
  return (
    [...Object.values(r).flatMap((part) => Object.keys(part)), ...wires.map((w) => w.cable)].every(isId) &&
    ends.every((e) => isId(e.connector) && (e.pin ?? 1) <= pins) &&
    wires.every((w) => (w.pair ?? 1) <= pair && (w.colour === null || isWireColour(w.colour))) &&
    Object.values(r.connectors).every((c) => c.pins <= pins)
  );
};

/** Whether a record holds no more than it may, or so many times as much. */
export const fitsWiring = (r: WiringRecord, times = 1): boolean =>
  (['connectors', 'cables', 'wires', 'ticks'] as const).every(
    (part) => Object.keys(r[part]).length <= times * WIRING_BOUNDS[part],
  );

const eachCable = <A, B>(cables: Readonly<Record<string, A>>, change: (cable: A) => B): Record<string, B> =>
  Object.fromEntries(Object.entries(cables).map(([id, cable]) => [id, change(cable)]));

export const storeWiring = (r: WiringRecord): Record<string, unknown> => ({
  ...r,
  cables: eachCable(r.cables, (cable) => ({
    ...cable,
    ...Object.fromEntries(CABLE_FIELD_NAMES.map((f) => [f, cable[f] && storeStated(cable[f])])),
  })),
});

/** A figure of a cable; one that can't be read is not known. */
const figure = (field: CableField, x: unknown): Cable[CableField] => {
  const value = readStored(x);
  return value && checkNumber(CABLE_FIELDS[field], value).ok ? value : null;
};

/** A record from the disk; null for what can't be read whole: it is left as it is, and said. Never throws. */
export const readWiring = (body: unknown): WiringRecord | null => {
  const read = v.safeParse(RecordShape, body);
  if (!read.success || !isSound(read.output)) return null;
  const record: WiringRecord = {
    ...(read.output as Read & Pick<WiringRecord, 'wires'>),
    cables: eachCable(read.output.cables, (cable) => ({
      ...cable,
      length: figure('length', cable.length),
      supply: figure('supply', cable.supply),
      least: figure('least', cable.least),
      current: figure('current', cable.current),
    })),
  };
  return fitsWiring(record, MERGED) ? record : null;
};
