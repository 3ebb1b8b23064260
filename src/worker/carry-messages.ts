import type { CarriedRow, Content, ReadResult } from '../core/carry';

/** Rows in one message. */
export const PIECE = 500;

export type CarryAsk =
  { readonly kind: 'write'; readonly content: Content } | { readonly kind: 'read'; readonly file: Blob };

export type CarryAnswer =
  | { readonly kind: 'written'; readonly text: string; readonly left: number }
  /** Rows of a store, or (no name) earlier versions: they come before what they belong to. */
  | { readonly kind: 'rows'; readonly store: string; readonly rows: readonly CarriedRow[] }
  | { readonly kind: 'read'; readonly result: ReadResult };
