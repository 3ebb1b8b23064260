import { nextName, withThing } from './edit';
import { blankCable, type Cable, type CableKind, type Place, type WiringRecord } from './shape';
import type { WireColour } from './colour';

/** Signal, colour, pin it comes from and pin it goes to, pair. */
type Row = readonly [signal: string, colour: WireColour, from: number, to: number, pair: number | null];

interface Layout {
  readonly from: readonly [Place, pins: number];
  readonly to: readonly [Place, pins: number];
  readonly rows: readonly Row[];
}

/**
 * Layouts to start from. Pins and colours are made up: a maker's sheet decides, and each can be changed. What only the lathe
 * can tell (length, section, screen, contacts) stays not known.
 */
export const LAYOUTS = {
  'encoder-single': {
    from: ['encoder', 6],
    to: ['controller', 6],
    rows: [
      ['+5 V', 'RD', 1, 1, null],
      ['0 V', 'BU', 2, 2, null],
      ['A', 'YE', 3, 3, null],
      ['B', 'GN', 4, 4, null],
      ['Z', 'GY', 5, 5, null],
    ],
  },
  'encoder-differential': {
    from: ['encoder', 9],
    to: ['controller', 8],
    rows: [
      ['+5 V', 'RD', 1, 1, 1],
      ['0 V', 'BU', 2, 2, 1],
      ['A', 'WH', 3, 3, 2],
      ['/A', 'BN', 4, 4, 2],
      ['B', 'GN', 5, 5, 3],
      ['/B', 'YE', 6, 6, 3],
      ['Z', 'GY', 7, 7, 4],
      ['/Z', 'PK', 8, 8, 4],
    ],
  },
  'step-single': {
    from: ['controller', 4],
    to: ['drive', 4],
    rows: [
      ['STEP', 'BN', 1, 1, null],
      ['DIR', 'GN', 2, 2, null],
      ['ENABLE', 'GY', 3, 3, null],
      ['0 V', 'BU', 4, 4, null],
    ],
  },
  'step-differential': {
    from: ['controller', 6],
    to: ['drive', 6],
    rows: [
      ['STEP+', 'WH', 1, 1, 1],
      ['STEP-', 'BN', 2, 2, 1],
      ['DIR+', 'GN', 3, 3, 2],
      ['DIR-', 'YE', 4, 4, 2],
      ['ENABLE+', 'GY', 5, 5, 3],
      ['ENABLE-', 'PK', 6, 6, 3],
    ],
  },
  display: {
    from: ['controller', 4],
    to: ['display', 4],
    rows: [
      ['+5 V', 'RD', 1, 1, null],
      ['0 V', 'BU', 2, 2, null],
      ['TX', 'WH', 3, 4, null],
      ['RX', 'GN', 4, 3, null],
    ],
  },
  stop: {
    from: ['stop', 4],
    to: ['drive', 4],
    rows: [
      ['STOP 1+', 'OG', 1, 1, 1],
      ['STOP 1-', 'OG/WH', 2, 2, 1],
      ['STOP 2+', 'VT', 3, 3, 2],
      ['STOP 2-', 'VT/WH', 4, 4, 2],
    ],
  },
} as const satisfies Partial<Record<CableKind, Layout>>;
export type LayoutId = keyof typeof LAYOUTS;
export const LAYOUT_IDS = Object.keys(LAYOUTS) as LayoutId[];

/** Kinds of which it is asked how the screen is bonded. */
export const NEEDS_SCREEN: readonly CableKind[] = [
  'encoder-single',
  'encoder-differential',
  'step-single',
  'step-differential',
  'motor',
];

/** Signals offered by key in a cable of a kind: those of its layout, and a screen's wire. */
export const signalsFor = (kind: Cable['kind']): readonly string[] => {
  const layout = Object.hasOwn(LAYOUTS, kind) ? LAYOUTS[kind as LayoutId] : null;
  const rows: readonly Row[] = layout?.rows ?? [];
  return [...rows.map(([signal]) => signal), ...(kind === 'stop' ? [] : ['PE'])];
};

/**
 * The record with a cable of a layout, its two connectors and its wires.
 * @param make gives a new id at each call
 */
export const withLayout = (
  record: WiringRecord,
  kind: LayoutId,
  make: () => string,
): { readonly record: WiringRecord; readonly cable: string } => {
  const layout: Layout = LAYOUTS[kind];
  let r = record;
  const connector = ([place, pins]: readonly [Place, number]): string => {
    const id = make();
    r = withThing(r, 'connectors', id, { name: nextName(r, 'connectors'), place, pins });
    return id;
  };
  const [from, to, cable] = [connector(layout.from), connector(layout.to), make()];
  r = withThing(r, 'cables', cable, blankCable(nextName(r, 'cables'), kind));
  for (const [signal, colour, a, b, pair] of layout.rows)
    r = withThing(r, 'wires', make(), {
      cable,
      signal,
      colour,
      from: { connector: from, pin: a },
      to: { connector: to, pin: b },
      pair,
    });
  return { record: r, cable };
};
