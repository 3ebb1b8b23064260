import type { MachineProfile } from '../../machine';
import { fixedOf, mountedOf, wheelsOf } from '../../machine/gears';
import { trainRatio } from '../../drive/trains/turns';
import { writeTrain, type WrittenTrain } from '../../drive/trains/written';
import {
  add,
  div,
  equal,
  inBase,
  ONE,
  PI_HIGH,
  PI_LOW,
  ratio,
  stated,
  type Ratio,
  type Stated,
} from '../../quantity';
import { controllerDiffers, machineDiffers, partsOf, type Change, type Factors } from './change';
import { slipSteps, standIns, type SlipKind } from './slips';
import type { Steps } from './steps';
import { CONTROLLER, ODDS } from './usual';

/**
 * Where it is wrong. `profile`: the entry, and so what was reckoned from it; `controller`: what was typed there;
 * `machine`: no entry at all.
 */
export type Where = 'profile' | 'controller' | 'machine';

export interface Cause {
  readonly kind: SlipKind;
  readonly where: Where;
  /** What the profile says, and what may be so (`profile`) or was typed instead (`controller`). */
  readonly changes: readonly Change[];
  /** How the thread's pitch was typed, where that is the slip. */
  readonly typed: Stated | null;
  /** measured ÷ expected, exact (π to 5e-19); 1 of what is no ratio. */
  readonly factors: Factors;
  /** How common it is, before anything was measured (usual.ts). */
  readonly odds: number;
}

/** The thread that is set: what one may have typed of it. */
export interface ThreadSet {
  readonly pitch: Stated;
  readonly starts: number;
}

const NOTHING: Factors = { counts: ONE, screw: ONE, carriage: ONE };
const PI = div(add(PI_LOW, PI_HIGH), 2);

const inches = (unit: string): boolean => unit === 'tpi' || unit === 'in' || unit === 'dp';

/** Lead set ÷ lead wanted of each way to type a thread wrongly. */
const threadSlips = (t: ThreadSet, screw: Stated | null): [SlipKind, number, Ratio, Stated?][] => {
  const { value, unit } = t.pitch;
  const slips: [SlipKind, number, Ratio, Stated?][] = [];
  if (t.starts > 1)
    slips.push(
      ['pitch-for-lead', ODDS.leadStarts, ratio(1, t.starts)],
      ['pitch-for-lead', ODDS.usual, ratio(t.starts)],
    );
  if (unit === 'mm' || unit === 'tpi' || unit === 'in') {
    const mm = inBase(t.pitch);
    for (const other of ['mm', 'tpi', 'in'] as const)
      if (other !== unit) {
        const typed = stated(value, other);
        slips.push(['lead-unit', ODDS.unit, div(inBase(typed), mm), typed]);
      }
  } else slips.push(['pi', ODDS.pi, div(ratio(22, 7), PI)]);
  if (screw && inches(screw.unit) !== inches(unit))
    for (const by of standIns(inches(unit) ? ratio(127) : ratio(1, 127)))
      slips.push(['stand-in', ODDS.standIn, by]);
  return slips;
};

/** Wheels that may be on other than the profile says: another of the set, a stage turned round, stand-ins for 127. */
const wheelCauses = (m: MachineProfile): Cause[] => {
  const mounted = mountedOf(m);
  if (!mounted || !fixedOf(m)) return [];
  const set = [...new Set(wheelsOf(m) ?? [])];
  const now = trainRatio(mounted.stages);
  const found: Cause[] = [];
  const put = (
    kind: SlipKind,
    odds: number,
    to: WrittenTrain,
    by = div(trainRatio(to.stages), now),
  ): void => {
    if (equal(by, 1)) return;
    const change = { field: 'gearMounted', from: writeTrain(mounted), to: writeTrain(to) } as const;
    const changes = kind === 'stand-in' ? [] : [change];
    found.push({
      kind,
      where: 'profile',
      changes,
      typed: null,
      factors: machineDiffers({ train: by }),
      odds,
    });
  };
  mounted.stages.forEach((stage, i) => {
    const other = (s: readonly number[]): WrittenTrain => ({
      ...mounted,
      stages: mounted.stages.map((x, k) => (k === i ? s : x)),
    });
    put('turned', ODDS.turned, other([...stage].reverse()));
    for (const at of new Set([0, stage.length - 1]))
      for (const z of set)
        put('wheel', ODDS.wheel / set.length, other(stage.map((x, k) => (k === at ? z : x))));
  });
  for (const by of standIns(now)) put('stand-in', ODDS.standIn, mounted, by);
  return found;
};

/** Every single cause that is a ratio, for this profile and the thread that is set (null: none). */
export function* causeSteps(m: MachineProfile, t: ThreadSet | null): Steps<readonly Cause[]> {
  const gears = m.driveKind === 'change-gears';
  const found: Cause[] = [];
  for (const { kind, changes, odds } of yield* slipSteps(m)) {
    const parts = partsOf(changes);
    const entry: Cause = {
      kind,
      where: 'profile',
      changes,
      typed: null,
      factors: machineDiffers(parts),
      odds,
    };
    found.push(entry);
    // A wrong count of teeth or a belt left out is found on the machine; a controller takes figures.
    if (!gears && kind !== 'tooth' && kind !== 'belt-missing')
      found.push({
        ...entry,
        where: 'controller',
        factors: controllerDiffers(parts),
        odds: odds * CONTROLLER,
      });
    if (found.length % 16 < 2) yield;
  }
  if (gears) return [...found, ...wheelCauses(m)];
  for (const [kind, odds, by, as] of t === null ? [] : threadSlips(t, m.screwPitch))
    found.push({
      kind,
      where: 'controller',
      changes: [],
      typed: as ?? null,
      factors: controllerDiffers({ thread: by }),
      odds,
    });
  return found;
}

const noRatio = (kind: SlipKind, odds: number): Cause => ({
  kind,
  where: 'machine',
  changes: [],
  typed: null,
  factors: NOTHING,
  odds,
});
export const BACKLASH = noRatio('backlash', ODDS.backlash);
export const LOST = noRatio('lost', ODDS.lost);
export const SCREW = noRatio('screw', ODDS.screw);

/** Lost motion that the profile says, mm; null when it isn't known. */
export const backlashOf = (m: MachineProfile): Ratio | null => m.backlash && inBase(m.backlash);

export const nothing = (c: Factors): boolean => [c.counts, c.screw, c.carriage].every((r) => r.n === r.d);
