import type { MachineProfile } from '../../machine';
import { checkCable } from './check-cables';
import { checkEnds, checkNames, checkPins } from './check-ends';
import { checkDangerous, checkSignals } from './check-signals';
import type { Finding } from './finding';
import { cablesOf } from './order';
import type { WiringRecord } from './shape';

const ORDER = ['over', 'unknown', 'near', 'within'] as const;

/** Everything that the checks say of a record, worst first; nothing of one that has no wires. */
export const wiringFindings = (r: WiringRecord, machine: MachineProfile): readonly Finding[] => {
  const all = [
    ...checkDangerous(r),
    ...(Object.keys(r.wires).length > 0 ? [...checkEnds(r), ...checkPins(r)] : []),
    ...checkSignals(r),
    ...cablesOf(r).flatMap(([id, cable]) => checkCable(id, cable, machine)),
    ...checkNames(r),
  ];
  return ORDER.flatMap((s) => all.filter((f) => f.standing === s));
};
