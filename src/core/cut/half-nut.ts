import { div, isWhole, mul, ratio, type Lead, type Ratio } from '../quantity';

export type KeepClosed =
  'no-half-nut' | 'irrational' | 'inexact-ratio' | 'no-dial' | 'gear-misses' | 'no-line';

/**
 * Where the half-nut may be closed again in the same groove. `a` and `b` are p_s ÷ L in lowest terms: every
 * b half-nut pitches along the screw, every a spindle revs at one fixed stop.
 */
export type NutRule =
  | { readonly kind: 'anywhere'; readonly a: bigint; readonly b: bigint }
  | {
      readonly kind: 'lines';
      /** Good lines when line `of` was used first; evenly spaced, so from another line count on by of ÷ lines.length. */
      readonly lines: readonly number[];
      readonly of: number;
      /** Good positions in a turn of the dial, marked or not. */
      readonly perTurn: bigint;
      readonly a: bigint;
      readonly b: bigint;
    }
  | {
      readonly kind: 'keep-closed';
      readonly reason: KeepClosed;
      readonly a: bigint | null;
      readonly b: bigint | null;
    };

export interface NutInputs {
  readonly lead: Lead;
  /** Distance between the places where the half-nut can engage, mm: screw lead ÷ screw starts. */
  readonly nutPitch: Ratio;
  readonly halfNut: boolean;
  /** null: the lathe has no thread dial. */
  readonly dial: { readonly teeth: number; readonly lines: number } | null;
  /** False where the drive holds the ratio only nearly: each picking-up then adds its error. */
  readonly exactRatio: boolean;
}

/**
 * The half-nut rule, exact. While spindle and screw stay locked, moving the carriage by k nut pitches re-enters
 * the same groove iff k·p_s is a whole multiple of the lead. A dial gear of N teeth shows this iff b divides N;
 * line m of D stands at m·N/D teeth and is good iff that is a whole multiple of b (counted from the line first
 * used). Own derivation; agrees with lathe makers' dial plates for an 8 tpi screw and 16-tooth gear.
 */
export const nutRule = (x: NutInputs): NutRule => {
  const closed = (reason: KeepClosed, a: bigint | null = null, b: bigint | null = null): NutRule => ({
    kind: 'keep-closed',
    reason,
    a,
    b,
  });
  if (!x.halfNut) return closed('no-half-nut');
  if (x.lead.pi) return closed('irrational');
  const { n: a, d: b } = div(x.nutPitch, x.lead.mm);
  if (!x.exactRatio) return closed('inexact-ratio', a, b);
  if (b === 1n) return { kind: 'anywhere', a, b };
  if (!x.dial) return closed('no-dial', a, b);
  const { teeth, lines } = x.dial;
  if (BigInt(teeth) % b !== 0n) return closed('gear-misses', a, b);
  const good = Array.from({ length: lines }, (_, m) => m).filter((m) =>
    isWhole(div(mul(ratio(m), ratio(teeth, lines)), b)),
  );
  if (good.length === 0) return closed('no-line', a, b);
  const marked = good.map((m) => (m === 0 ? lines : m)).sort((p, q) => p - q);
  return { kind: 'lines', lines: marked, of: lines, perTurn: BigInt(teeth) / b, a, b };
};

/**
 * The good lines when the nut was first closed on line `first`, in their order round the dial. Where the dial was
 * mounted doesn't matter: that closing is what the others are counted from. @param first from 1 to `of`
 */
export const linesFrom = (rule: Extract<NutRule, { kind: 'lines' }>, first: number): number[] =>
  rule.lines.map((line) => ((line + first - 1) % rule.of) + 1).sort((p, q) => p - q);
