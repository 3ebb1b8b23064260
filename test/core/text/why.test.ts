import { describe, expect, it } from 'vitest';
import { figuresFor, REGISTRY, type FigureId } from '../../../src/core/figures';
import { blankJob } from '../../../src/core/job';
import { blankProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { leadNumber, ratio, stated, toNumber, type Lead, type Ratio } from '../../../src/core/quantity';
import {
  formulaText,
  limitText,
  noteText,
  renderLimit,
  renderWhy,
  sourceText,
  termText,
  type Rendered,
} from '../../../src/text/why';
import { reckon } from './reckon';
import { cases, FORMS, inputsOf } from './support';

const IDS = Object.keys(REGISTRY) as FigureId[];
const placeholders = (formula: string): string[] =>
  [...formula.matchAll(/\{(\w+)\}/g)].map((m) => m[1] ?? '');
const named = (code: string, term: string): boolean =>
  Object.hasOwn(termText, `${code}.${term}`) || Object.hasOwn(termText, term);

/** Everything a person reads in it, in one text. */
const allOf = (r: Rendered): string =>
  [r.title, r.formula, r.numbers, r.result, r.source, ...r.notes, ...r.missing.map((m) => m.label)]
    .concat(r.terms.flatMap((t) => [t.name, t.value, t.from]))
    .join('\n');

const sheets = cases().map((inputs) => figuresFor(inputs));

describe('words for every figure', () => {
  it.each(IDS)('%s: every code has words, every term a name, every placeholder a term', (id) => {
    for (const sheet of sheets) {
      const figure = sheet.get(id);
      const { formula, terms, source, notes } = figure.why;
      expect(Object.hasOwn(formulaText, formula), `formula ${formula}`).toBe(true);
      expect(Object.hasOwn(sourceText, source), `source ${source}`).toBe(true);
      for (const note of notes) expect(Object.hasOwn(noteText, note), `note ${note}`).toBe(true);
      for (const term of Object.keys(terms)) expect(named(formula, term), `term ${term}`).toBe(true);
      for (const term of placeholders(formulaText[formula as keyof typeof formulaText].formula)) {
        expect(named(formula, term), `placeholder ${term}`).toBe(true);
        if (figure.value !== null) expect(Object.keys(terms), `${formula} gives ${term}`).toContain(term);
      }
      const said = renderWhy(figure);
      expect(allOf(said)).not.toMatch(/[{}]|undefined|\[object|NaN|null/);
      // A term's own name stands in the formula: no word beside it may say it again.
      expect(said.formula).not.toMatch(/\b([a-z]+) \1\b/i);
    }
  });

  it('every kind of formula, and both held and refused ratios, were met', () => {
    const met = new Set(sheets.flatMap((s) => IDS.map((id) => s.get(id).why.formula)));
    for (const code of Object.keys(formulaText)) expect(met, code).toContain(code);
    const notes = new Set(sheets.flatMap((s) => IDS.flatMap((id) => s.get(id).why.notes)));
    for (const note of [
      'held-exact',
      'held-near',
      'held-other',
      'depth-nose-too-big',
      'depth-root-short',
      'no-limits-known',
    ])
      expect(notes).toContain(note);
  });

  it('a known figure never reads "not known", an unknown one always does', () => {
    for (const sheet of sheets)
      for (const id of IDS) {
        const figure = sheet.get(id);
        const { result } = renderWhy(figure);
        // The verdict on speed is always there; its one number is the highest speed.
        const known = id === 'speed' ? figure.why.result !== null : figure.value !== null;
        expect(result === 'not known', `${id}: ${result}`).toBe(!known);
      }
  });
});

describe('the line of values gives the result, by another reckoning', () => {
  const numberOf = (value: unknown): number =>
    typeof value === 'number'
      ? value
      : 'mm' in (value as Lead)
        ? leadNumber(value as Lead)
        : toNumber(value as Ratio);
  const RECKONED = [
    'pitch',
    'lead',
    'screwLead',
    'countsPerRev',
    'stepsPerMotorRev',
    'motorPerScrew',
    'stepsPerScrewRev',
    'stepsPerCount',
    'stepOnCarriage',
    'countOnCarriage',
  ] as const satisfies readonly FigureId[];

  it.each(RECKONED)('%s', (id) => {
    let met = 0;
    for (const sheet of sheets) {
      const figure = sheet.get(id);
      if (figure.value === null) continue;
      met += 1;
      const value = numberOf(figure.value);
      expect(Math.abs(reckon(renderWhy(figure).numbers) / value - 1)).toBeLessThan(1e-6);
    }
    expect(met).toBeGreaterThan(3);
  });

  // cot and 1 ÷ sin A − 1 of the half angles, from a table of functions.
  const ANGLE: Readonly<Record<string, [cot: string, less: string]>> = {
    'iso-coarse': ['1.7320508', '1'],
    bsw: ['1.9209821', '1.1656806'],
    ba: ['2.2727271', '1.4829559'],
  };
  it.each(Object.entries(ANGLE))('depth of %s with each nose, outside and inside', (family, [cot, less]) => {
    let met = 0;
    for (const job of FORMS) {
      if (job.thread?.kind !== 'catalogue' || !job.thread.id.startsWith(`${family}:`)) continue;
      const figure = figuresFor(inputsOf(EXAMPLES.heron(), job)).get('depth');
      if (figure.value === null) continue;
      met += 1;
      const line = renderWhy(figure)
        .numbers.replace('cot A', cot)
        .replace('(1 ÷ sin A − 1)', less)
        .replace(/half the difference of (.+) and (.+?), \+/, (_all, a: string, b: string) =>
          job.side === 'external' ? `(${a} − ${b}) ÷ 2 +` : `(${b} − ${a}) ÷ 2 +`,
        );
      expect(reckon(line)).toBeCloseTo(figure.value, 4);
    }
    expect(met).toBeGreaterThanOrEqual(4);
  });

  it('limits: what is asked at the speed set', () => {
    const met = new Set<string>();
    for (const sheet of sheets) {
      const { rpm } = sheet.inputs.job;
      for (const limit of sheet.get('limits').value ?? []) {
        if (limit.id === 'burst' || !limit.perRpm || !rpm) continue;
        met.add(limit.id);
        const { numbers } = renderLimit(limit, rpm);
        expect(Math.abs(reckon(numbers) / (toNumber(limit.perRpm) * toNumber(rpm)) - 1)).toBeLessThan(1e-5);
      }
    }
    // Bunched pulses round up; torque and direction are no line of arithmetic.
    expect(met.size).toBe(Object.keys(limitText).length - 3);
  });
});

describe('words for every limit', () => {
  it('has a name for every term and placeholder', () => {
    for (const sheet of sheets)
      for (const limit of sheet.get('limits').value ?? []) {
        expect(Object.hasOwn(sourceText, limit.source), limit.source).toBe(true);
        for (const term of Object.keys(limit.terms)) expect(named(limit.id, term), term).toBe(true);
        for (const term of placeholders(limitText[limit.id].formula)) {
          expect(named(limit.id, term), term).toBe(true);
          if (term !== 'rpm') expect(Object.keys(limit.terms), `${limit.id} gives ${term}`).toContain(term);
        }
        for (const rpm of [sheet.inputs.job.rpm, null])
          expect(allOf(renderLimit(limit, rpm))).not.toMatch(/[{}]|undefined|\[object|NaN|null/);
      }
  });

  it('what is missing can be entered: it is named as its field is', () => {
    const sheet = figuresFor(inputsOf(blankProfile('a', 'b'), blankJob()));
    const chuck = sheet.get('limits').value?.find((l) => l.id === 'chuck');
    expect(chuck && renderLimit(chuck, null).missing).toEqual([
      { path: 'machine.chuckMaxRpm', label: 'Chuck highest speed' },
    ]);
    expect(chuck && renderLimit(chuck, ratio(200)).result).toBe('not known');
  });

  it('says what a ramp test answers for, and only then', () => {
    const machine = { ...EXAMPLES.heron(), carriageMax: null };
    const job = { ...blankJob(), thread: { kind: 'pitch', pitch: stated(ratio(3, 2), 'mm') } as const };
    const carriage = figuresFor(inputsOf(machine, job))
      .get('limits')
      .value?.find((l) => l.id === 'carriage');
    if (!carriage) throw new Error('no carriage limit');
    expect(renderLimit(carriage, null).answered).toBe('');
    const answered = renderLimit({ ...carriage, answeredTo: ratio(450) }, null);
    expect(answered.notes).toContain('Not known. Answered by your ramp test, up to 450 rpm.');
    expect(answered.result).toBe('not known');
  });
});

describe('worked examples', () => {
  /** 1.5 mm on an 8 tpi screw, 6400 steps, 4096 counts: 375/508 (by hand: 1.5 ÷ 3.175 × 6400 ÷ 4096). */
  it('steps per count of 1.5 mm on an 8 tpi screw', () => {
    const machine = { ...EXAMPLES.bittern(), servoPulses: stated(ratio(3200), 'steps') };
    const job = { ...blankJob(), thread: { kind: 'pitch', pitch: stated(ratio(3, 2), 'mm') } as const };
    const sheet = figuresFor(inputsOf(machine, job));
    const why = renderWhy(sheet.get('stepsPerCount'));
    expect(why.formula).toBe('(lead ÷ leadscrew lead) × (steps per leadscrew rev ÷ counts per spindle rev)');
    expect(why.numbers.replace(/\u00a0/g, ' ')).toBe(
      '(1.5 mm ÷ 3.175 mm) × (6400 steps/rev ÷ 4096 counts/rev)',
    );
    expect(why.result.replace(/\u00a0/g, ' ')).toBe('375/508 ≈ 0.73819 steps/count');
    expect(renderWhy(sheet.get('screwLead')).numbers.replace(/\u00a0/g, ' ')).toBe('(25.4 mm ÷ 8) × 1');
  });
});
