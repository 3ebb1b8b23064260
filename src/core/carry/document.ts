import { beyond, MOST, type BoundsCode } from './bounds';
import { canonical } from './canonical';
import { crc32 } from './crc';
import { isRowOf, type CarriedRow, type VersionRow } from './rows';

/** Version of the file's form; a newer one is refused. The form is public/schemas/latheside-1.schema.json. */
export const VERSION = 1;
const FORMAT = 'latheside';

export type CarryKind = 'machine' | 'everything';

/** What goes into a file. */
export interface Content {
  readonly kind: CarryKind;
  /** When, ISO 8601 in UTC. */
  readonly made: string;
  /** Version of the app that wrote it. */
  readonly app: string;
  /** Rows as they are stored, by store. */
  readonly records: Readonly<Record<string, readonly CarriedRow[]>>;
  /** Versions before those, so that the last one in common can be found. */
  readonly earlier: readonly VersionRow[];
}

export interface CarryDocument extends Content {
  readonly format: typeof FORMAT;
  readonly version: typeof VERSION;
  /** CRC-32 of the canonical text of everything else (crc.ts, canonical.ts). */
  readonly checksum: string;
}

export type RefusalCode =
  | BoundsCode
  | 'large'
  | 'empty'
  | 'encoding'
  | 'truncated'
  | 'not-json'
  | 'format'
  | 'newer'
  | 'shape'
  | 'rows'
  | 'many'
  | 'checksum'
  /** The browser gave nothing of the file. */
  | 'unread';

export type ReadResult =
  | { readonly ok: true; readonly document: CarryDocument }
  | {
      readonly ok: false;
      readonly code: RefusalCode;
      readonly params: Readonly<Record<string, string | number>>;
    };

const STORE = /^[a-z]{1,20}$/;
const MADE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/;
const CHECKSUM = /^[0-9a-f]{8}$/;
const LONGEST_APP = 40;
const KINDS: readonly unknown[] = ['machine', 'everything'];

const checksumOf = ({ kind, made, app, records, earlier }: Content): string =>
  crc32(canonical({ format: FORMAT, version: VERSION, kind, made, app, records, earlier }));

/**
 * The text of a file: keys in a fixed order, indented where that isn't too large, rows as they are stored.
 * @throws RangeError where even the records alone are more than a reader takes
 * @returns with `left`: how many rows could not be put into it, since no reader would take them
 */
export const writeDocument = (content: Content): { readonly text: string; readonly left: number } => {
  let left = 0;
  const fit = <R extends CarriedRow>(store: string, rows: readonly R[]): R[] =>
    rows.filter((row) => {
      const fits = isRowOf(store, row) && !beyond(row, MOST.depth - 3);
      if (!fits) left += 1;
      return fits;
    });
  const { kind, made, app } = content;
  const records = Object.fromEntries(
    Object.entries(content.records).map(([store, rows]) => [store, fit(store, rows)]),
  );
  const earlier = fit('', content.earlier);
  const textOf = (older: readonly VersionRow[], indent?: number): string => {
    const checksum = checksumOf({ kind, made, app, records, earlier: older });
    const whole = { format: FORMAT, version: VERSION, kind, made, app, checksum, records, earlier: older };
    return `${JSON.stringify(whole, null, indent)}\n`;
  };
  // None is written that its own reader would refuse as too large: the blanks go first, then the versions before.
  for (const [older, indent] of [[earlier, 1], [earlier], [[]]] as const) {
    const text = textOf(older, indent);
    if (text.length <= MOST.size) return { text, left };
  }
  throw new RangeError('large');
};

const no = (code: RefusalCode, params: Readonly<Record<string, string | number>> = {}): ReadResult => ({
  ok: false,
  code,
  params,
});

const parse = (text: string): { readonly value: unknown } | RefusalCode => {
  const bare = text.replace(/^\ufeff/, '').trim();
  if (bare === '') return 'empty';
  // UTF-16 read as UTF-8 is full of these; JSON never holds one as it is.
  if (bare.includes('\0')) return 'encoding';
  try {
    return { value: JSON.parse(bare) };
  } catch (e) {
    if (e instanceof RangeError) return 'deep';
    return bare.startsWith('{') && !bare.endsWith('}') ? 'truncated' : 'not-json';
  }
};

/** The first row that isn't one, as a refusal. */
const strangeRow = (store: string, rows: unknown): ReadResult | null => {
  if (!Array.isArray(rows)) return no('shape');
  const at = rows.findIndex((row) => !isRowOf(store, row));
  return at < 0 ? null : no('rows', { store: store || 'earlier', row: at + 1 });
};

const readContent = (x: Readonly<Record<string, unknown>>): ReadResult => {
  const { kind, made, app, checksum, records, earlier } = x;
  const isShaped =
    KINDS.includes(kind) &&
    typeof made === 'string' &&
    MADE.test(made) &&
    typeof app === 'string' &&
    app.length <= LONGEST_APP &&
    typeof checksum === 'string' &&
    CHECKSUM.test(checksum) &&
    typeof records === 'object' &&
    records !== null &&
    !Array.isArray(records) &&
    Object.keys(records).every((name) => STORE.test(name)) &&
    Object.keys(x).length === 8;
  if (!isShaped) return no('shape');
  const all = [...Object.entries(records), ['', earlier] as const] as [string, unknown][];
  let count = 0;
  for (const [store, rows] of all) {
    const strange = strangeRow(store, rows);
    if (strange) return strange;
    count += (rows as unknown[]).length;
  }
  if (count > MOST.rows) return no('many', { most: MOST.rows });
  const document = x as unknown as CarryDocument;
  return checksumOf(document) === checksum ? { ok: true, document } : no('checksum');
};

/** Reads the text of a file. Never throws; whatever isn't as it should be is refused by a code of its own. */
export const readDocument = (text: string): ReadResult => {
  if (text.length > MOST.size) return no('large', { most: MOST.size });
  const parsed = parse(text);
  if (typeof parsed === 'string') return no(parsed);
  const { value } = parsed;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return no('format');
  const x = value as Readonly<Record<string, unknown>>;
  if (!Object.hasOwn(x, 'format') || x.format !== FORMAT) return no('format');
  const { version } = x;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return no('shape');
  if (version > VERSION) return no('newer', { version, known: VERSION });
  const fault = beyond(x);
  return fault ? no(fault) : readContent(x);
};
