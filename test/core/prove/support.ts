import type { Context } from '../../../src/core/context';
import { figuresFor } from '../../../src/core/figures';
import type { MachineProfile } from '../../../src/core/machine';
import { testById, type Decision, type Given, type ProveTest } from '../../../src/core/prove';
import type { Stated } from '../../../src/core/quantity';
import { inputsOf, type Parts } from '../checks/support';

export { is, NOON, HOUR, event } from '../checks/support';

export const test = (id: string): ProveTest => {
  const found = testById(id);
  if (!found) throw new Error(id);
  return found;
};

export const given = (
  readings: Record<string, Stated>,
  choices: Record<string, string> = {},
  machine: Partial<MachineProfile> = {},
  more: { context?: Partial<Context>; job?: Parts['job'] } = {},
): Given => ({
  sheet: figuresFor(
    inputsOf({
      machine,
      ...(more.job ? { job: more.job } : {}),
      ...(more.context ? { context: more.context } : {}),
    }),
  ),
  readings,
  choices,
});

export const decide = (id: string, ...args: Parameters<typeof given>): Decision =>
  test(id).decide(given(...args));
