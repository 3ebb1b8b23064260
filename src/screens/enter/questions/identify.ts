import { number } from '../../../core/machine';
import { identifyLabels } from '../../../text/identify';
import type { ReadingField } from './question';

const FIELDS = {
  'identify.diameter': number('notes', ['mm', 'in'], '0.2', '500'),
  'identify.length': number('notes', ['mm', 'in'], '0.1', '1000'),
  'identify.crests': number('notes', ['count'], '2', '500', { whole: true }),
  'identify.gauge': number('notes', ['mm', 'tpi'], '0.1', '30'),
} as const;

/** Figures read off for identifying a thread; each key begins with "identify.". */
export const identifyFields = (): Readonly<Record<string, ReadingField>> =>
  Object.fromEntries(
    Object.entries(FIELDS).map(([key, field]) => [
      key,
      { label: identifyLabels[key as keyof typeof FIELDS], field },
    ]),
  );
