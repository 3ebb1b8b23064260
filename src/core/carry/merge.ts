import { alike } from './canonical';
import type { RecordRow, VersionRow } from './rows';

/** A field that both sides changed, to different values, as they are stored; absent: undefined. */
export interface FieldConflict {
  /** "profile.screwPitch", or "deleted". */
  readonly field: string;
  readonly ours: unknown;
  readonly theirs: unknown;
}

export type Merge =
  /** Nothing to do: the same version, the same content, or ours is what came of theirs. */
  | { readonly kind: 'same' | 'ours' }
  /** Theirs is what came of ours. */
  | { readonly kind: 'forward'; readonly row: VersionRow }
  /** Both changed; `row` holds our value of each conflict until a person has chosen. */
  | {
      readonly kind: 'merged';
      readonly row: VersionRow;
      readonly conflicts: readonly FieldConflict[];
    };

type Fields = Readonly<Record<string, unknown>>;

/** Parts of a body whose own fields are merged each by itself. */
const PARTS = ['profile', 'job', 'connectors', 'cables', 'wires', 'ticks'];
const DELETED = 'deleted';

const isObject = (x: unknown): x is Fields => typeof x === 'object' && x !== null && !Array.isArray(x);

/** A record's content as one flat list of fields. */
const flat = ({ body, deleted }: VersionRow): Fields => {
  const fields: Record<string, unknown> = {};
  for (const [name, value] of isObject(body) ? Object.entries(body) : [['', body] as const])
    if (PARTS.includes(name) && isObject(value))
      for (const [field, one] of Object.entries(value)) fields[`${name}.${field}`] = one;
    else fields[`/${name}`] = value;
  return { ...fields, [DELETED]: deleted };
};

/** A record with this content; fields in order of name, so that it doesn't matter from which side one came. */
const deep = (row: VersionRow, fields: Fields): VersionRow => {
  // A part may have nothing in it, and is a part none the less.
  const empty = PARTS.filter((name) => isObject(row.body) && isObject(row.body[name]));
  const body: Record<string, unknown> = Object.fromEntries(empty.map((name) => [name, {}]));
  for (const name of Object.keys(fields).sort()) {
    const value = fields[name];
    if (name === DELETED || value === undefined) continue;
    if (name === '/') return { ...row, body: value, deleted: fields[DELETED] === true };
    const dot = name.indexOf('.');
    if (name.startsWith('/')) body[name.slice(1)] = value;
    else body[name.slice(0, dot)] = { ...(body[name.slice(0, dot)] as object), [name.slice(dot + 1)]: value };
  }
  return { ...row, body, deleted: fields[DELETED] === true };
};

/** Every version that a record came of, itself included, nearest first. */
const lineOf = (row: VersionRow, earlier: ReadonlyMap<string, VersionRow>): string[] => {
  const line: string[] = [];
  const seen = new Set<string>();
  let next = [row.rev];
  while (next.length > 0) {
    const now = next.filter((rev) => !seen.has(rev));
    for (const rev of now) seen.add(rev);
    line.push(...now);
    next = now.flatMap((rev) => (rev === row.rev ? row : earlier.get(rev))?.parents ?? []);
  }
  return line;
};

const byRev = (rows: readonly VersionRow[]): Map<string, VersionRow> => new Map(rows.map((r) => [r.rev, r]));

/**
 * No wire is left without the cable it lies in, where one side took that out and the other changed the wire; nor one that
 * may still be chosen.
 */
const withCables = (
  fields: Fields,
  ours: Fields,
  theirs: Fields,
  conflicts: readonly FieldConflict[],
): Fields => {
  const wires = [
    ...Object.entries(fields),
    ...conflicts.flatMap((c) => [[c.field, c.ours] as const, [c.field, c.theirs] as const]),
  ];
  const back = wires.flatMap(([name, wire]) => {
    if (!name.startsWith('wires.') || !isObject(wire) || typeof wire.cable !== 'string') return [];
    const cable = `cables.${wire.cable}`;
    return fields[cable] === undefined ? [[cable, ours[cable] ?? theirs[cable]] as const] : [];
  });
  return { ...fields, ...Object.fromEntries(back) };
};

/**
 * Two contents that came of one, field by field: what one side changed is taken from that side. Without a common version
 * every field that differs is one that both changed.
 */
export const mergeContents = (
  base: VersionRow | null,
  ours: VersionRow,
  theirs: VersionRow,
): { readonly row: VersionRow; readonly conflicts: readonly FieldConflict[] } => {
  const [b, o, t] = [base && flat(base), flat(ours), flat(theirs)];
  const conflicts: FieldConflict[] = [];
  const fields = Object.keys({ ...t, ...o }).map((field) => {
    const [our, their] = [o[field], t[field]];
    if (alike(our, their) || (b && alike(their, b[field]))) return [field, our];
    if (b && alike(our, b[field])) return [field, their];
    conflicts.push({ field, ours: our, theirs: their });
    return [field, our];
  });
  const merged = withCables(Object.fromEntries(fields) as Fields, o, t, conflicts);
  return { row: deep(ours, merged), conflicts };
};

/** The record with their value of these fields. */
export const takeTheirs = (row: VersionRow, conflicts: readonly FieldConflict[]): VersionRow =>
  deep(row, { ...flat(row), ...Object.fromEntries(conflicts.map((c) => [c.field, c.theirs])) });

/**
 * What becomes of a record that is here and in a file. Which is newer is told by ancestry alone; the content of both is
 * merged from the last version they have in common. Versions before them may be missing: then more has to be chosen, and
 * nothing is lost.
 */
export const mergeMachine = (
  ours: VersionRow,
  oursEarlier: readonly VersionRow[],
  theirs: VersionRow,
  theirsEarlier: readonly VersionRow[],
): Merge => {
  if (alike(flat(ours), flat(theirs))) return { kind: 'same' };
  const earlier = new Map([...byRev(theirsEarlier), ...byRev(oursEarlier)]);
  const here = lineOf(ours, earlier);
  const there = lineOf(theirs, earlier);
  // One name for two contents: made by hand or damaged, and for a person to judge.
  const twice = ours.rev === theirs.rev;
  if (!twice && here.includes(theirs.rev)) return { kind: 'ours' };
  if (!twice && there.includes(ours.rev)) return { kind: 'forward', row: theirs };
  const common = twice ? undefined : here.find((rev) => there.includes(rev));
  const base = (common !== undefined && earlier.get(common)) || null;
  const { row, conflicts } = mergeContents(base, ours, theirs);
  return { kind: 'merged', row: { ...row, parents: [ours.rev, theirs.rev] }, conflicts };
};

/** Their record of one id beside ours: who recorded it stands, and a taking back on either side counts, the first one. */
export const mergeRecord = (ours: RecordRow, theirs: RecordRow): RecordRow => {
  const back = [ours.takenBack, theirs.takenBack].filter((at) => at !== undefined);
  return back.length > 0 ? { ...ours, takenBack: Math.min(...back) } : ours;
};
