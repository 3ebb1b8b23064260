import type { Measured } from '../wires';

/** "What is this thread?" Millimetres and degrees; every reading with its standard uncertainty. */
export interface ThreadReadings {
  readonly side: 'external' | 'internal';
  /** Outside diameter of a screw, bore of a hole. */
  readonly diameter: Measured | null;
  /** Axial pitch, counted over a length (`pitchOverCrests`) or gauged (`gaugedPitch`). */
  readonly pitch: Measured | null;
  /** Included angle of the flanks. */
  readonly angle: Measured | null;
}

/** Pitch from a gauge leaf that fits: one in 150 shows as light under ten teeth (common practice). */
export const gaugedPitch = (pitch: number): Measured => ({ value: pitch, u: pitch / 150 });
