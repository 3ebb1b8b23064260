import type { Stated } from '../../quantity';
import type { WireColour } from './colour';
import type { SectionId } from './section';

/** Where a connector is. */
export const PLACES = ['encoder', 'controller', 'drive', 'display', 'stop', 'inverter', 'other'] as const;
export type Place = (typeof PLACES)[number];

/** What a cable carries; `power`: mains, inverter or spindle motor, which the record only keeps apart from signals. */
export const CABLE_KINDS = [
  'encoder-single',
  'encoder-differential',
  'step-single',
  'step-differential',
  'display',
  'stop',
  'motor',
  'power',
  'other',
] as const;
export type CableKind = (typeof CABLE_KINDS)[number];

/**
 * How a screen is joined at one end: a clamp all round, the shell of a plug, a wire (pigtail) to a pin or screw, a
 * capacitor, or not at all. null is "not known".
 */
export const BONDS = ['clamp', 'shell', 'wire', 'capacitor', 'open'] as const;
export type Bond = (typeof BONDS)[number];

export interface Connector {
  readonly name: string;
  readonly place: Place;
  readonly pins: number;
}

export interface Cable {
  readonly name: string;
  readonly kind: CableKind;
  readonly length: Stated | null;
  readonly section: SectionId | null;
  readonly screen: 'yes' | 'no' | null;
  /** At the end from which its wires come, and at the end to which they go. */
  readonly bondFrom: Bond | null;
  readonly bondTo: Bond | null;
  /** Supply at the near end, least at the far end, and current drawn: of what the cable feeds. */
  readonly supply: Stated | null;
  readonly least: Stated | null;
  readonly current: Stated | null;
  /** Of a stop circuit: contacts closed or open while nobody presses the button. */
  readonly contacts: 'closed' | 'open' | null;
}

export interface End {
  readonly connector: string;
  /** null: not known. */
  readonly pin: number | null;
}

export interface Wire {
  readonly cable: string;
  readonly signal: string;
  readonly colour: WireColour | null;
  readonly from: End | null;
  readonly to: End | null;
  /** Number of the twisted pair in its cable; null: in none, or not known. */
  readonly pair: number | null;
}

/** Something found as expected with a meter. `print` is what it depended on. */
export interface Tick {
  readonly at: number;
  readonly print: string;
}

type Named<T> = Readonly<Record<string, T>>;

/** How the low-voltage signals of one machine are wired. Everything stands under an id of its own, so that two changes can be merged. */
export interface WiringRecord {
  readonly connectors: Named<Connector>;
  readonly cables: Named<Cable>;
  readonly wires: Named<Wire>;
  readonly ticks: Named<Tick>;
}

export const blankWiring = (): WiringRecord =>
  Object.freeze({ connectors: {}, cables: {}, wires: {}, ticks: {} });

export const blankCable = (name: string, kind: CableKind): Cable =>
  Object.freeze({
    name,
    kind,
    length: null,
    section: null,
    screen: null,
    bondFrom: null,
    bondTo: null,
    supply: null,
    least: null,
    current: null,
    contacts: null,
  });

/** How much a record may hold: more than a lathe has, and little enough for a phone. */
export const WIRING_BOUNDS = {
  connectors: 40,
  cables: 40,
  wires: 400,
  ticks: 1200,
  pins: 100,
  pair: 50,
  /** Signs of the name of a connector or cable, and of a signal. */
  name: 12,
  signal: 12,
} as const;

export const isDifferential = (kind: CableKind): boolean => kind.endsWith('-differential');
