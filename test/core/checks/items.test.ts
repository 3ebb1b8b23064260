import { describe, expect, it } from 'vitest';
import { ITEMS, TIERS, type Item, type ItemId } from '../../../src/core/checks';

/**
 * The pre-threading list of common practice, thirty-three lines, and what a second reading added; each line must
 * have its checks. Held against the list, not against a standard.
 */
const LIST: Readonly<Record<string, readonly ItemId[]>> = {
  '1 machine is this one': ['machine-identity'],
  '2 ratio fits the controller': ['ratio-held'],
  '3 hand and direction': ['direction', 'left-hand'],
  '4 lead not pitch, start index': ['lead', 'start-index'],
  '5 limits at planned speed': ['drive-limits'],
  '6 torque margin': ['torque', 'ramp-test'],
  '7 speed within run-out': ['stopping-room'],
  '8 stopping distance in the gap': ['gap', 'stop-time'],
  '9 groove': ['groove'],
  '10 tool clear at full depth': ['tool-clear'],
  '11 half-nut rule shown': ['nut-rule'],
  '12 half-nut closes and frees': ['half-nut', 'stop-time'],
  '13 carriage free': ['carriage-free'],
  '14 handwheel, clothing': ['handwheel-nut', 'clothing'],
  '15 key, guard, work, overhang': ['chuck-key', 'guard', 'work-tight', 'overhang'],
  '16 chuck secured for reverse': ['chuck-secured'],
  '17 speed lever, inverter limited': ['speed-set', 'speed-limited'],
  '18 stop tests 1 to 4, reach': [
    'stop-at-rest',
    'stop-moving',
    'stop-latches',
    'stop-release',
    'stop-reach',
  ],
  '19 no start on power-up': ['power-return'],
  '20 drift at rest': ['drift'],
  '21 ten turns': ['ten-turns'],
  '22 belts, pulleys, encoder mount': ['belts'],
  '23 lubrication, dial gear': ['lubrication', 'dial-meshed'],
  '24 backlash, run-in': ['backlash', 'run-in'],
  '25 tool': ['tool'],
  '26 slide angle and dials': ['compound'],
  '27 blank, chamfer': ['blank', 'chamfer'],
  '28 plan, zero': ['plan', 'zero'],
  '29 gauge or wires': ['gauge'],
  '30 fluid and brush': ['chips'],
  '31 scratch pass': ['scratch-pitch'],
  '32 nothing changed': ['nothing-changed'],
  '33 isolate': ['isolated'],
  'overload protection': ['overload'],
  'old gears and feeds': ['old-feeds'],
  'end float': ['end-float'],
  'threading stop, withdrawal': ['withdrawal'],
  'chuck maximum': ['chuck-limit'],
  recovery: ['recovery'],
  internal: ['bar-reach', 'retract-way'],
  'before gauging': ['gauging-clean'],
  'separate start': ['stop-restart'],
  'the whole protocol of the stop': ['stop-tests'],
};

describe('the list of checks', () => {
  it('has every line of the list, and nothing that no line asks for', () => {
    const asked = new Set(Object.values(LIST).flat());
    expect(ITEMS.map((i) => i.id).filter((id) => !asked.has(id))).toEqual([]);
    const have = new Set<string>(ITEMS.map((i) => i.id));
    expect([...asked].filter((id) => !have.has(id))).toEqual([]);
  });

  it('names each once and keeps the order of tiers', () => {
    const items = ITEMS as readonly Item[];
    expect(new Set(items.map((i) => i.id)).size).toBe(items.length);
    const places = items.map((i) => TIERS.indexOf(i.tier));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('a computed one reckons, a reading has a figure, and whatever belongs to a day lapses with the power', () => {
    for (const i of ITEMS as readonly Item[]) {
      if (i.kind === 'computed') expect(i.evaluate, i.id).toBeTypeOf('function');
      if (i.kind === 'reading') expect(i.reading, i.id).toBeDefined();
      if (i.tier === 'day' || i.tier === 'start') {
        expect(i.rule.daily, i.id).toBe(true);
        expect(i.rule.events, i.id).toContain('power');
      }
      if (i.tier === 'start') expect(i.rule.perCut, i.id).toBe(true);
    }
  });
});
