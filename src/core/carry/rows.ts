/** A record that changes, as it is stored; which of two is newer is told by `parents`. */
export interface VersionRow {
  readonly id: string;
  readonly schema: number;
  readonly rev: string;
  readonly parents: readonly string[];
  readonly device: string;
  readonly counter: number;
  readonly changedAt: number;
  readonly deleted: boolean;
  readonly body: unknown;
}
/** What was recorded about a machine: never altered, only marked as taken back. */
export interface RecordRow {
  readonly id: string;
  readonly schema: number;
  readonly kind: string;
  readonly machine: string;
  readonly at: number;
  readonly device: string;
  /** Number of the change on that device. */
  readonly counter?: number;
  readonly body: unknown;
  readonly takenBack?: number;
  /** Which app and formulas (core/recall). */
  readonly made?: unknown;
}
/** A small value by name. */
export interface ValueRow {
  readonly id: string;
  readonly value: unknown;
}
export type CarriedRow = VersionRow | RecordRow | ValueRow;

type Raw = Readonly<Record<string, unknown>>;

const LONGEST_NAME = 100;
/** Earlier versions stand under the store's name, the record's and the version's. */
const LONGEST_ID = 250;
const MOST_PARENTS = 8;

const isText = (x: unknown, most: number, least = 1): boolean =>
  typeof x === 'string' && x.length >= least && x.length <= most;
const isName = (x: unknown): boolean => isText(x, LONGEST_NAME);
const isCount = (x: unknown): boolean => Number.isInteger(x) && (x as number) >= 0;
const isNumber = (x: unknown): boolean => typeof x === 'number' && Number.isFinite(x);

const isVersion = (x: Raw): boolean =>
  isCount(x.schema) &&
  x.schema !== 0 &&
  isName(x.rev) &&
  Array.isArray(x.parents) &&
  x.parents.length <= MOST_PARENTS &&
  x.parents.every(isName) &&
  isText(x.device, LONGEST_NAME, 0) &&
  isCount(x.counter) &&
  isNumber(x.changedAt) &&
  typeof x.deleted === 'boolean' &&
  'body' in x;
const isRecord = (x: Raw): boolean =>
  isCount(x.schema) &&
  isName(x.kind) &&
  isName(x.machine) &&
  isNumber(x.at) &&
  isText(x.device, LONGEST_NAME, 0) &&
  'body' in x &&
  (!('counter' in x) || isCount(x.counter)) &&
  (!('takenBack' in x) || isNumber(x.takenBack));
const isValue = (x: Raw): boolean => 'value' in x;

/** Stores whose rows aren't versions. */
const SHAPES: Readonly<Record<string, (x: Raw) => boolean>> = { evidence: isRecord, meta: isValue };

/** Whether a row has the shape that its store asks; what its body holds is for the codecs to say. */
export const isRowOf = (store: string, x: unknown): x is CarriedRow => {
  if (typeof x !== 'object' || x === null || Array.isArray(x)) return false;
  const row = x as Raw;
  const shape = Object.hasOwn(SHAPES, store) ? SHAPES[store] : isVersion;
  return isText(row.id, LONGEST_ID) && shape !== undefined && shape(row);
};
