import { finding, type Finding } from './finding';
import { isEarthColour } from './colour';
import { wiresOf } from './order';
import type { End, WiringRecord } from './shape';
import { isEarth } from './signal';

const SIDES = ['from', 'to'] as const;

/** Every wire lands on a connector that is there, at both ends, and has a name. */
export const checkEnds = (r: WiringRecord): readonly Finding[] => {
  const all = wiresOf(r);
  const lands = (e: End | null): boolean => e !== null && Object.hasOwn(r.connectors, e.connector);
  const about = (id: string) => ({ wires: [id], cable: r.wires[id]?.cable ?? null });
  const open = all.filter(([, w]) => !SIDES.every((s) => lands(w[s])));
  const nameless = all.filter(([, w]) => w.signal === '');
  const wrong = all.filter(([, w]) => isEarthColour(w.colour) && w.signal !== '' && !isEarth(w.signal));
  return [
    ...open.map(([id]) => finding('end-open', 'over', about(id))),
    ...(open.length === 0 ? [finding('ends', 'within')] : []),
    ...nameless.map(([id]) => finding('signal-unknown', 'unknown', about(id))),
    ...wrong.map(([id]) => finding('earth-colour', 'over', about(id))),
  ];
};

/** No pin carries two wires, each is one that its connector has, and each is known. */
export const checkPins = (r: WiringRecord): readonly Finding[] => {
  const on = new Map<string, { end: End; wires: string[] }>();
  const found: Finding[] = [];
  for (const [id, w] of wiresOf(r))
    for (const side of SIDES) {
      const end = w[side];
      const connector = end && r.connectors[end.connector];
      if (!end || !connector) continue;
      const about = { wires: [id], connector: end.connector, pin: end.pin, cable: w.cable };
      if (end.pin === null) {
        found.push(finding('pin-unknown', 'unknown', about));
        continue;
      }
      if (end.pin > connector.pins) found.push(finding('pin-beyond', 'over', about));
      const key = `${end.connector} ${end.pin}`;
      const there = on.get(key);
      if (there) there.wires.push(id);
      else on.set(key, { end, wires: [id] });
    }
  for (const { end, wires } of on.values())
    if (wires.length > 1)
      found.push(finding('pin-twice', 'over', { wires, connector: end.connector, pin: end.pin }));
  return found.length > 0 ? found : [finding('pins', 'within')];
};

/** Two connectors or two cables of one name can't be told apart on the sheet. */
export const checkNames = (r: WiringRecord): readonly Finding[] => {
  const names = [...Object.values(r.connectors), ...Object.values(r.cables)].map((t) => t.name);
  const twice = [...new Set(names.filter((n, i) => names.indexOf(n) !== i))];
  return twice.map((name) => finding('name-twice', 'near', { names: [name] }));
};
