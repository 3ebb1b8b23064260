import { STOP_TESTS, type StopTestId } from '../../context';
import type { FieldName, MachineProfile } from '../../machine';
import { asked } from '../given';
import type { Asked, Caution } from '../spec';
import { twoChannels } from './arrangement';

/** Cautions of these tests beside those of the commissioning tests. */
export const STOP_CAUTIONS = [
  'nut-closed',
  'nut-stays',
  'hand-on-main',
  'low-rpm',
  'helper',
  'power-off-wires',
  'extra-low',
  'competent',
  'never-unplug',
  'lock-off',
  'drive-off',
] as const;
export type StopCaution = (typeof STOP_CAUTIONS)[number] | Caution;

/** Why a test isn't asked of a machine. */
export type NotHere = 'change-gears' | 'one-channel' | 'no-feedback' | 'screw-on';

/** One test of the protocol (own words; ISO 13850 and IEC 60204-1 in the main, common practice for the rest). */
export interface StopTest {
  readonly id: StopTestId;
  /** Its place in the protocol, from 1. */
  readonly number: number;
  readonly cautions: readonly StopCaution[];
  /** Each day, or before each threading session. */
  readonly daily: boolean;
  /** The pre-start check that repeats it each day. */
  readonly check: string | null;
  /** A lathe may have nothing of the kind, which is recorded then. */
  readonly mayLack: boolean;
  /** How far the carriage runs on after the stop, mm. */
  readonly distance: Asked | null;
}

type Spec = Partial<Omit<StopTest, 'id' | 'number' | 'cautions'>> & {
  readonly cautions: readonly StopCaution[];
};

const BARE: readonly StopCaution[] = ['tool-clear', 'hand-on-main', 'low-rpm'];
const OPEN: readonly StopCaution[] = [...BARE, 'nut-open'];
const HAND: readonly StopCaution[] = ['isolate-spindle', ...OPEN];
const MOVING: readonly StopCaution[] = ['hands-clear', ...OPEN];
const CLOSED: readonly StopCaution[] = ['hands-clear', ...BARE, 'nut-closed'];
const WIRES: readonly StopCaution[] = ['competent', 'power-off-wires', ...OPEN];

const SPECS: Readonly<Record<StopTestId, Spec>> = {
  'stop-press-at-rest': { cautions: HAND, daily: true, check: 'stop-at-rest' },
  'stop-press-moving': {
    cautions: CLOSED,
    daily: true,
    check: 'stop-moving',
    distance: asked('distance', ['mm', 'in'], '0', '2000'),
  },
  'stop-stays-in': { cautions: OPEN, daily: true, check: 'stop-latches' },
  'stop-release': { cautions: ['hands-clear', ...HAND], daily: true, check: 'stop-release' },
  'stop-separate-start': { cautions: MOVING, daily: true, check: 'stop-restart' },
  'stop-start-held': { cautions: MOVING },
  'stop-power-returns': { cautions: ['helper', ...CLOSED], daily: true, check: 'power-return' },
  'stop-brown-out': { cautions: ['helper', ...MOVING] },
  'stop-wire-open': { cautions: WIRES },
  'stop-wire-short': { cautions: ['extra-low', ...WIRES], mayLack: true },
  'stop-channel-bridged': { cautions: ['extra-low', ...WIRES] },
  'stop-encoder-lost': { cautions: [...MOVING, 'never-unplug'] },
  'stop-drive-alarm': { cautions: ['never-unplug', ...MOVING], mayLack: true },
  'stop-controller-frozen': { cautions: MOVING },
  'stop-drive-off': { cautions: CLOSED },
  'stop-plug-reverse': { cautions: MOVING },
  'stop-carriage-limit': { cautions: CLOSED, mayLack: true },
  'stop-feedback-open': { cautions: WIRES },
  'stop-lock-off': { cautions: ['competent', 'lock-off'] },
  'stop-reach': { cautions: ['drive-off'], check: 'stop-reach' },
};

const BLANK = { daily: false, check: null, mayLack: false, distance: null };

/** The protocol in its order. */
export const STOP_PROTOCOL: readonly StopTest[] = STOP_TESTS.map((id, i) => ({
  ...BLANK,
  ...SPECS[id],
  id,
  number: i + 1,
}));

export const stopTestById = (id: string): StopTest | null => STOP_PROTOCOL.find((t) => t.id === id) ?? null;

/** A nut that stays closed can't be opened for a test: the carriage needs room both ways then. */
export const cautionsOf = (test: StopTest, m: MachineProfile): readonly StopCaution[] =>
  m.halfNut === 'always-closed'
    ? test.cautions.map((c) => (c === 'nut-open' || c === 'nut-closed' ? 'nut-stays' : c))
    : test.cautions;

/** Tests of encoder, controller and motor drive: with change gears there is none of them. */
const ELECTRONIC: readonly StopTestId[] = [
  'stop-press-at-rest',
  'stop-encoder-lost',
  'stop-drive-alarm',
  'stop-controller-frozen',
  'stop-drive-off',
  'stop-plug-reverse',
];

/** Whether a test is asked of this machine: `yes`, why not, or what isn't known that would tell. */
export type Applies =
  | { readonly code: 'yes' }
  | { readonly code: 'not-here'; readonly why: NotHere }
  | { readonly code: 'not-known'; readonly field: FieldName };

const YES: Applies = { code: 'yes' };
const no = (why: NotHere): Applies => ({ code: 'not-here', why });
const notKnown = (field: FieldName): Applies => ({ code: 'not-known', field });

export const appliesTo = ({ id }: StopTest, m: MachineProfile): Applies => {
  if (ELECTRONIC.includes(id) && m.driveKind === 'change-gears') return no('change-gears');
  if (id === 'stop-plug-reverse') {
    if (!m.chuckMount) return notKnown('chuckMount');
    return m.chuckMount === 'screw-on' ? no('screw-on') : YES;
  }
  if (id !== 'stop-channel-bridged' && id !== 'stop-feedback-open') return YES;
  if (!m.stopMonitor) return notKnown('stopMonitor');
  if (id === 'stop-channel-bridged') return twoChannels(m) ? YES : no('one-channel');
  return m.stopMonitor === 'feedback' || m.stopMonitor === 'both' ? YES : no('no-feedback');
};
