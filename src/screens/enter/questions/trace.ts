import { TRACE_FIGURES, TRACE_KEYS } from '../../../core/figures/trace/figures';
import { traceLabels } from '../../../text/trace';
import type { ReadingField } from './question';

/** Figures of the model of lead error; each key begins with "trace.". */
export const traceFields = (): Readonly<Record<string, ReadingField>> =>
  Object.fromEntries(
    TRACE_KEYS.map((key) => [key, { label: traceLabels[key], field: TRACE_FIGURES[key].field }]),
  );
