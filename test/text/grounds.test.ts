import { describe, expect, it } from 'vitest';
import { ITEMS } from '../../src/core/checks';
import { restsOn } from '../../src/core/checks/rests-on';
import { COMMISSIONING, STOP_TESTS } from '../../src/core/context';
import { REGISTRY, type FigureId } from '../../src/core/figures';
import { LIMIT_IDS } from '../../src/core/figures/limit';
import { AFFECTS_NOTHING, FIELD_NAMES } from '../../src/core/machine';
import { checkText } from '../../src/text/checks';
import { fieldText } from '../../src/text/machine';
import { testText } from '../../src/text/prove';
import { restsOnText } from '../../src/text/checks/rests-on';
import { stopTestText } from '../../src/text/stops';
import { formulaText, limitText } from '../../src/text/why';

/** A ground is a sentence, and more than its own heading. */
const isGround = (why: string, heading: string): boolean =>
  why.length >= 20 && /[.?!]$/.test(why) && why.split(/\s+/).length >= 4 && why !== heading;

const IDLE: readonly string[] = AFFECTS_NOTHING;

describe('the grounds of everything asked and shown', () => {
  it.each(FIELD_NAMES)('%s: says where it is found, why it is asked, and what rests on it', (field) => {
    const { label, where, needed } = fieldText[field];
    expect([where, isGround(where, label)]).toEqual([where, true]);
    expect([needed, isGround(needed, label)]).toEqual([needed, true]);
    const { figures, checks } = restsOn(`machine.${field}`);
    expect(figures.length + checks.length > 0).toBe(!IDLE.includes(field));
    expect(restsOnText(field).join(' ')).not.toMatch(/undefined|null|\[object/);
    expect(restsOnText(field).length > 0).toBe(!IDLE.includes(field));
  });

  it.each(LIMIT_IDS)('limit %s: says why it binds', (id) => {
    expect([limitText[id].why, isGround(limitText[id].why, limitText[id].name)]).toEqual([
      limitText[id].why,
      true,
    ]);
    expect(limitText[id].formula).not.toBe('');
  });

  it.each(ITEMS.map(({ id }) => id))('check %s: says why', (id) => {
    const { why, question } = checkText(id);
    expect([why, isGround(why, question)]).toEqual([why, true]);
  });

  it.each(Object.keys(REGISTRY) as FigureId[])('figure %s: has a title and a formula', (id) => {
    expect(formulaText[id].title.length).toBeGreaterThan(2);
    expect(formulaText[id].formula.length).toBeGreaterThan(4);
  });

  it.each(STOP_TESTS)('stop test %s: says why', (id) => {
    expect([stopTestText[id].why, isGround(stopTestText[id].why, stopTestText[id].title)]).toEqual([
      stopTestText[id].why,
      true,
    ]);
  });

  it.each(COMMISSIONING)('commissioning test %s: says why', (id) => {
    expect([testText[id].why, isGround(testText[id].why, testText[id].title)]).toEqual([
      testText[id].why,
      true,
    ]);
  });

  it('are told from what is none, and what rests on a field is what reads it', () => {
    expect(isGround('Pitch', 'Pitch')).toBe(false);
    expect(isGround('', '')).toBe(false);
    // Lead of the screw is its pitch times its starts; another screw makes the identity of the machine due.
    expect(restsOn('machine.screwStarts').figures).toContain('screwLead');
    expect(restsOn('machine.backlash').checks).toContain('backlash');
    expect(restsOnText('screwStarts')[0]).toContain('Leadscrew lead');
  });
});
