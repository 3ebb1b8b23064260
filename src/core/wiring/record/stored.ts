import * as v from 'valibot';
import { checkNumber, readStored, storeStated } from '../../machine';
import { isWireColour, type WireColour } from './colour';
import { CABLE_FIELD_NAMES, CABLE_FIELDS, type CableField } from './fields';
import { SECTION_IDS } from './section';
import { BONDS, CABLE_KINDS, PLACES, WIRING_BOUNDS, type Cable, type WiringRecord } from './shape';

const Id = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,99}$/));
const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const upTo = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(most));
const name = text(WIRING_BOUNDS.name);
const orNull = v.nullable;

const ConnectorShape = v.object({ name, place: v.picklist(PLACES), pins: upTo(WIRING_BOUNDS.pins) });
const CableShape = v.object({
  name,
  kind: v.picklist(CABLE_KINDS),
  length: v.unknown(),
  section: orNull(v.picklist(SECTION_IDS)),
  screen: orNull(v.picklist(['yes', 'no'])),
  bondFrom: orNull(v.picklist(BONDS)),
  bondTo: orNull(v.picklist(BONDS)),
  supply: v.unknown(),
  least: v.unknown(),
  current: v.unknown(),
  contacts: orNull(v.picklist(['closed', 'open'])),
});
// A pin may be beyond its connector: that is found and said, not thrown away.
const EndShape = orNull(v.object({ connector: Id, pin: orNull(upTo(WIRING_BOUNDS.pins)) }));
const WireShape = v.object({
  cable: Id,
  signal: text(WIRING_BOUNDS.signal),
  colour: orNull(v.custom<WireColour>(isWireColour)),
  from: EndShape,
  to: EndShape,
  pair: orNull(upTo(WIRING_BOUNDS.pair)),
});
const TickShape = v.object({ at: v.pipe(v.number(), v.finite()), print: text(400) });

/** Two tabs may have filled a record each before they met: what they merged to is read too, and no more is added to it. */
const MERGED = 4;

const RecordShape = v.object({
  connectors: v.record(Id, ConnectorShape),
  cables: v.record(Id, CableShape),
  wires: v.record(Id, WireShape),
  ticks: v.record(Id, TickShape),
});

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
  if (!read.success) return null;
  const record: WiringRecord = {
    ...read.output,
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
