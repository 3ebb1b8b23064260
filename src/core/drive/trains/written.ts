import { read, type Ratio } from '../../quantity';

/**
 * Change gears as text, the way a profile keeps them: the set of wheels, a train, the quick-change box's table.
 * Each text has one reading and one written form; what can't be read says why.
 */
export type WrittenError =
  | 'empty'
  | 'not-wheels'
  | 'teeth-out-of-range'
  | 'too-many-wheels'
  | 'not-a-train'
  | 'too-long-a-train'
  | 'not-a-box'
  | 'name-twice'
  | 'too-many-rows';

export type Read<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: WrittenError };

const no = (error: WrittenError): { ok: false; error: WrittenError } => ({ ok: false, error });

/** Teeth of a change wheel, and how many wheels a set may have: wide enough for any set met (common practice). */
export const TEETH = { least: 10, most: 200 } as const;
export const MOST_WHEELS = 40;
const MOST_ROWS = 60;

/** Wheels at hand, teeth rising; a wheel owned twice stands twice. */
export type WheelSet = readonly number[];

const teethOf = (text: string): number | null => {
  const teeth = Number(text);
  return teeth >= TEETH.least && teeth <= TEETH.most ? teeth : null;
};

/** Reads "20 25 30×2 40". */
export const readWheels = (text: string): Read<WheelSet> => {
  const words = text.trim().split(/[\s,;]+/);
  if (words[0] === '') return no('empty');
  const wheels: number[] = [];
  for (const word of words) {
    const [, digits = '', times = '1'] = /^(\d{1,4})(?:[×x*](\d{1,2}))?$/.exec(word) ?? [];
    if (digits === '' || times === '0') return no('not-wheels');
    const teeth = teethOf(digits);
    if (teeth === null) return no('teeth-out-of-range');
    for (let i = 0; i < Number(times); i += 1) wheels.push(teeth);
  }
  if (wheels.length > MOST_WHEELS) return no('too-many-wheels');
  return { ok: true, value: wheels.sort((a, b) => a - b) };
};

/** @example writeWheels([40, 20, 20]) // "20×2 40" */
export const writeWheels = (wheels: WheelSet): string => {
  const count = new Map<number, number>();
  for (const z of [...wheels].sort((a, b) => a - b)) count.set(z, (count.get(z) ?? 0) + 1);
  return [...count].map(([z, n]) => (n > 1 ? `${z}×${n}` : `${z}`)).join(' ');
};

/**
 * Wheels in mesh from the spindle's end on: each stage is a chain of wheels in mesh, first the driver, last the
 * driven, idlers between; the next stage's driver turns with the driven wheel before it on one stud.
 */
export type Stages = readonly (readonly number[])[];
export interface WrittenTrain {
  readonly stages: Stages;
  /** Lever position of the quick-change box; null without one. */
  readonly box: string | null;
}

const NAME = /^[A-Za-z0-9.+-]{1,8}$/;
const MOST_STAGES = 3;
const MOST_IN_STAGE = 4;

/** Reads "40/70/60 20/80 @A": 40 drives 60 by an idler of 70, 20 beside the 60 drives 80; box lever at A. */
export const readTrain = (text: string): Read<WrittenTrain> => {
  const words = text.trim().split(/\s+/);
  if (words[0] === '') return no('empty');
  const last = words.at(-1) ?? '';
  const box = last.startsWith('@') ? last.slice(1) : null;
  if (box !== null && !NAME.test(box)) return no('not-a-train');
  const stages: number[][] = [];
  for (const word of box === null ? words : words.slice(0, -1)) {
    if (!/^\d{1,4}(?:\/\d{1,4})+$/.test(word)) return no('not-a-train');
    const wheels = word.split('/').map(teethOf);
    if (wheels.includes(null)) return no('teeth-out-of-range');
    if (wheels.length > MOST_IN_STAGE) return no('too-long-a-train');
    stages.push(wheels as number[]);
  }
  if (stages.length === 0) return no('not-a-train');
  return stages.length > MOST_STAGES ? no('too-long-a-train') : { ok: true, value: { stages, box } };
};

export const writeTrain = ({ stages, box }: WrittenTrain): string =>
  [...stages.map((s) => s.join('/')), ...(box === null ? [] : [`@${box}`])].join(' ');

/** One lever position: leadscrew revs per rev of the wheel on the box's input shaft. */
export interface BoxRow {
  readonly name: string;
  readonly ratio: Ratio;
}

/** Reads "A=1/2 B=1 C=2". A ratio is a whole number, a decimal or a fraction above nothing. */
export const readBox = (text: string): Read<readonly BoxRow[]> => {
  const words = text.trim().split(/[\s;]+/);
  if (words[0] === '') return no('empty');
  const rows: BoxRow[] = [];
  for (const word of words) {
    const [name = '', value = '', more] = word.split('=');
    const number = read(value);
    if (!NAME.test(name) || more !== undefined || !number.ok || number.value.n <= 0n) return no('not-a-box');
    if (rows.some((r) => r.name === name)) return no('name-twice');
    rows.push({ name, ratio: number.value });
  }
  return rows.length > MOST_ROWS ? no('too-many-rows') : { ok: true, value: rows };
};

export const writeBox = (rows: readonly BoxRow[]): string =>
  rows
    .map((r) => `${r.name}=${r.ratio.d === 1n ? r.ratio.n.toString() : `${r.ratio.n}/${r.ratio.d}`}`)
    .join(' ');
