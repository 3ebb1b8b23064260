/** A machine's file in the shelf: the folder beside the app that a club or school keeps for all who come. */
export interface ShelfFile {
  /** Its name in the folder. */
  readonly file: string;
  readonly name: string;
  readonly workshop: string;
  /** The machine's id and version in the file; empty where the list says none. */
  readonly machine: string;
  readonly rev: string;
}

/** Files in one shelf at most. */
export const MOST_ON_SHELF = 500;
const LONGEST_FILE = 150;
const LONGEST = 100;
/** A name in the same folder: nothing that leads out of it. */
const FILE = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._-]*\.json$/u;

const isText = (x: unknown, most: number): x is string => typeof x === 'string' && x.length <= most;

const readFile = (x: unknown): ShelfFile | null => {
  const { file, name, workshop = '', machine = '', rev = '' } = (x ?? {}) as Partial<Record<string, unknown>>;
  const fits =
    isText(file, LONGEST_FILE) &&
    FILE.test(file) &&
    isText(name, LONGEST) &&
    name !== '' &&
    isText(workshop, LONGEST) &&
    isText(machine, LONGEST) &&
    isText(rev, LONGEST);
  return fits ? { file, name, workshop, machine, rev } : null;
};

/**
 * The list of a shelf (public/schemas/latheside-shelf-1.schema.json).
 * @returns null for anything else, or where one file of it is none. Never throws
 */
export const readShelf = (x: unknown): readonly ShelfFile[] | null => {
  const { format, version, files } = (x ?? {}) as Partial<Record<string, unknown>>;
  if (format !== 'latheside-shelf' || version !== 1 || !Array.isArray(files)) return null;
  if (files.length > MOST_ON_SHELF) return null;
  const read = files.map(readFile);
  return read.every((file) => file !== null) ? read : null;
};

/**
 * How the machine in a file stands to the one here, by version alone: `older`, this phone has gone on from it; `other`, there
 * is something in it that this phone hasn't seen; `unknown`, the list doesn't say.
 */
export type ShelfStanding = 'new' | 'same' | 'older' | 'other' | 'unknown';

/**
 * @param here the version here and those before it that are kept; null where the machine isn't here
 */
export const shelfStanding = (
  { machine, rev }: ShelfFile,
  here: { readonly rev: string; readonly before: readonly string[] } | null,
): ShelfStanding => {
  if (machine === '') return 'unknown';
  if (!here) return 'new';
  if (rev === '') return 'unknown';
  if (rev === here.rev) return 'same';
  return here.before.includes(rev) ? 'older' : 'other';
};
