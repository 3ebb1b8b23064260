import type { Cable, Connector, Wire, WiringRecord } from './shape';

/** Names as people count: X2 before X10. */
const byName = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });

export type Entry<T> = readonly [id: string, thing: T];

const sorted = <T extends { readonly name: string }>(
  things: Readonly<Record<string, T>>,
): readonly Entry<T>[] =>
  Object.entries(things).sort(([ida, a], [idb, b]) => byName(a.name, b.name) || byName(ida, idb));

export const connectorsOf = (r: WiringRecord): readonly Entry<Connector>[] => sorted(r.connectors);
export const cablesOf = (r: WiringRecord): readonly Entry<Cable>[] => sorted(r.cables);

/** Where a wire stands among others: by the connector it comes from, then by pin. */
const place = (r: WiringRecord, w: Wire): string =>
  [w.from, w.to]
    .map((e) => (e ? `${r.connectors[e.connector]?.name ?? '?'} ${e.pin ?? 999}` : '~'))
    .join(' ');

/** The wires of a cable, or all of them, in the order of their pins. */
export const wiresOf = (r: WiringRecord, cable: string | null = null): readonly Entry<Wire>[] =>
  Object.entries(r.wires)
    .filter(([, w]) => cable === null || w.cable === cable)
    .sort(([ida, a], [idb, b]) => byName(place(r, a), place(r, b)) || byName(ida, idb));

/** Connectors that a cable's wires come from, or go to, each once. */
export const endsOf = (r: WiringRecord, cable: string, side: 'from' | 'to'): readonly string[] => [
  ...new Set(wiresOf(r, cable).flatMap(([, w]) => w[side]?.connector ?? [])),
];
