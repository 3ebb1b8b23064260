import { nutRule as rule } from '../cut';
import { div, leadNumber } from '../quantity';
import { define, withheld } from './define';
import { nutSum, type NutSum } from './nut-sum';
import { approx, exact, type Term } from './why';

const sumTerms = ({ sum, allowed, lasts }: NutSum): Record<string, Term> => ({
  sum: { amount: approx(sum, 'um'), from: 'ratioHeld' },
  tenth: { amount: approx(allowed, 'um'), from: 'ratioHeld' },
  lasts: { amount: approx(Math.floor(lasts), 'turns'), from: 'ratioHeld' },
});

/** Where the half-nut may be closed again for this lead on this machine. */
export const nutRule = define({
  reads: [
    'machine.halfNut',
    'machine.threadDial',
    'machine.dialTeeth',
    'machine.dialLines',
    'machine.screwStarts',
    'machine.ratioHeld',
  ],
  uses: ['lead', 'screwLead', 'ratioHeld'],
  rule: 3,
  compute: (ask) => {
    const l = ask.figure('lead');
    const screw = ask.figure('screwLead');
    const starts = ask.input('machine.screwStarts');
    const halfNut = ask.input('machine.halfNut');
    const dial = ask.input('machine.threadDial');
    const teeth = ask.input('machine.dialTeeth');
    const lines = ask.input('machine.dialLines');
    const held = ask.figure('ratioHeld');
    // A controller that can't hold the ratio at all holds it no better than one that holds it nearly.
    const exactRatio = held.value?.exact ?? (held.standing === 'over' ? false : null);
    const hasDial = halfNut === 'half-nut' && dial === 'dial';
    const missing = [
      ...l.missing,
      ...screw.missing,
      // Whether the ratio is exact decides the rule: while that isn't known, neither is the rule.
      ...(exactRatio === null ? held.missing : []),
      ...(halfNut ? [] : (['machine.halfNut'] as const)),
      ...(halfNut === 'half-nut' && !dial ? (['machine.threadDial'] as const) : []),
      ...(hasDial && !teeth ? (['machine.dialTeeth'] as const) : []),
      ...(hasDial && !lines ? (['machine.dialLines'] as const) : []),
    ];
    const terms: Record<string, Term> = {
      lead: { amount: l.value && exact(l.value.mm, 'mm', l.value.pi), from: 'lead' },
      screw: {
        amount: screw.value && starts && exact(div(screw.value, starts.value), 'mm'),
        from: 'screwLead',
      },
    };
    if (missing.length > 0 || !l.value || !screw.value || !starts || exactRatio === null)
      return withheld('nutRule', 'nutTheorem', missing, terms);
    if (hasDial && teeth) terms.teeth = { amount: exact(teeth.value, 'teeth'), from: 'machine.dialTeeth' };
    // An error that stays far below what the thread needs, however many passes are taken, is no reason to keep it closed.
    const sum = held.value && nutSum(held.value, ask.input('machine.ratioHeld'), leadNumber(l.value));
    const settled = sum && sum.standing !== 'over' ? sum : null;
    const value = rule({
      lead: l.value,
      nutPitch: div(screw.value, starts.value),
      halfNut: halfNut === 'half-nut',
      dial: hasDial && teeth && lines ? { teeth: Number(teeth.value.n), lines: Number(lines.value.n) } : null,
      exactRatio: exactRatio || settled !== null,
    });
    if (value.a !== null && value.b !== null) {
      terms.a = { amount: exact(div(value.a, 1), 'count'), from: 'nutRule' };
      terms.b = { amount: exact(div(value.b, 1), 'count'), from: 'nutRule' };
    }
    const opens = value.kind !== 'keep-closed';
    if (sum && (opens || value.reason === 'inexact-ratio')) Object.assign(terms, sumTerms(sum));
    return {
      value,
      standing: opens && settled ? settled.standing : null,
      missing: [],
      why: {
        formula: 'nutRule',
        terms,
        result: null,
        source: 'nutTheorem',
        notes: ['nut-conditions', ...(opens && settled ? ['nut-sum'] : [])],
      },
    };
  },
});
