import type { ReadingField } from './question';

/** Figures read off for measuring one; each key begins with "measure.". */
export const measureFields = (): Readonly<Record<string, ReadingField>> => ({});
