import { stated, type Stated, type Unit } from '../../quantity';
import { figure } from '../number';
import type { FormId, Thread } from '../thread';

/** Which standard's limits of size apply. */
export type LimitSystem =
  | 'iso965'
  | 'asmeB1.1'
  | 'bs84'
  | 'bs93'
  | 'iso228'
  | 'iso2903'
  | 'asmeB1.5'
  | 'asmeB1.8'
  | 'asmeB1.9'
  | 'taper';

/** A series of threads as one standard lists it. Words for its name and its classes live in text. */
export interface Family {
  /** Stable: the first part of a thread's id. */
  readonly id: string;
  /** Standard that lists diameters and pitches. */
  readonly standard: string;
  readonly form: FormId;
  readonly unit: 'mm' | 'in';
  /** Null where no standard known here gives limits. */
  readonly system: LimitSystem | null;
  readonly externalClasses: readonly string[];
  readonly internalClasses: readonly string[];
  readonly externalDefault: string | null;
  readonly internalDefault: string | null;
  /** Further words that people search by: "bsp", "tripod". */
  readonly words?: string;
  /** Its table as rows; a thread is made of one when it is asked for (catalogue.ts). */
  readonly table: (family: Family) => readonly Row[];
}

/** A row of a table, "10:1.25,1,0.75": a size and its pitches. Rows are separated by blanks. */
export const rows = function* (table: string): Generator<readonly [size: string, pitch: string]> {
  for (const row of table.trim().split(/\s+/)) {
    const [size = '', pitches = ''] = row.split(':');
    for (const pitch of pitches.split(',')) yield [size, pitch];
  }
};

/** "1-1/2" as it stands on a key: "1 1/2". */
export const sizeText = (size: string): string => size.replace('-', ' ');

/** A numbered size of the inch screw threads, 0.060 + 0.013 n inch (ASME B1.1). */
const numbered = (size: string): string | null => (size.startsWith('no') ? size.slice(2) : null);

/** Inch size of a table, "1-1/2" or "no10", as an exact figure. */
export const inchSize = (size: string): ReturnType<typeof figure> => {
  const n = numbered(size);
  return n === null ? figure(size) : figure(`0.${String(60 + 13 * Number(n)).padStart(3, '0')}`);
};

export interface Row {
  readonly family: Family;
  /** Id inside the family. */
  readonly key: string;
  readonly designation: string;
  readonly size: string;
  readonly major: string | null;
  readonly pitch: string;
  readonly pitchUnit: Unit;
  readonly taper?: Stated;
  /** Where it differs from the family's own. */
  readonly form?: FormId;
  /** Unit of the major diameter, where it differs from the family's own. */
  readonly unit?: 'mm' | 'in';
}

export const idOf = (r: Row): string => `${r.family.id}:${r.key}`;

/** One thread of a family from figures as the table prints them. */
export const threadFrom = (r: Row): Thread => {
  const unit = r.unit ?? r.family.unit;
  return {
    id: idOf(r),
    family: r.family.id,
    designation: r.designation,
    size: r.size,
    major: r.major === null ? null : stated(unit === 'in' ? inchSize(r.major) : figure(r.major), unit),
    pitch: stated(figure(r.pitch), r.pitchUnit),
    starts: 1,
    form: r.form ?? r.family.form,
    ...(r.taper ? { taper: r.taper } : {}),
  };
};

/** Builder for inch threads "size-tpi SERIES". */
export const inchSeries =
  (pairs: () => Iterable<readonly [size: string, tpi: string]>, suffix: string) =>
  (family: Family): Row[] =>
    [...pairs()].map(([size, tpi]) => {
      const n = numbered(size);
      const shown = n ?? sizeText(size);
      return {
        family,
        key: `${size}-${tpi}`,
        designation: `${n === null ? '' : 'No. '}${shown}-${tpi} ${suffix}`,
        size: n === null ? shown : `No. ${n}`,
        major: size,
        pitch: tpi,
        pitchUnit: 'tpi',
      };
    });
