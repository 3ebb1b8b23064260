import type { Stated } from '../quantity';
import type { Form } from './profiles';

/** Flank form: decides angles and constants of the basic profile. */
export type FormId =
  | 'iso60'
  | 'unj60'
  | 'mj60'
  | 'whitworth55'
  | 'ba47'
  | 'trapezoidal30'
  | 'acme29'
  | 'stubAcme29'
  | 'buttress7x45'
  | 'square'
  | 'round30'
  | 'npt60'
  | 'cycle60'
  | 'worm29'
  | 'worm40'
  /** Flanks of a person's own: the thread brings its profile along. */
  | 'own';

/** A thread in the catalogue, or one made from what a person typed. */
export interface Thread {
  /** Stable for ever: jobs and records store it, e.g. "iso-coarse:M10". */
  readonly id: string;
  readonly family: string;
  /** As the standard writes it: "M10×1.5", "1/2-13 UNC", "2 BA". */
  readonly designation: string;
  /** What stands on the size key inside its family: "M10", "1/2", "No. 6", "2". */
  readonly size: string;
  /** Nominal major diameter, mm or in; null where the thread has none of its own (a worm, a bare pitch). */
  readonly major: Stated | null;
  /** Pitch as the standard states it: mm, tpi, module or dp. Never the lead. */
  readonly pitch: Stated;
  readonly starts: number;
  readonly form: FormId;
  /** The basic profile of a thread whose form is 'own'. */
  readonly profile?: Form;
  /** Taper on diameter as rise over run (1/16), for taper pipe threads. */
  readonly taper?: Stated;
}
