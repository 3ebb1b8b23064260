import type { Stated } from '../quantity';

/** A setting of a handwheel's dial: whole divisions from its zero, counted on past a full turn. */
export interface DialSetting {
  readonly divisions: number;
  /** Divisions × the value of one, as the dial itself counts (diameter or radius, mm or inch). */
  readonly reading: Stated;
  /** Whole turns and the divisions past them; null where a turn's divisions aren't known. */
  readonly turns: number | null;
  readonly past: number;
}

/** One pass of a plan, as it is set on the handwheels. */
export interface PlannedPass {
  /** From 1; spring passes count on. */
  readonly n: number;
  readonly kind: 'cut' | 'spring';
  /** Cross-slide and top slide, each from where the tool touched; null: that slide isn't moved for this infeed. */
  readonly cross: DialSetting | null;
  readonly top: DialSetting | null;
  /** Radial depth that the dials then stand at, mm; and how much deeper than the pass before. */
  readonly depth: number;
  readonly step: number;
  /** Cross-section of the chip, mm²; 0 for a spring pass. */
  readonly chip: number;
}
