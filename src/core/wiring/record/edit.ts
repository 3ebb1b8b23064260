import type { End, Wire, WiringRecord } from './shape';

export type Part = keyof WiringRecord;

/** A copy with one thing put in, or taken out with null. */
export const withThing = <P extends Part>(
  r: WiringRecord,
  part: P,
  id: string,
  thing: WiringRecord[P][string] | null,
): WiringRecord => {
  const { [id]: _, ...others } = r[part] as Record<string, unknown>;
  return Object.freeze({ ...r, [part]: thing === null ? others : { ...others, [id]: thing } });
};

const mapWires = (r: WiringRecord, change: (w: Wire) => Wire | null): WiringRecord =>
  Object.freeze({
    ...r,
    wires: Object.fromEntries(
      Object.entries(r.wires).flatMap(([id, w]) => {
        const now = change(w);
        return now ? [[id, now]] : [];
      }),
    ),
  });

/** Takes a connector out; wires that ended there have an open end. */
export const withoutConnector = (r: WiringRecord, id: string): WiringRecord => {
  const open = (e: End | null): End | null => (e?.connector === id ? null : e);
  return mapWires(withThing(r, 'connectors', id, null), (w) => ({
    ...w,
    from: open(w.from),
    to: open(w.to),
  }));
};

/** Takes a cable out with its wires. */
export const withoutCable = (r: WiringRecord, id: string): WiringRecord =>
  mapWires(withThing(r, 'cables', id, null), (w) => (w.cable === id ? null : w));

/** The next free name: X1, X2 … for connectors, W1, W2 … for cables (letters of IEC 81346-2). */
export const nextName = (r: WiringRecord, part: 'connectors' | 'cables'): string => {
  const things: Readonly<Record<string, { readonly name: string }>> = r[part];
  const taken = new Set(Object.values(things).map((t) => t.name));
  const letter = part === 'connectors' ? 'X' : 'W';
  let n = 1;
  while (taken.has(`${letter}${n}`)) n += 1;
  return `${letter}${n}`;
};
