import type { FieldName, MachineProfile } from '../../machine';
import { toNumber, type Ratio } from '../../quantity';
import { MARGIN_ELECTRONIC, worst, type Standing } from '../../figures/standing';
import { EDGE_FIELDS, edgeGapOf, type EdgeGap } from '../edge-gap';
import type { LowPass } from '../filter';
import type { NoiseName, Output } from './fields';

/** What is known of a machine's cables and noise. */
export interface NoiseGiven {
  /** As entered, in its base unit (mm, s, Hz, V, A, Ω, H, F, parts of one); null: not known. */
  readonly entered: (name: NoiseName) => number | null;
  readonly output: Output | null;
  readonly profile: MachineProfile;
  /** Spindle speed at which the edges come; null: not known. */
  readonly rpm: Ratio | null;
}

/** Base units in which figures are given. */
export type AmountUnit = 'Hz' | 's' | 'ohm' | 'ohm/m' | 'F' | 'A' | 'V' | 'm' | 'dB' | 'bit/s';

/** One figure of a calculation. */
export interface Line {
  readonly code: string;
  /** null: not known. */
  readonly value: number | null;
  readonly unit: AmountUnit;
  readonly standing?: Standing;
  /** A limit is rounded to the careful side when it is shown. */
  readonly round?: 'down' | 'up';
  /** The frequency at which it is so, Hz. */
  readonly at?: number;
}
export type Missing = NoiseName | 'output' | FieldName;

/** What is drawn: both curves' parts, and what lies where. */
export interface LowPassShape {
  readonly f0: number;
  /** null: source or load isn't known, so that only the ideal slope can be drawn. */
  readonly part: LowPass | null;
  readonly marks: readonly number[];
}

export interface Worked {
  readonly lines: readonly Line[];
  /** null: no limit is known to judge by. */
  readonly standing: Standing | null;
  readonly missing: readonly Missing[];
  /** What else is to be said. */
  readonly notes: readonly string[];
  readonly shape?: LowPassShape;
}

/** A figure made from others; null when one of them isn't known. */
export const made = (
  make: (...known: number[]) => number,
  ...from: readonly (number | null)[]
): number | null => (from.includes(null) ? null : make(...(from as number[])));

/** How a demand stands to a limit of floats: near from the limit times its margin. */
export const standingAt = (demand: number | null, limit: number | null, margin = 1): Standing => {
  if (demand === null || limit === null) return 'unknown';
  if (demand > limit) return 'over';
  return demand > limit * margin ? 'near' : 'within';
};

/** From where a length is close to its limit. */
export const LENGTH_MARGIN = toNumber(MARGIN_ELECTRONIC);

/** Gathers the figures of one calculation, and what it lacks. */
export class Sum {
  private readonly lines: Line[] = [];
  private readonly missing: Missing[] = [];
  private readonly notes: string[] = [];
  private channel: number | null = null;

  constructor(private readonly given: NoiseGiven) {}

  /** Something that has to be known. */
  need(name: NoiseName): number | null {
    const value = this.given.entered(name);
    return value ?? this.lacks(name);
  }
  /** Something that may be left out. */
  may(name: NoiseName): number | null {
    return this.given.entered(name);
  }
  /** The cable's length, m. */
  length(): number | null {
    return made((mm) => mm / 1000, this.need('length'));
  }

  lacks(what: Missing): null {
    this.missing.push(what);
    return null;
  }
  note(code: string): void {
    this.notes.push(code);
  }
  line(
    code: string,
    value: number | null,
    unit: AmountUnit,
    more: Omit<Line, 'code' | 'value' | 'unit'> = {},
  ) {
    this.lines.push({ code, value, unit, ...more });
  }

  /** The gap between edges on this machine at its speed. */
  gap(): EdgeGap | null {
    const { profile, rpm } = this.given;
    for (const field of EDGE_FIELDS) if (!profile[field]) this.lacks(field);
    if (!rpm) return this.lacks('rpm');
    const gap = edgeGapOf(profile, rpm);
    this.channel = gap && gap.channel;
    return gap;
  }
  /**
   * How a time stands to a share of the shortest gap. Where the channels' phase isn't known it may be too long already for
   * the best encoder; that it is short enough can't be said.
   */
  inGap(time: number | null, gap: EdgeGap | null, share: number): Standing {
    const standing = standingAt(time, gap && gap.least * share);
    return gap?.sure === false && standing !== 'over' ? 'unknown' : standing;
  }

  /** @param judged false: there is no limit, so that nothing is judged */
  done(judged = true): Worked {
    // What it all rests on comes last.
    if (this.channel !== null) this.line('channel', this.channel, 'Hz');
    const { lines, missing, notes } = this;
    const all = lines.flatMap((l) => l.standing ?? []);
    const standing = judged ? worst(missing.length > 0 ? [...all, 'unknown'] : all) : null;
    return { lines, standing, missing: [...new Set(missing)], notes };
  }
}
