import { readStored, storeStated, type StoredStated } from '../core/machine';

/** What belongs to the person, not to a machine. */
export interface Settings {
  readonly units: 'mm' | 'in';
  readonly theme: 'auto' | 'bright' | 'dark';
  readonly words: 'uk' | 'us';
  /** Which hand touches the phone: its keys lie on that side. */
  readonly hand: 'right' | 'left';
  /** The machine used last; an open tab keeps the one it has. */
  readonly machine: string | null;
  /** Machines in the order in which they were used, the last one first: so they stand, and their workshops. */
  readonly used: readonly string[];
  readonly favourites: readonly string[];
  readonly recent: readonly string[];
  readonly cautionsSeen: boolean;
  /** Measuring wires and drill shanks the person owns. */
  readonly wires: readonly StoredStated[];
  /** Threads left out of the settings sheet, by id. */
  readonly sheetOff: readonly string[];
  /** What was last chosen by key on a page, by name: "measure.way" is "one". */
  readonly choices: Readonly<Record<string, string>>;
}

export const blankSettings = (): Settings => ({
  units: 'mm',
  theme: 'auto',
  words: 'uk',
  hand: 'right',
  machine: null,
  used: [],
  favourites: [],
  recent: [],
  cautionsSeen: false,
  wires: [],
  sheetOff: [],
  choices: {},
});

const ids = (x: unknown, most = 60): string[] =>
  Array.isArray(x)
    ? x.filter((s): s is string => typeof s === 'string' && s.length <= 80).slice(0, most)
    : [];

/** More than anyone tells apart by when it was used; the rest stand by name. */
export const MOST_USED = 100;

export const MOST_WIRES = 60;
const wires = (x: unknown): StoredStated[] =>
  (Array.isArray(x) ? x : [])
    .flatMap((w) => {
      const read = readStored(w);
      return read && (read.unit === 'mm' || read.unit === 'in') ? [storeStated(read)] : [];
    })
    .slice(0, MOST_WIRES);

/** Far above what the pages ask: nothing that was chosen falls off the end. */
const MOST_CHOICES = 500;
const LONGEST_CHOICE = 1200;
const choices = (x: unknown): Record<string, string> =>
  Object.fromEntries(
    Object.entries(typeof x === 'object' && x !== null ? x : {})
      .filter(
        (e): e is [string, string] => typeof e[1] === 'string' && `${e[0]}${e[1]}`.length <= LONGEST_CHOICE,
      )
      .slice(0, MOST_CHOICES),
  );

/** Reads settings; what can't be read takes its usual value. */
export const readSettings = (body: unknown): Settings | null => {
  if (typeof body !== 'object' || body === null) return null;
  const raw = body as Record<string, unknown>;
  return {
    units: raw.units === 'in' ? 'in' : 'mm',
    theme: raw.theme === 'bright' || raw.theme === 'dark' ? raw.theme : 'auto',
    words: raw.words === 'us' ? 'us' : 'uk',
    hand: raw.hand === 'left' ? 'left' : 'right',
    machine: typeof raw.machine === 'string' ? raw.machine : null,
    used: ids(raw.used, MOST_USED),
    favourites: ids(raw.favourites),
    recent: ids(raw.recent),
    cautionsSeen: raw.cautionsSeen === true,
    wires: wires(raw.wires),
    sheetOff: ids(raw.sheetOff),
    choices: choices(raw.choices),
  };
};
