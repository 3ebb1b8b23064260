import type { ReadingField } from './question';

/** Figures read off for identifying a thread; each key begins with "identify.". */
export const identifyFields = (): Readonly<Record<string, ReadingField>> => ({});
