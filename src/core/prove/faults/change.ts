import type { FieldName } from '../../machine';
import { div, inBase, mul, ONE, type Ratio, type Stated } from '../../quantity';

/** One entry that may be wrong: what the profile says, and what may be so instead. */
export interface Change {
  readonly field: FieldName;
  readonly from: Stated | string;
  readonly to: Stated | string;
}

/** Parts of the chain: counts per spindle turn, steps per screw turn, lead of the screw, wheels, lead of the thread. */
export type Part = 'counts' | 'steps' | 'lead' | 'train' | 'thread';
export type Parts = Readonly<Partial<Record<Part, Ratio>>>;

/** In which part of the chain a field stands, above (1) or below (−1) the line (domain: core/drive/gearing). */
export const STANDS = {
  encoderLines: ['counts', 1],
  edgesPerLine: ['counts', 1],
  spindlePulley: ['counts', 1],
  encoderPulley: ['counts', -1],
  fullSteps: ['steps', 1],
  microsteps: ['steps', 1],
  servoPulses: ['steps', 1],
  screwPulley: ['steps', 1],
  motorPulley: ['steps', -1],
  gearboxRatio: ['steps', 1],
  screwPitch: ['lead', 1],
  screwStarts: ['lead', 1],
  spindleWheel: ['train', 1],
  shaftWheel: ['train', -1],
} as const satisfies Partial<Record<FieldName, readonly [Part, 1 | -1]>>;
export type ChainField = keyof typeof STANDS;

/** By how much changed numbers move each part of the chain: true ÷ entered. */
export const partsOf = (changes: readonly { field: ChainField; from: Stated; to: Stated }[]): Parts => {
  const parts: Partial<Record<Part, Ratio>> = {};
  for (const { field, from, to } of changes) {
    const [part, side] = STANDS[field];
    const factor = side > 0 ? div(inBase(to), inBase(from)) : div(inBase(from), inBase(to));
    parts[part] = mul(parts[part] ?? ONE, factor);
  }
  return parts;
};

/** measured ÷ expected of each test, exact. Travel is screw × carriage. */
export interface Factors {
  readonly counts: Ratio;
  readonly screw: Ratio;
  readonly carriage: Ratio;
}

/**
 * The profile is wrong, and the controller was set from it: q = (C_true/C_set)·(S_set/S_true)·(Ls_true/Ls_set), times
 * what wheels turn otherwise.
 */
export const machineDiffers = (p: Parts): Factors => ({
  counts: p.counts ?? ONE,
  screw: div(mul(p.counts ?? ONE, p.train ?? ONE), p.steps ?? ONE),
  carriage: p.lead ?? ONE,
});

/** The profile is right, and something else was entered in the controller: `p` is entered ÷ true. */
export const controllerDiffers = (p: Parts): Factors => ({
  counts: ONE,
  screw: div(mul(p.steps ?? ONE, p.thread ?? ONE), mul(p.counts ?? ONE, p.lead ?? ONE)),
  carriage: ONE,
});

export const times = (a: Factors, b: Factors): Factors => ({
  counts: mul(a.counts, b.counts),
  screw: mul(a.screw, b.screw),
  carriage: mul(a.carriage, b.carriage),
});
