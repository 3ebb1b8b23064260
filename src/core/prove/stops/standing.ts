import type { Inputs } from '../../context';
import type { Standing } from '../../figures';
import { judgeArrangement, type Severity, type StopFinding } from './arrangement';
import { stopNow, type StopNow } from './now';
import { STOP_PROTOCOL, type StopTest } from './tests';

/** As figures stand: what a person recorded is never better than what the arrangement can do. */
export const SEVERITY_STANDING: Readonly<Record<Severity, Standing>> = {
  cannot: 'over',
  unknown: 'unknown',
  weak: 'near',
  can: 'within',
};

/** Null: it has no say. */
export const NOW_STANDING: Readonly<Record<StopNow['code'], Standing | null>> = {
  'not-here': null,
  'not-known': 'unknown',
  'not-done': 'unknown',
  lapsed: 'unknown',
  undecided: 'unknown',
  failed: 'over',
  further: 'over',
  'not-ok': 'over',
  lacking: 'near',
  repeated: 'within',
  passed: 'within',
};

export interface StopsNow {
  readonly findings: readonly StopFinding[];
  readonly tests: readonly {
    readonly test: StopTest;
    readonly now: StopNow;
    readonly standing: Standing | null;
  }[];
  /** Of the arrangement, and of all together: the gravest of each, over before unknown. */
  readonly arrangement: Standing;
  readonly standing: Standing;
  /** Those to be done, in the order of the protocol. */
  readonly due: readonly StopTest[];
}

const GRAVEST: readonly Standing[] = ['over', 'unknown', 'near'];
const gravest = (all: readonly (Standing | null)[]): Standing =>
  GRAVEST.find((s) => all.includes(s)) ?? 'within';

/** The machine's stop as it is described and as its tests were recorded. */
export const stopsNow = (inputs: Inputs): StopsNow => {
  const findings = judgeArrangement(inputs.machine);
  const tests = STOP_PROTOCOL.map((test) => {
    const now = stopNow(inputs, test);
    return { test, now, standing: NOW_STANDING[now.code] };
  });
  const due = tests.filter((t) => t.standing === 'unknown' || t.standing === 'over').map((t) => t.test);
  const arrangement = gravest(findings.map((f) => SEVERITY_STANDING[f.severity]));
  return {
    findings,
    tests,
    arrangement,
    standing: gravest([arrangement, ...tests.map((t) => t.standing)]),
    due,
  };
};
