import { div, inBase, mul, ratio, sub, toNumber, type Ratio } from '../quantity';
import { channelPerRpm } from '../drive/rates';
import type { MachineProfile } from '../machine';

/** The machine's fields that say how fast edges follow one another. */
export const EDGE_FIELDS = ['encoderLines', 'spindlePulley', 'encoderPulley', 'encoderPhaseError'] as const;

/** Time between an edge of one channel and the next of the other, s. */
export interface EdgeGap {
  /** Frequency of a channel, Hz. */
  readonly channel: number;
  /** Shortest gap; where the phase error isn't known as if there were none, and no encoder is better. */
  readonly least: number;
  /** The phase error is known. */
  readonly sure: boolean;
}

/** Shortest time between edges of the two channels, s: (90 − φ) ÷ 360 of a channel's period. φ in degrees, below 90. */
export const edgeGapAt = (channel: Ratio, phase: Ratio): Ratio => div(sub(90, phase), mul(360, channel));

/**
 * The gap on this machine at a spindle speed; null: lines or pulleys aren't known. A receiver has to tell every edge of
 * both channels from the next one, however many of them are counted.
 */
export const edgeGapOf = (m: MachineProfile, rpm: Ratio): EdgeGap | null => {
  const { encoderLines: lines, spindlePulley: spindle, encoderPulley: encoder, encoderPhaseError: off } = m;
  if (!lines || !spindle || !encoder) return null;
  const channel = mul(
    channelPerRpm({ lines: inBase(lines), spindle: inBase(spindle), encoder: inBase(encoder) }),
    rpm,
  );
  return {
    channel: toNumber(channel),
    least: toNumber(edgeGapAt(channel, off ? inBase(off) : ratio(0))),
    sure: off !== null,
  };
};
