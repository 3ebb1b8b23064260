import { enterText } from './app';
import type { Recall, Recallable } from '../core/recall';

interface Words {
  /** What was wrong, and what is right now. */
  readonly what: string;
  readonly todo: string;
}

/** Of each correction in core/recall/table, by its id. */
export const recallWords: Readonly<Record<string, Words>> = { ...__RECALL__.words };

export const recallText = {
  heading: 'For review',
  stands: 'Looked over: it stands',
  notSaved: enterText.notSaved,
} as const;

/** Corrections in words, for a record that they put in question. */
export const recallSaid = (recalls: readonly Recall[], { made }: Pick<Recallable, 'made'>) => ({
  ...recallText,
  all: recalls.map(({ id, corrected }) => ({
    id,
    what: '',
    todo: '',
    ...recallWords[id],
    between: `Made by ${made ? `version ${made.app}` : 'an early version'}, corrected in ${corrected}. Nothing was reckoned anew.`,
  })),
});
