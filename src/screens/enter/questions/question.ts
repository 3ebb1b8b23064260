import type { NumberField } from '../../../core/machine';
import type { Stated, Unit } from '../../../core/quantity';
import { unitLabel } from '../../../text/units';
import type { App } from '../../../state';

/** A number to be entered: what is asked, what stands there now, and what becomes of the answer. */
export interface Question {
  readonly label: string;
  readonly field: NumberField;
  readonly now: Stated | null;
  readonly unitLabel: (unit: Unit) => string;
  /** Gives words of refusal, or null when it was taken. */
  readonly accept: (value: Stated) => Promise<string | null>;
  /** Says "not known". */
  readonly forget?: () => Promise<void>;
}

export const plainUnit = (u: Unit): string => unitLabel[u];

/** A working figure to be read off, kept by name (state/readings). */
export interface ReadingField {
  readonly label: string;
  readonly field: NumberField;
}

export const readingQuestion = (
  app: App,
  key: string,
  fields: Readonly<Record<string, ReadingField>>,
): Question | null => {
  const spec = Object.hasOwn(fields, key) ? fields[key] : undefined;
  if (!spec) return null;
  return {
    label: spec.label,
    field: spec.field,
    now: app.readings.get(key),
    unitLabel: plainUnit,
    accept: async (value) => {
      await app.readings.set(key, value);
      return null;
    },
    forget: () => app.readings.set(key, null),
  };
};
