import { describe, expect, it } from 'vitest';
import { cautionOf, ladder, SYMPTOMS, type RemedyId } from '../../../src/core/wiring';

/** What each costs, said here anew: 0 look and move, 1 minutes and pennies, 2 a part or two, 3 a new device, 4 a person's work. */
const COST: Readonly<Record<RemedyId, number>> = {
  contacts: 0,
  apart: 0,
  rates: 0,
  'input-filter': 0,
  measure: 0,
  ramp: 0,
  'nut-open': 0,
  carrier: 0,
  bond: 1,
  clamp: 1,
  'pull-up': 1,
  near: 1,
  light: 1,
  suppressor: 2,
  ring: 2,
  thicker: 2,
  'low-pass': 2,
  receiver: 2,
  supply: 3,
  differential: 3,
  insulate: 3,
  'motor-cable': 4,
  'mains-filter': 4,
  brake: 4,
};

describe('ladder of remedies', () => {
  it.each(SYMPTOMS)('%s: cheapest first, nothing twice', (symptom) => {
    const costs = ladder(symptom).map((id) => COST[id]);
    expect(costs.length).toBeGreaterThan(5);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(new Set(ladder(symptom)).size).toBe(costs.length);
  });
  it('what takes a competent person is left to the maker’s word and to one', () => {
    for (const id of Object.keys(COST) as RemedyId[]) if (COST[id] === 4) expect(cautionOf(id)).toBe('maker');
  });
  it('what is done to wiring begins isolated; only looking at figures needs no caution', () => {
    const bare = (Object.keys(COST) as RemedyId[]).filter((id) => cautionOf(id) === null);
    expect(bare.sort()).toEqual(['input-filter', 'rates']);
    for (const id of ['apart', 'bond', 'clamp', 'ring', 'differential'] as const)
      expect(cautionOf(id)).toBe('isolate');
  });
});
