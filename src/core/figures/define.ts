import type { InputAt, InputPath, Inputs } from '../context';
import { inputAt } from '../context';
import { inBase, isRatio, type Ratio, type Stated } from '../quantity';
import type { FigureId, FigureValues } from './ids';
import type { Standing } from './standing';
import { exact, type Amount, type ShownUnit, type Term, type Why } from './why';

/** An answer: its value (null when something it needs isn't known), its standing, and its grounds. */
export interface Figure<V> {
  readonly value: V | null;
  readonly standing: Standing | null;
  readonly why: Why;
  /** What would have to be entered or chosen for the value to be known. */
  readonly missing: readonly InputPath[];
}

/** How a figure asks for what it declared; anything else doesn't compile. */
export interface Ask<R extends InputPath, U extends FigureId> {
  input<P extends R>(path: P): InputAt<P>;
  figure<F extends U>(id: F): Figure<FigureValues[F]>;
}

export interface FigureDef<V, R extends InputPath = InputPath, U extends FigureId = FigureId> {
  readonly reads: readonly R[];
  readonly uses: readonly U[];
  /** Raised when the formula is corrected, so that what used the earlier one can be marked. */
  readonly rule: number;
  readonly compute: (ask: Ask<R, U>) => Figure<V>;
}

export const define = <V, const R extends InputPath, const U extends FigureId>(
  def: FigureDef<V, R, U>,
): FigureDef<V, R, U> => def;

export const withheld = (
  formula: string,
  source: string,
  missing: readonly InputPath[],
  terms: Record<string, Term> = {},
  notes: readonly string[] = [],
): Figure<never> => ({
  value: null,
  standing: null,
  missing: [...new Set(missing)],
  why: { formula, terms, result: null, source, notes },
});

/** Figures whose value is a plain exact number, which formulas can take as terms. */
export type RatioFigureId = {
  [F in FigureId]: FigureValues[F] extends Ratio ? F : never;
}[FigureId];

const FIGURE_UNITS: Partial<Record<FigureId, ShownUnit>> = {
  screwLead: 'mm',
  countsPerRev: 'counts/rev',
  stepsPerMotorRev: 'steps/rev',
  motorPerScrew: 'times',
  stepsPerScrewRev: 'steps/rev',
  stepOnCarriage: 'mm',
};

const isStated = (x: unknown): x is Stated =>
  typeof x === 'object' && x !== null && 'unit' in x && isRatio((x as Stated).value);

/** One term of a formula: where it comes from, its amount as stated, its value in base units or null. */
export const gather = <R extends InputPath, U extends FigureId>(
  ask: Ask<R, U>,
  from: R | (U & RatioFigureId),
): { value: Ratio | null; term: Term; missing: readonly InputPath[] } => {
  if (from.includes('.')) {
    const value: unknown = ask.input(from as R);
    const path = from as InputPath;
    if (isStated(value))
      return {
        value: inBase(value),
        term: { amount: exact(value.value, value.unit), from: path },
        missing: [],
      };
    if (isRatio(value)) return { value, term: { amount: exact(value, 'rpm'), from: path }, missing: [] };
    return { value: null, term: { amount: null, from: path }, missing: [path] };
  }
  const id = from as U & RatioFigureId;
  const figure = ask.figure(id) as Figure<Ratio>;
  const amount: Amount | null = figure.value && exact(figure.value, FIGURE_UNITS[id as FigureId] ?? 'none');
  return { value: figure.value, term: { amount, from: id }, missing: figure.missing };
};

type Terms = Readonly<Record<string, InputPath | RatioFigureId>>;

/**
 * A figure that is one formula over exact terms: the declared inputs are the terms themselves, so they can't
 * be forgotten. Any term not known makes the figure not known.
 */
export const formula = <const T extends Terms>(def: {
  formula: string;
  source: string;
  unit: ShownUnit;
  terms: T;
  rule?: number;
  compute: (v: { [K in keyof T]: Ratio }) => Ratio;
}): FigureDef<Ratio, Extract<T[keyof T], InputPath>, Extract<T[keyof T], FigureId>> => {
  const origins = Object.values(def.terms);
  type R = Extract<T[keyof T], InputPath>;
  type U = Extract<T[keyof T], FigureId>;
  return {
    reads: origins.filter((o): o is R => o.includes('.')),
    uses: origins.filter((o): o is U => !o.includes('.')),
    rule: def.rule ?? 1,
    compute: (ask) => {
      const got = Object.entries(def.terms).map(
        ([name, from]) => [name, gather<R, U>(ask, from as R | (U & RatioFigureId))] as const,
      );
      const terms = Object.fromEntries(got.map(([name, g]) => [name, g.term]));
      const missing = got.flatMap(([, g]) => g.missing);
      // Nothing missing and still no value: the machine has no such thing.
      if (missing.length > 0 || got.some(([, g]) => g.value === null))
        return withheld(def.formula, def.source, missing, terms);
      const values = Object.fromEntries(got.map(([name, g]) => [name, g.value])) as { [K in keyof T]: Ratio };
      const value = def.compute(values);
      const why: Why = {
        formula: def.formula,
        terms,
        result: exact(value, def.unit),
        source: def.source,
        notes: [],
      };
      return { value, standing: null, why, missing: [] };
    },
  };
};

/** Answers for one set of inputs; each figure is computed when first asked, once. */
export interface Sheet {
  readonly inputs: Inputs;
  get<F extends FigureId>(id: F): Figure<FigureValues[F]>;
}

export type Registry = { readonly [F in FigureId]: FigureDef<FigureValues[F]> };

/**
 * A sheet over a registry, which may still lack figures that are loaded later. A figure that asks for itself, directly or
 * round a corner, throws, and so does one that isn't there: a bug.
 */
export const sheetOf = (registry: Partial<Registry>, inputs: Inputs): Sheet => {
  const done = new Map<FigureId, Figure<unknown>>();
  const open = new Set<FigureId>();
  const get = <F extends FigureId>(id: F): Figure<FigureValues[F]> => {
    const known = done.get(id);
    if (known) return known as Figure<FigureValues[F]>;
    if (open.has(id)) throw new Error(`figure ${id} asks for itself`);
    open.add(id);
    const ask: Ask<InputPath, FigureId> = {
      input: (path) => inputAt(inputs, path),
      figure: (other) => get(other),
    };
    const def = registry[id];
    if (!def) throw new Error(`figure ${id} is not loaded`);
    const figure = def.compute(ask);
    open.delete(id);
    done.set(id, figure);
    return figure;
  };
  return { inputs, get };
};
