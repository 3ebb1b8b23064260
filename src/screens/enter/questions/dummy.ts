import { DUMMY_RUNS } from '../../../core/cut/stop';
import { number } from '../../../core/machine';
import { dummyLabel, dummyText } from '../../../text/cut-stop';
import type { ReadingField } from './question';

const overrun = number('notes', ['mm', 'in'], '0.01', '500');

/** Overruns of the dummy runs past a mark, and the speed that they were run at. */
export const dummyFields = (): Readonly<Record<string, ReadingField>> => ({
  'dummy.rpm': { label: dummyText.rpm, field: number('spindle', ['rpm'], '1', '20000') },
  ...Object.fromEntries(
    Array.from({ length: DUMMY_RUNS }, (_, i) => [
      `dummy.${i + 1}`,
      { label: dummyLabel(i + 1), field: overrun },
    ]),
  ),
});
