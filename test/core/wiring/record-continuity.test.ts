import { describe, expect, it } from 'vitest';
import {
  continuityOf,
  LAYOUT_IDS,
  tickState,
  withThing,
  withTick,
  type WiringRecord,
} from '../../../src/core/wiring/record';
import { layoutRecord, wireOf } from './record-support';

const pins = (r: WiringRecord): string[] =>
  continuityOf(r).map((i) => {
    const at = (e: { connector: string; pin: number | null }) =>
      `${r.connectors[e.connector]?.name}.${e.pin}`;
    return `${at(i.a)} ${at(i.b)} ${i.expects}`;
  });

describe('the continuity check', () => {
  it('goes from pin to pin, and to the next pin', () => {
    expect(pins(layoutRecord('display').record)).toEqual([
      'X1.1 X2.1 closed',
      'X1.1 X1.2 open',
      'X1.2 X2.2 closed',
      'X1.2 X1.3 open',
      // TX of the one is RX of the other.
      'X1.3 X2.4 closed',
      'X1.3 X1.4 open',
      'X1.4 X2.3 closed',
    ]);
  });
  it('of n wires from one connector has n closed and n − 1 open', () => {
    for (const kind of LAYOUT_IDS) {
      const { record } = layoutRecord(kind);
      const n = Object.keys(record.wires).length;
      const all = continuityOf(record);
      expect(all.filter((i) => i.expects === 'closed')).toHaveLength(n);
      expect(all.filter((i) => i.expects === 'open')).toHaveLength(n - 1);
      expect(new Set(all.map((i) => i.id)).size).toBe(all.length);
    }
  });
  it('expects nothing of an end that is open, and no open where a link joins two pins', () => {
    const { record } = layoutRecord('display');
    const id = wireOf(record, '0 V');
    const wire = record.wires[id];
    if (!wire) throw new Error('no wire');
    expect(pins(withThing(record, 'wires', id, { ...wire, to: null }))).toHaveLength(5);
    // 0 V looped on to pin 3: the two are one piece of copper.
    const [x1] = Object.keys(record.connectors);
    const link = { ...wire, from: { connector: x1 ?? '', pin: 2 }, to: { connector: x1 ?? '', pin: 3 } };
    const linked = pins(withThing(record, 'wires', 'link', link));
    expect(linked).toContain('X1.2 X1.3 closed');
    expect(linked).not.toContain('X1.2 X1.3 open');
    expect(linked).toContain('X1.3 X1.4 open');
  });
});

describe('a tick', () => {
  const { record } = layoutRecord('stop');
  const items = continuityOf(record);
  const [closed, open] = items;
  if (!closed || !open) throw new Error('nothing to tick');

  it('is kept with its date, and taken away by a second', () => {
    const once = withTick(record, closed, 1000);
    expect(tickState(once, closed)).toBe('held');
    expect(once.ticks[closed.id]?.at).toBe(1000);
    expect(tickState(once, open)).toBe('none');
    expect(withTick(once, closed, 2000).ticks).toEqual({});
  });
  it('lapses when that wire changes, and only then', () => {
    const ticked = items.reduce((r, i) => withTick(r, i, 1000), record);
    expect(Object.keys(ticked.ticks)).toHaveLength(items.length);
    const id = wireOf(record, 'STOP 1+');
    const wire = ticked.wires[id];
    if (!wire) throw new Error('no wire');
    const lapsed = (r: WiringRecord) =>
      continuityOf(r)
        .filter((i) => tickState(r, i) === 'lapsed')
        .map((i) => i.id);
    expect(lapsed(ticked)).toEqual([]);
    // Its own, and that to the next pin.
    expect(lapsed(withThing(ticked, 'wires', id, { ...wire, colour: 'BK' }))).toHaveLength(2);
    expect(lapsed(withThing(ticked, 'wires', id, { ...wire, pair: 3 }))).toEqual([]);
    const again = withThing(ticked, 'wires', id, { ...wire, signal: 'STOP 3+' });
    const mine = continuityOf(again).find((i) => i.id === closed.id);
    if (!mine) throw new Error('gone');
    expect(tickState(withTick(again, mine, 3000), mine)).toBe('held');
  });
  it('of a wire that is gone goes with the next one', () => {
    const ticked = withTick(record, closed, 1000);
    const gone = withThing(ticked, 'wires', wireOf(record, 'STOP 1+'), null);
    const [first] = continuityOf(gone);
    if (!first) throw new Error('nothing left');
    expect(Object.keys(withTick(gone, first, 2000).ticks)).toEqual([first.id]);
  });
});
