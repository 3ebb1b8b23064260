import type { AnyItem } from '../../core/checks';

/** What a person reads of one check. */
export interface ItemText {
  /** One short line that fills the screen. */
  readonly question: string;
  /** What to do before anything else, where hands, current or moving parts are at stake. `checkText` puts it first. */
  readonly first?: string;
  /** Where to look or what to do: three short sentences at most. */
  readonly look: string;
  readonly why: string;
  /** What to do about it when it isn't so. */
  readonly notOk?: string;
}
/** The same for an item that asks for a figure, with the figure's name. */
export interface ReadingText extends ItemText {
  readonly figure: string;
}

type WithReading = Extract<AnyItem, { readonly reading: object }>;

/** A text for every item of some lists; one that is missing, or has no name for its figure, doesn't compile. */
export type TextsFor<I extends AnyItem> = {
  readonly [K in I['id']]: K extends WithReading['id'] ? ReadingText : ItemText;
};
export type TextsOf<List extends readonly AnyItem[]> = TextsFor<List[number]>;
