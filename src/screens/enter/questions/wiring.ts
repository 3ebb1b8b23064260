import type { NumberField } from '../../../core/machine';
import { ratio, stated, type Stated } from '../../../core/quantity';
import {
  CABLE_FIELDS,
  pinField,
  PINS_FIELD,
  WIRING_BOUNDS,
  withThing,
  type CableField,
  type WiringRecord,
} from '../../../core/wiring/record';
import { cableFieldName, wiringText as t } from '../../../text/wiring';
import { changeWiring } from '../../../state/wiring';
import type { App } from '../../../state';
import { plainUnit, type Question } from './question';

interface Asked {
  readonly label: string;
  readonly field: NumberField;
  readonly now: Stated | null;
  readonly put: (value: Stated | null) => WiringRecord;
}

const whole = (n: number | null): Stated | null => (n === null ? null : stated(ratio(n), 'count'));
const count = (s: Stated | null): number | null => s && Number(s.value.n);

const asked = (r: WiringRecord, part: string, id: string, name: string): (Asked & { must?: true }) | null => {
  const [cable, connector, wire] = [r.cables[id], r.connectors[id], r.wires[id]];
  if (part === 'cable' && cable && Object.hasOwn(CABLE_FIELDS, name)) {
    const field = name as CableField;
    return {
      label: `${cable.name} · ${cableFieldName[field]}`,
      field: CABLE_FIELDS[field],
      now: cable[field],
      put: (value) => withThing(r, 'cables', id, { ...cable, [field]: value }),
    };
  }
  if (part === 'connector' && connector)
    return {
      label: `${connector.name} · ${t.pins}`,
      field: PINS_FIELD,
      now: whole(connector.pins),
      put: (value) => withThing(r, 'connectors', id, { ...connector, pins: count(value) ?? connector.pins }),
      must: true,
    };
  const end = name === 'from' || name === 'to' ? wire?.[name] : null;
  if (part !== 'wire' || !wire || !end) return null;
  const at = r.connectors[end.connector];
  return {
    label: `${at?.name ?? '?'} · ${t.pin}`,
    field: pinField(at?.pins ?? WIRING_BOUNDS.pins),
    now: whole(end.pin),
    put: (value) => withThing(r, 'wires', id, { ...wire, [name]: { ...end, pin: count(value) } }),
  };
};

/** A number of the wiring record, at ["wiring", part, id, field]. */
export const wiringQuestion = (
  app: App,
  [, part = '', id = '', name = '']: readonly string[],
): Question | null => {
  const one = app.wiring && asked(app.wiring.value, part, id, name);
  if (!one) return null;
  const accept = async (value: Stated | null): Promise<null> => {
    await changeWiring(app, one.put(value));
    return null;
  };
  return {
    label: one.label,
    field: one.field,
    now: one.now,
    unitLabel: plainUnit,
    accept,
    ...(one.must ? {} : { forget: async () => void (await accept(null)) }),
  };
};
