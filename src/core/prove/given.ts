import type { InputPath } from '../context';
import type { FigureId, FigureValues } from '../figures';
import { inBase, leadHigh, toNumber, type Ratio } from '../quantity';
import type { Asked, Choice, Given } from './spec';
import { instrumentOf, INSTRUMENTS, lengthUncertainty, roundedUp, type InstrumentId } from './uncertainty';

/** A reading in base units; null: not entered. */
export const read = ({ readings }: Given, id: string): Ratio | null => {
  const value = readings[id];
  return value ? inBase(value) : null;
};

/** What was chosen of a choice, or what counts until then. */
export const chose = ({ choices }: Given, { id, options, usual }: Choice): string | null => {
  const choice = choices[id];
  return choice !== undefined && options.includes(choice) ? choice : (usual ?? null);
};

/** Of several readings and choices, those still to be made. */
export const lacksOf = (
  given: Given,
  asked: readonly Asked[],
  choices: readonly Choice[],
): readonly string[] => [
  ...choices.filter((c) => chose(given, c) === null).map((c) => c.id),
  ...asked.filter((a) => !a.optional && !given.readings[a.id]).map((a) => a.id),
];

/** A figure of the machine or job, or what it lacks. */
export const figureOf = <F extends FigureId>(
  { sheet }: Given,
  id: F,
): { readonly value: FigureValues[F] | null; readonly missing: readonly InputPath[] } => sheet.get(id);

/** The lead that a test is made at is kept among its readings under this name, mm; one with π to 18 decimals. */
export const LEAD_READING = 'lead';

/** That lead from the first reading on, until then the job's: it may be chosen anew meanwhile. mm. */
export const leadOf = (
  given: Given,
): { readonly value: Ratio | null; readonly missing: readonly InputPath[] } => {
  const kept = read(given, LEAD_READING);
  if (kept) return { value: kept, missing: [] };
  const { value, missing } = figureOf(given, 'lead');
  return { value: value && leadHigh(value), missing };
};

export const choice = (id: string, options: readonly string[], usual?: string): Choice =>
  usual === undefined ? { id, options } : { id, options, usual };

export const asked = (
  id: string,
  units: Asked['units'],
  min: string,
  max: string,
  more: Partial<Asked> = {},
): Asked => ({ id, units, min, max, ...more });

/** How lengths are read, and with which; finer or coarser than usual can be entered. */
export const INSTRUMENT = choice(
  'instrument',
  INSTRUMENTS.filter((i) => i !== 'pitch-gauge'),
);
export const STEP = asked('step', ['mm', 'in'], '0.0001', '2', { optional: true });
export const ACCURACY = asked('accuracy', ['mm', 'in'], '0', '5', { optional: true });

/** How far several tries lie from one another, ±: none where it wasn't tried. */
export const REPEATS = asked('repeats', ['mm', 'in'], '0', '5', { optional: true });

/** Expanded uncertainty (k = 2) of a length read with what was chosen, mm, up to 0.1 µm. */
export const uncertaintyOf = (given: Given, instrument: InstrumentId): Ratio => {
  const { step, accuracy } = given.readings;
  const spread = read(given, REPEATS.id);
  return roundedUp(
    lengthUncertainty(
      instrumentOf(instrument, step ?? null, accuracy ?? null),
      spread ? toNumber(spread) : 0,
    ),
  );
};

export const mm = (value: Ratio): { value: Ratio; unit: 'mm' } => ({ value, unit: 'mm' });
export const count = (value: Ratio): { value: Ratio; unit: 'count' } => ({ value, unit: 'count' });
export const turns = (value: Ratio): { value: Ratio; unit: 'turns' } => ({ value, unit: 'turns' });

/** The largest of several, or null. */
export const most = (all: readonly Ratio[]): Ratio | null =>
  all.reduce<Ratio | null>((m, x) => (m === null || x.n * m.d > m.n * x.d ? x : m), null);
export const least = (all: readonly Ratio[]): Ratio | null =>
  all.reduce<Ratio | null>((m, x) => (m === null || x.n * m.d < m.n * x.d ? x : m), null);
