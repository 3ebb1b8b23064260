import type { NutRule } from '../cut';
import type { CutPlan } from '../cut/plan';
import type { StopPlace, StopRoom } from '../cut/stop';
import type { Held } from '../drive';
import type { Grows } from '../drive/formats';
import type { Lead, Ratio, Stated } from '../quantity';
import type { Thread } from '../thread';
import type { HeldJudgement } from './held-judged';
import type { SpeedVerdict } from './verdict';
import type { LimitReading } from './limit';
import type { TrainNow } from './train';

/** What is being cut, looked up: a catalogued thread, one of a person's own, a bare pitch, or a feed. */
export interface Chosen {
  readonly kind: 'catalogue' | 'own' | 'pitch' | 'feed';
  readonly thread: Thread | null;
  readonly pitch: Stated;
}

export interface RatioHeld {
  readonly exact: boolean;
  readonly held: Held;
  /** Error of the held fraction, ppm; 0 when exact. Of a running sum, over the length judged. */
  readonly ppm: number;
  /** What the error adds up with. */
  readonly grows: Grows;
  /** null for a train of wheels, which is judged by its ppm. */
  readonly judged: HeldJudgement | null;
}

/** A pair of limits to turn or bore to, in the unit of the thread's own standard; without `min`, a basic size alone. */
export interface Between {
  readonly min: Ratio | null;
  readonly max: Ratio;
  readonly unit: 'mm' | 'in';
}

export interface TapDrill {
  readonly name: string;
  readonly kind: 'metric' | 'number' | 'letter' | 'fraction';
  readonly mm: Ratio;
  /** Percentage of full thread depth that the hole leaves. */
  readonly percent: number;
}

/** Everything that can be asked, and the type of the answer. */
export interface FigureValues {
  chosen: Chosen;
  pitch: Lead;
  lead: Lead;
  screwLead: Ratio;
  countsPerRev: Ratio;
  stepsPerMotorRev: Ratio;
  motorPerScrew: Ratio;
  stepsPerScrewRev: Ratio;
  stepsPerCount: Lead;
  stepOnCarriage: Ratio;
  countOnCarriage: Lead;
  train: TrainNow;
  ratioHeld: RatioHeld;
  nutRule: NutRule;
  depth: number;
  blank: Between;
  drill: TapDrill;
  plan: CutPlan;
  /** Where the carriage has to be stopped, and the room for it. */
  stopRoom: { readonly place: StopPlace; readonly room: StopRoom };
  /** Highest whole rpm for that room; 0: none. */
  stopSpeed: bigint;
  /** How far the carriage follows a spindle that coasts, mm. */
  coasting: Ratio;
  limits: readonly LimitReading[];
  speed: SpeedVerdict;
}
export type FigureId = keyof FigureValues;
