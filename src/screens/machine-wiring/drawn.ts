import type { DrawnBlock, DrawnBond, DrawnCable } from '../../elements/cable-drawing';
import {
  endsOf,
  wiresOf,
  type Bond,
  type Cable,
  type End,
  type Wire,
  type WiringRecord,
} from '../../core/wiring/record';
import { trade } from '../../text/prove';
import { bondName, colourText, placeName, wiringText as t } from '../../text/wiring';
import { connectorName, endName, signalName } from './names';

const pin = (e: End | null): string => `${e?.pin ?? '?'}`;

const headOf = (r: WiringRecord, e: End | null): readonly string[] => {
  const c = e && r.connectors[e.connector];
  return c ? [c.name, trade(placeName[c.place])] : ['?', t.openEnd];
};

const bondKind = (bond: Bond | null): DrawnBond => {
  if (bond === null) return 'unknown';
  return bond === 'capacitor' || bond === 'open' ? bond : 'direct';
};
const bondText = (bond: Bond | null): string => (bond ? bondName[bond] : t.notKnown);

/** The connectors at one side of a cable, as they are called. */
export const sideName = (r: WiringRecord, cable: string, side: 'from' | 'to'): string =>
  endsOf(r, cable, side)
    .flatMap((id) => (r.connectors[id] ? [connectorName(r.connectors[id])] : []))
    .join(', ') || (side === 'from' ? t.nearEnd : t.farEnd);

const wireText = (r: WiringRecord, w: Wire): string =>
  t.drawn(
    endName(r, w.from),
    endName(r, w.to),
    signalName(w),
    [
      w.colour ? colourText(w.colour) : `${t.colour} ${t.notKnown.toLowerCase()}`,
      ...(w.pair === null ? [] : [`${t.pair.toLowerCase()} ${w.pair}`]),
    ].join(', '),
  );

/** A cable as it is drawn, and the same in words. */
export const drawnCable = (
  r: WiringRecord,
  id: string,
  cable: Cable,
): { readonly cable: DrawnCable; readonly text: string } => {
  const wires = wiresOf(r, id).map(([, w]) => w);
  const blocks: (DrawnBlock & { readonly key: string; readonly wires: DrawnBlock['wires'][number][] })[] = [];
  for (const w of wires) {
    const key = `${w.from?.connector} ${w.to?.connector}`;
    const drawn = {
      pins: [pin(w.from), pin(w.to)],
      signal: signalName(w),
      colour: w.colour,
      pair: w.pair,
    } as const;
    const last = blocks.at(-1);
    if (last?.key === key) last.wires.push(drawn);
    else blocks.push({ key, left: headOf(r, w.from), right: headOf(r, w.to), wires: [drawn] });
  }
  const bonds = [cable.bondFrom, cable.bondTo] as const;
  const name = trade(t.screen);
  const screen =
    cable.screen === 'yes'
      ? {
          name,
          bonds: [bondKind(bonds[0]), bondKind(bonds[1])] as const,
          words: [bondText(bonds[0]), bondText(bonds[1])] as const,
        }
      : null;
  const bonded = screen ? [t.drawn(...screen.words, name, t.bonding)] : [];
  return { cable: { blocks, screen }, text: [...wires.map((w) => wireText(r, w)), ...bonded].join(' ') };
};
