import { wiresOf } from './order';
import type { End, Wire, WiringRecord } from './shape';

type Complete = Wire & { readonly from: End; readonly to: End };
const isComplete = (w: Wire): w is Complete => w.from?.pin != null && w.to?.pin != null;

/** One touch of the meter's tips: two pins, and what it should show with both plugs off. */
export interface ContinuityItem {
  readonly id: string;
  readonly expects: 'closed' | 'open';
  readonly a: End;
  readonly b: End;
  /** Signals of the wires it is about. */
  readonly signals: readonly string[];
  /** What it rests on: a tick made under another lapses. */
  readonly print: string;
}

const pinKey = (e: End): string => `${e.connector} ${e.pin}`;

/** Names the pins that are one piece of copper alike. */
const netsOf = (wires: readonly Complete[]): ((e: End) => string) => {
  const up = new Map<string, string>();
  const net = (key: string): string => {
    const above = up.get(key);
    return above === undefined ? key : net(above);
  };
  for (const w of wires) {
    const [a, b] = [net(pinKey(w.from)), net(pinKey(w.to))];
    if (a !== b) up.set(a, b);
  }
  return (e) => net(pinKey(e));
};

const printOf = (w: Wire): string => JSON.stringify([w.signal, w.colour, w.from, w.to]);

/**
 * What to try with a meter, everything unplugged and dead: each wire from end to end, and that each is open to the next pin of
 * the connector it comes from. Pins that a wire joins aren't expected to be open.
 */
export const continuityOf = (r: WiringRecord): readonly ContinuityItem[] => {
  const all = wiresOf(r).filter((e): e is readonly [string, Complete] => isComplete(e[1]));
  const net = netsOf(all.map(([, w]) => w));
  return all.flatMap(([id, w], i): ContinuityItem[] => {
    const closed: ContinuityItem = {
      id: `c-${id}`,
      expects: 'closed',
      a: w.from,
      b: w.to,
      signals: [w.signal],
      print: printOf(w),
    };
    const [nextId, next] = all[i + 1] ?? [];
    if (!next || next.from.connector !== w.from.connector || net(next.from) === net(w.from)) return [closed];
    const open: ContinuityItem = {
      id: `o-${id}-${nextId}`,
      expects: 'open',
      a: w.from,
      b: next.from,
      signals: [w.signal, next.signal],
      print: printOf(w) + printOf(next),
    };
    return [closed, open];
  });
};

/** Whether an item was ticked, and whether what was ticked is still what is there. */
export const tickState = (r: WiringRecord, item: ContinuityItem): 'none' | 'held' | 'lapsed' => {
  const tick = r.ticks[item.id];
  if (!tick) return 'none';
  return tick.print === item.print ? 'held' : 'lapsed';
};

/** Ticks an item, or takes its tick away where it holds; ticks of what is no longer there go too. */
export const withTick = (r: WiringRecord, item: ContinuityItem, at: number): WiringRecord => {
  const there = new Set(continuityOf(r).map((i) => i.id));
  const kept = Object.entries(r.ticks).filter(([id]) => there.has(id) && id !== item.id);
  const mine = tickState(r, item) === 'held' ? [] : [[item.id, { at, print: item.print }] as const];
  return Object.freeze({ ...r, ticks: Object.fromEntries([...kept, ...mine]) });
};
