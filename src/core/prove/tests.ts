import { COMMISSIONING, type CommissioningId, type Inputs } from '../context';
import { counts, drift, screwTurns, thereAndBack } from './counting';
import { screwTravel, scratch, travel } from './lengths';
import { direction, lookOver, reEntry } from './looking';
import { backlash, coast, ramp, repeat, stoppingTime } from './moving';
import type { ProveTest } from './spec';

const BY_ID: Readonly<Record<CommissioningId, ProveTest>> = {
  'look-over': lookOver,
  direction,
  counts,
  'there-and-back': thereAndBack,
  drift,
  'screw-turns': screwTurns,
  'screw-travel': screwTravel,
  travel,
  backlash,
  repeat,
  ramp,
  scratch,
  're-entry': reEntry,
  'stopping-time': stoppingTime,
  coast,
};

/** Tests of motor, encoder and controller: a lathe whose screw is driven by change gears has none of them. */
const ELECTRONIC: readonly CommissioningId[] = [
  'direction',
  'counts',
  'there-and-back',
  'drift',
  'screw-turns',
  'repeat',
  'ramp',
];

export const testById = (id: string): ProveTest | null =>
  COMMISSIONING.includes(id as CommissioningId) ? BY_ID[id as CommissioningId] : null;

/** The tests of this machine, in the order in which they are done. */
export const testsOf = ({ machine }: Inputs): readonly ProveTest[] =>
  COMMISSIONING.filter(
    (id) =>
      !(machine.driveKind === 'change-gears' && ELECTRONIC.includes(id)) &&
      !(machine.halfNut === 'always-closed' && id === 're-entry'),
  ).map((id) => BY_ID[id]);
