import type { CarriedRow, Content, ReadResult, VersionRow } from '../core/carry';

/** Rows in one message. */
export const PIECE = 500;

/** Rows of a store, or (no name) earlier versions: they go before what they belong to. */
export interface RowsPiece {
  readonly kind: 'rows';
  readonly store: string;
  readonly rows: readonly CarriedRow[];
}

type Rows = Pick<Content, 'records' | 'earlier'>;

/** In pieces: neither side is ever busy with all of them at once. */
export function* piecesOf({ records, earlier }: Rows): Generator<RowsPiece> {
  for (const [store, rows] of [...Object.entries(records), ['', earlier] as const])
    for (let at = 0; at === 0 || at < rows.length; at += PIECE)
      yield { kind: 'rows', store, rows: rows.slice(at, at + PIECE) };
}

/** Takes pieces in, and gives what they were cut from. */
export class Pieces implements Rows {
  readonly records: Record<string, CarriedRow[]> = {};
  readonly earlier: VersionRow[] = [];

  add({ store, rows }: RowsPiece): void {
    if (store === '') this.earlier.push(...(rows as readonly VersionRow[]));
    else (this.records[store] ??= []).push(...rows);
  }
}

export type CarryAsk =
  | RowsPiece
  | { readonly kind: 'write'; readonly head: Omit<Content, 'records' | 'earlier'> }
  | { readonly kind: 'read'; readonly file: Blob };

export type CarryAnswer =
  | { readonly kind: 'written'; readonly file: Blob; readonly left: number }
  | RowsPiece
  | { readonly kind: 'read'; readonly result: ReadResult };
