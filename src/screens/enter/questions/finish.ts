import { number } from '../../../core/machine';
import { finishLabels } from '../../../text/finish';
import type { ReadingField } from './question';

const length = number('notes', ['mm', 'in'], '0', '1000');

/** Figures read off while a thread is finished; each key begins with "cut.". */
export const finishFields = (): Readonly<Record<string, ReadingField>> =>
  Object.fromEntries(Object.entries(finishLabels).map(([key, label]) => [key, { label, field: length }]));
