import { number } from '../../../core/machine';
import { measureLabels } from '../../../text/measure';
import type { ReadingField } from './question';

const length = number('notes', ['mm', 'in'], '0', '1000');

/** Figures read off for measuring a thread; each key begins with "measure.". */
export const measureFields = (): Readonly<Record<string, ReadingField>> =>
  Object.fromEntries(Object.entries(measureLabels).map(([key, label]) => [key, { label, field: length }]));
