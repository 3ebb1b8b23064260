import { number } from '../../../core/machine';
import { pickLabels } from '../../../text/nut';
import type { ReadingField } from './question';

/** How far the tool stands off the groove when a thread is picked up. */
export const pickFields = (): Readonly<Record<string, ReadingField>> => ({
  'pick.offset': {
    label: pickLabels['pick.offset'],
    field: number('carriage', ['mm', 'in'], '0.001', '100'),
  },
});
