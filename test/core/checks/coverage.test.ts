import { describe, expect, it } from 'vitest';
import type {
  CheckReads,
  DeclaredReads,
  FigureReads,
  None,
  Uncovered,
  WronglyIdle,
} from '../../../src/core/checks/coverage';
import type { MachinePath } from '../../../src/core/context';
import { AFFECTS_NOTHING, FIELD_NAMES } from '../../../src/core/machine';
import { ITEMS } from '../../../src/core/checks';
import { REGISTRY } from '../../../src/core/figures';

/** Each line below that must not compile is held by the type check: an unused @ts-expect-error is itself an error. */
// @ts-expect-error a new field that nothing reads
export type NewField = None<Uncovered<MachinePath | 'machine.tailstockTravel', DeclaredReads>>;
// @ts-expect-error backlash, if only figures read it: no figure does
export type ByFiguresAlone = None<Uncovered<'machine.backlash', FigureReads>>;
// @ts-expect-error the counter's limit, if only checks read it: no check does
export type ByChecksAlone = None<Uncovered<'machine.counterMaxEdges', CheckReads>>;
// @ts-expect-error a name that something reads may not be said to affect nothing
export type ReadName = None<WronglyIdle<DeclaredReads | 'machine.name'>>;

export type Backlash = None<Uncovered<'machine.backlash', CheckReads>>;
export type Counter = None<Uncovered<'machine.counterMaxEdges', FigureReads>>;

describe('nothing on the Machine screen is entered in vain', () => {
  it('each field is read by a figure or a check when running, too, or is listed as affecting nothing', () => {
    const read = new Set<string>([
      ...Object.values(REGISTRY).flatMap((f) => f.reads as readonly string[]),
      ...ITEMS.flatMap((i) => i.rule.reads as readonly string[]),
    ]);
    const idle: readonly string[] = AFFECTS_NOTHING;
    expect(FIELD_NAMES.filter((f) => !read.has(`machine.${f}`)).sort()).toEqual([...idle].sort());
  });
});
