import type { Context, Inputs } from '../../../src/core/context';
import { blankJob, type Job, type NoseKind } from '../../../src/core/job';
import { blankProfile, type MachineProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { ratio, stated } from '../../../src/core/quantity';
import { FAMILIES, threadsOf } from '../../../src/core/thread';

export const CONTEXT: Context = {
  now: 1_800_000_000_000,
  day: '2027-01-15',
  hours: null,
  records: [],
  events: [],
  cuttingSince: null,
  cuttingDay: null,
};

/** The example machines, change gears with a train that can't stand so and with a box, one of which nothing is known, and one whose ratio is held otherwise. */
export const MACHINES: readonly MachineProfile[] = [
  EXAMPLES.heron(),
  EXAMPLES.bittern(),
  EXAMPLES.plover(),
  EXAMPLES.dunlin(),
  { ...EXAMPLES.dunlin(), gearMounted: '20/80', screwPitch: stated(ratio(6), 'mm') },
  { ...EXAMPLES.dunlin(), gearMounted: '63/55/80 @A', quickBox: 'levers', boxTable: 'A=3/5 B=1' },
  blankProfile('Nothing', 'Nowhere'),
  {
    ...EXAMPLES.heron(),
    ratioHeld: 'other',
    pulseTiming: 'spread',
    halfNut: 'always-closed',
    wholeStopTime: stated(ratio(450), 'ms'),
  },
  ...(
    [
      'decimal',
      'fixed-rounded',
      'fixed-truncated',
      'float32',
      'float32-sum',
      'float64',
      'rev-count',
      'rate',
    ] as const
  ).map((ratioHeld) => ({
    ...EXAMPLES.heron(),
    screwPitch: stated(ratio(8), 'tpi'),
    ratioHeld,
    ratioDigits: stated(ratio(3), 'count'),
    ratioBits: stated(ratio(16), 'count'),
  })),
  { ...EXAMPLES.heron(), ratioTopMax: stated(ratio(1), 'count'), ratioBottomMax: stated(ratio(1), 'count') },
];

const job = (part: Partial<Job>): Job => ({ ...blankJob(), ...part });
const mm = (n: bigint, d = 1n) => stated(ratio(n, d), 'mm');
const SET = { rpm: ratio(300), room: mm(3n) };

const NOSES: readonly { noseKind: NoseKind; noseSize: Job['noseSize'] }[] = [
  { noseKind: 'sharp', noseSize: null },
  { noseKind: 'radius', noseSize: mm(1n, 20n) },
  { noseKind: 'flat', noseSize: stated(ratio(1, 500), 'in') },
  { noseKind: 'full-form', noseSize: null },
  { noseKind: 'radius', noseSize: mm(9n) },
];

const SIDES = ['external', 'internal'] as const;
const ofFamily = (family: string, noses: typeof NOSES): Job[] => {
  const threads = threadsOf(family);
  const thread = threads[Math.floor(threads.length / 2)];
  if (!thread) return [];
  return SIDES.flatMap((side) =>
    noses.map((nose) => job({ thread: { kind: 'catalogue', id: thread.id }, side, ...nose, ...SET })),
  );
};

const count = (n: bigint) => stated(ratio(n), 'count');
/** What a plan of passes can be made by, and what it can't. */
const PLANS: readonly Partial<Job>[] = [
  {
    passRule: 'equal-area',
    infeed: 'alternate-flank',
    length: mm(20n),
    rpm: ratio(100),
    material: 'mild-steel',
  },
  { passRule: 'fixed-step', passHold: 'count', passCount: count(200n), classId: '6g' },
  { passHold: 'chip', chipArea: stated(ratio(1, 1000), 'mm2') },
  { passHold: 'first', firstPass: mm(1n, 100n) },
  { passHold: 'count', passCount: count(100n), leastPass: mm(1n, 10n) },
  { infeed: 'flank', topSlide: stated(ratio(121, 2), 'deg') },
  { material: 'stainless', toolMaterial: 'carbide', springPasses: count(2n) },
  { side: 'internal', blank: mm(138n, 10n) },
  { blank: mm(14n) },
];

const PLANNED: readonly Job[] = PLANS.map((plan) =>
  job({
    thread: { kind: 'catalogue', id: 'iso-coarse:M16' },
    noseKind: 'radius',
    noseSize: mm(1n, 10n),
    blank: mm(159n, 10n),
    ...plan,
  }),
);

/** Nothing chosen, bare pitches, worms, a feed, a thread. */
const FEW: readonly Job[] = [
  blankJob(),
  job({ thread: { kind: 'pitch', pitch: mm(3n, 2n) }, ...SET }),
  job({ thread: { kind: 'pitch', pitch: stated(ratio(23, 2), 'tpi') }, starts: 2, ...SET }),
  job({ thread: { kind: 'pitch', pitch: stated(ratio(2), 'module') }, ...SET }),
  job({ thread: { kind: 'pitch', pitch: stated(ratio(12), 'dp') } }),
  job({ thread: { kind: 'feed', perRev: mm(1n, 10n) }, ...SET }),
  job({ thread: { kind: 'catalogue', id: 'iso-coarse:M10' }, noseKind: 'radius', ...SET }),
  job({ thread: { kind: 'catalogue', id: 'iso-coarse:M10' }, use: 'fastener' }),
];
/** Both sides of the three commonest forms with every nose. */
export const FORMS: readonly Job[] = ['iso-coarse', 'bsw', 'ba'].flatMap((f) => ofFamily(f, NOSES));
/** Forms without a diameter, and without limits, flanks or both. */
const BARE: readonly Job[] = ['square', 'worm-module', 'round'].flatMap((f) => ofFamily(f, NOSES));
const FAMILY_JOBS: readonly Job[] = FAMILIES.flatMap((f) => ofFamily(f.id, NOSES.slice(1, 2)));

export const inputsOf = (machine: MachineProfile, j: Job, context: Context = CONTEXT): Inputs => ({
  machine,
  job: j,
  context,
});

/** The few jobs on every machine; every form, nose, family and kind of plan on the first. */
export const cases = (): readonly Inputs[] => [
  ...MACHINES.flatMap((m) => FEW.map((j) => inputsOf(m, j))),
  ...[...FORMS, ...BARE, ...FAMILY_JOBS, ...PLANNED].map((j) => inputsOf(EXAMPLES.heron(), j)),
];
