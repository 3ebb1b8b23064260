import { banjoOf, boxOf, fixedOf, mountedOf, wheelsOf, type MachineProfile } from '../machine';
import type { Banjo } from '../drive/trains/mesh';
import { handOf, screwPerSpindle, trainRatio } from '../drive/trains/turns';
import type { WrittenTrain } from '../drive/trains/written';
import { mul, ppm, sub, type Lead, type Ratio } from '../quantity';
import type { InputPath } from '../context';
import { define, withheld, type Figure } from './define';
import type { RatioHeld } from './ids';
import type { Standing } from './standing';
import { approx, exact, type Term } from './why';

/** What stands between spindle and leadscrew: electronics, or the train of wheels mounted now. */
export type TrainNow =
  | { readonly kind: 'electronic' }
  | {
      readonly kind: 'wheels';
      readonly mounted: WrittenTrain;
      /** Leadscrew revs per spindle rev. */
      readonly ratio: Ratio;
      /** Travel per spindle rev, mm. */
      readonly cuts: Ratio;
      /** Hand it cuts with a right-hand leadscrew; null where a tumbler gives either, or it isn't known. */
      readonly hand: 'right' | 'left' | null;
      /** What the banjo allows, as far as it is known: whether the wheels can stand so is looked at with them. */
      readonly banjo: Banjo;
      /** Wheels entered as mounted that aren't in the set. */
      readonly notOwned: readonly number[];
    };

const READS = [
  'machine.driveKind',
  'machine.gearMounted',
  'machine.gearWheels',
  'machine.spindleWheel',
  'machine.shaftWheel',
  'machine.shaftTurns',
  'machine.quickBox',
  'machine.boxTable',
  'machine.shaftSum',
  'machine.slotLeast',
  'machine.slotMost',
  'machine.studs',
  'machine.studGap',
  'machine.wheelClearance',
] as const satisfies readonly InputPath[];

const notOwned = (mounted: WrittenTrain, wheels: readonly number[] | null): number[] => {
  if (!wheels) return [];
  const left = [...wheels];
  return mounted.stages.flat().filter((z) => {
    const at = left.indexOf(z);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
};

/** The train mounted now: screw revs per spindle rev, what it cuts, and whether it can stand so. */
export const train = define({
  reads: READS,
  uses: ['screwLead'],
  rule: 1,
  compute: (ask): Figure<TrainNow> => {
    const kind = ask.input('machine.driveKind');
    if (kind === 'electronic')
      return {
        value: { kind },
        standing: null,
        missing: [],
        why: { formula: 'no-train', terms: {}, result: null, source: 'entered', notes: ['no-wheels'] },
      };
    if (kind === null) return withheld('train', 'chain', ['machine.driveKind']);
    const m = Object.fromEntries(READS.map((p) => [p.slice(8), ask.input(p)])) as unknown as MachineProfile;
    const screw = ask.figure('screwLead');
    const mounted = mountedOf(m);
    const fixed = fixedOf(m);
    const box = boxOf(m);
    const r = mounted && fixed && box ? screwPerSpindle({ fixed, box }, mounted) : null;
    const wheels = mounted && trainRatio(mounted.stages);
    const lever = box?.find((row) => row.name === mounted?.box)?.ratio ?? null;
    const terms: Record<string, Term> = {
      screw: { amount: screw.value && exact(screw.value, 'mm'), from: 'screwLead' },
      spindle: {
        amount: m.spindleWheel && exact(m.spindleWheel.value, 'teeth'),
        from: 'machine.spindleWheel',
      },
      shaft: { amount: m.shaftWheel && exact(m.shaftWheel.value, 'teeth'), from: 'machine.shaftWheel' },
      wheels: { amount: wheels && exact(wheels, 'none'), from: 'machine.gearMounted' },
      ...(lever ? { box: { amount: exact(lever, 'none'), from: 'machine.boxTable' } as const } : {}),
    };
    const missing: InputPath[] = [
      ...screw.missing,
      ...(m.spindleWheel ? [] : (['machine.spindleWheel'] as const)),
      ...(m.shaftWheel ? [] : (['machine.shaftWheel'] as const)),
      ...(box
        ? []
        : m.quickBox === 'levers'
          ? (['machine.boxTable'] as const)
          : (['machine.quickBox'] as const)),
      ...(mounted ? [] : (['machine.gearMounted'] as const)),
    ];
    if (!mounted || !screw.value || !r)
      // A lever that isn't in the box's table is as good as a train not known.
      return withheld('train', 'chain', missing.length > 0 ? missing : ['machine.gearMounted'], terms);
    const cuts = mul(r, screw.value);
    return {
      value: {
        kind: 'wheels',
        mounted,
        ratio: r,
        cuts,
        hand: handOf(mounted.stages, m.shaftTurns),
        banjo: banjoOf(m),
        notOwned: notOwned(mounted, wheelsOf(m)),
      },
      standing: null,
      missing: [],
      why: {
        formula: lever ? 'train-box' : 'train',
        terms,
        result: exact(cuts, 'mm/rev'),
        source: 'chain',
        notes: [],
      },
    };
  },
});

/**
 * A train that is off by no more than this is called close: 0.04 mm in 300 mm, what a centre lathe's own leadscrew may
 * be off. ISO 1708, practical test of threading (from memory).
 */
export const TRAIN_LIMIT_PPM = 400 / 3;
/** Beyond this the train mounted is one for another lead. */
const OTHER_LEAD_PPM = 20_000;

/** What a train of wheels holds of a lead: exactly it, nearly it, or another. */
export const heldByTrain = (wanted: Figure<Lead>, now: Figure<TrainNow>): Figure<RatioHeld> => {
  const t = now.value?.kind === 'wheels' ? now.value : null;
  const terms: Record<string, Term> = {
    cuts: { amount: t && exact(t.cuts, 'mm'), from: 'train' },
    lead: { amount: wanted.value && exact(wanted.value.mm, 'mm', wanted.value.pi), from: 'lead' },
  };
  if (!t || !wanted.value) return withheld('trainHeld', 'chain', [...wanted.missing, ...now.missing], terms);
  const isExact = !wanted.value.pi && sub(t.cuts, wanted.value.mm).n === 0n;
  const error = isExact ? 0 : ppm(t.cuts, wanted.value.mm, wanted.value.pi);
  const off = Math.abs(error);
  const standing: Standing = isExact ? 'within' : off <= TRAIN_LIMIT_PPM ? 'near' : 'over';
  return {
    value: {
      exact: isExact,
      held: { top: t.ratio.n, bottom: t.ratio.d, exact: isExact },
      ppm: error,
      grows: isExact ? 'nothing' : 'travel',
      judged: null,
    },
    standing,
    missing: [],
    why: {
      formula: 'trainHeld',
      terms: { ...terms, error: { amount: approx(error, 'ppm'), from: 'lead' } },
      result: exact(t.ratio, 'none'),
      source: 'iso1708',
      notes: [isExact ? 'train-exact' : off > OTHER_LEAD_PPM ? 'train-other' : 'train-near'],
    },
  };
};
