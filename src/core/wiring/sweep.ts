import { gain, idealGain, peak, type LowPass } from './filter';

/** A frequency in Hz and a gain in dB. */
export type GainPoint = readonly [f: number, db: number];

/** What a Bode plot shows, and between which whole decades and steps of 20 dB. */
export interface Sweep {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly ideal: readonly GainPoint[];
  readonly real: readonly GainPoint[];
}

const POINTS = 240;
const decade = (f: number, whole: (x: number) => number): number =>
  10 ** whole(Number(Math.log10(f).toFixed(9)));

/**
 * Both curves over at least a decade either side of the corner, and as far as the marks go. No gain is drawn above 60 dB,
 * nor any below −80.
 * @param part null: the ideal curve alone
 * @param marks frequencies that have to be on it, Hz
 */
export const sweep = (f0: number, part: LowPass | null, marks: readonly number[]): Sweep => {
  const from = decade(Math.min(f0 / 10, ...marks), Math.floor);
  const to = decade(Math.max(f0 * 10, ...marks), Math.ceil);
  const places = Array.from({ length: POINTS + 1 }, (_, i) => from * (to / from) ** (i / POINTS));
  const along = (curve: (f: number) => number, sharp: number): GainPoint[] =>
    [...places, sharp].sort((a, b) => a - b).map((f) => [f, curve(f)]);
  const top = part ? peak(part) : null;
  return {
    from,
    to,
    low: -80,
    high: Math.min(60, Math.max(20, Math.ceil((top?.db ?? 0) / 20) * 20)),
    // Beside its corner, where it has no bounds.
    ideal: along((f) => idealGain(f, f0), f0 * (1 + 1e-4)),
    real: part && top ? along((f) => gain(f, part), top.f) : [],
  };
};
