import type { FieldName, MachineProfile } from '../../machine';
import { isAsked } from '../../machine/asked';

/** The fields of a machine that say how its stop is arranged. */
export const ARRANGEMENT = [
  'stopDevice',
  'stopContacts',
  'stopCuts',
  'enableOpen',
  'motorAtStop',
  'stopSpindle',
  'spindleRests',
  'stopReset',
  'powerReturn',
  'stopMonitor',
] as const satisfies readonly FieldName[];
export type ArrangementField = (typeof ARRANGEMENT)[number];

/** Where a demand stands. The figures are clauses, from memory but for those of ISO 13850 and IEC 60204-1. */
export const SOURCES = [
  'iso13850-4.1',
  'iso13850-4.3',
  'iec60204-7.5',
  'iec60204-9.2',
  'iec60204-circuit',
  'iso14118',
  'iso13849',
  'iec60947-k',
  'iec60947-5-5',
  'iec61800',
] as const;
export type StopSource = (typeof SOURCES)[number];

/** `cannot`: whatever the tests show, this is no emergency stop. `weak`: it works until one thing more goes wrong. */
export type Severity = 'cannot' | 'unknown' | 'weak' | 'can';

export const ARRANGEMENT_CODES = [
  'not-known',
  'latches',
  'not-direct-opening',
  'springs-back',
  'closed-contacts',
  'open-contacts',
  'cuts-both',
  'cuts-drive',
  'takes-torque',
  'by-software',
  'no-stop',
  'enabled-by-open',
  'enable-signal',
  'category-0',
  'category-1',
  'held-by-current',
  'follows-coasting',
  'cuts-spindle',
  'spindle-torque',
  'spindle-signal',
  'spindle-goes-on',
  'coasts',
  'brakes',
  'separate-start',
  'power-cycle',
  'release-restarts',
  'stays-off',
  'starts-with-power',
  'not-watched',
  'feedback',
  'channels',
  'channel-missing',
] as const;
export type ArrangementCode = (typeof ARRANGEMENT_CODES)[number];

export interface StopFinding {
  readonly code: ArrangementCode;
  readonly severity: Severity;
  readonly sources: readonly StopSource[];
  /** The entry it follows from. */
  readonly field: ArrangementField;
}

type Judged = readonly [code: ArrangementCode, severity: Severity, ...sources: readonly StopSource[]];
/** Null where another entry has the say. */
type Table = {
  readonly [F in ArrangementField]: Readonly<Record<NonNullable<MachineProfile[F]>, Judged | null>>;
};

const CATEGORY_0: Judged = ['category-0', 'can', 'iec60204-9.2'];
const CLOSED: Judged = ['closed-contacts', 'can', 'iec60204-circuit'];
const CHANNELS: Judged = ['channels', 'can', 'iso13849'];

const TABLE: Table = {
  stopDevice: {
    'latching-direct': ['latches', 'can', 'iso13850-4.3', 'iec60947-5-5'],
    'latching-other': ['not-direct-opening', 'weak', 'iec60947-k'],
    'springs-back': ['springs-back', 'cannot', 'iso13850-4.3', 'iec60947-5-5'],
  },
  stopContacts: {
    'nc-one': CLOSED,
    'nc-two': CLOSED,
    no: ['open-contacts', 'cannot', 'iec60204-circuit', 'iec60947-k'],
  },
  stopCuts: {
    'power-both': ['cuts-both', 'can', 'iec60204-9.2'],
    'power-drive': ['cuts-drive', 'can', 'iec60204-9.2'],
    'drive-sto': ['takes-torque', 'can', 'iec61800', 'iso14118'],
    enable: null,
    input: ['by-software', 'cannot', 'iso13850-4.1', 'iec60204-9.2'],
    none: ['no-stop', 'cannot', 'iso13850-4.1'],
  },
  enableOpen: {
    off: ['enable-signal', 'weak', 'iec60204-9.2'],
    on: ['enabled-by-open', 'cannot', 'iec60204-circuit'],
  },
  motorAtStop: {
    limp: CATEGORY_0,
    'spring-brake': CATEGORY_0,
    'until-rest': ['category-1', 'can', 'iec60204-9.2'],
    held: ['held-by-current', 'cannot', 'iec60204-9.2'],
    follows: ['follows-coasting', 'cannot', 'iec60204-9.2', 'iso14118'],
  },
  stopSpindle: {
    contactor: ['cuts-spindle', 'can', 'iec60204-9.2'],
    sto: ['spindle-torque', 'can', 'iec61800', 'iso14118'],
    run: ['spindle-signal', 'weak', 'iec60204-9.2'],
    no: ['spindle-goes-on', 'cannot', 'iso13850-4.1'],
  },
  spindleRests: { coasts: ['coasts', 'can'], brake: ['brakes', 'can'] },
  stopReset: {
    start: ['separate-start', 'can', 'iso13850-4.3', 'iec60204-9.2'],
    power: ['power-cycle', 'weak', 'iec60204-7.5'],
    release: ['release-restarts', 'cannot', 'iso13850-4.3', 'iec60204-9.2'],
  },
  powerReturn: {
    off: ['stays-off', 'can', 'iec60204-7.5'],
    live: ['starts-with-power', 'cannot', 'iec60204-7.5', 'iso14118'],
  },
  stopMonitor: {
    none: ['not-watched', 'weak', 'iso13849'],
    feedback: ['feedback', 'can', 'iso13849'],
    channels: CHANNELS,
    both: CHANNELS,
  },
};

/** What two entries say together. */
const judged = (field: ArrangementField, m: MachineProfile): Judged | null => {
  // Kept in gear until the spindle rests is category 1 only where something brakes it: else a live drive follows it.
  if (field === 'motorAtStop' && m.motorAtStop === 'until-rest' && m.spindleRests !== 'brake')
    return m.spindleRests && TABLE.motorAtStop.follows;
  if (field === 'stopMonitor' && twoChannels(m) && m.stopContacts !== 'nc-two')
    return m.stopContacts && ['channel-missing', 'weak', 'iso13849'];
  return (TABLE[field] as Readonly<Record<string, Judged | null>>)[m[field] ?? ''] ?? null;
};

/** Two channels of which each is compared with the other. */
export const twoChannels = ({ stopMonitor }: MachineProfile): boolean =>
  stopMonitor === 'channels' || stopMonitor === 'both';

const ORDER: readonly Severity[] = ['cannot', 'unknown', 'weak', 'can'];

/**
 * What the stop as it is described can and cannot do, gravest first; what isn't entered is not known. Demands of ISO 13850,
 * IEC 60204-1, ISO 14118, ISO 13849-1 and IEC 60947-5, clauses partly from memory. It judges the description, not the wiring.
 */
export const judgeArrangement = (m: MachineProfile): readonly StopFinding[] => {
  const found = ARRANGEMENT.filter((f) => isAsked(f, m)).flatMap((field): StopFinding[] => {
    if (m[field] === null) return [{ code: 'not-known', severity: 'unknown', sources: [], field }];
    const [code, severity, ...sources] = judged(field, m) ?? [];
    return code && severity ? [{ code, severity, sources, field }] : [];
  });
  return found.sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
};
