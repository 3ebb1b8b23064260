import { fromBase, inBase, mul, ratio, stated, toNumber, type Stated } from '../quantity';
import type { DialSetting } from './pass';

/** A handwheel's dial. */
export interface Dial {
  /** One division, as the dial itself counts it. */
  readonly division: Stated;
  /** Divisions of one turn; null where they aren't known. */
  readonly perTurn: number | null;
  /** Travel of the slide for one division, mm: half of the division where the dial reads diameter. */
  readonly travel: number;
}

/** A dial from what is known of it. @param reads the top slide's dial always counts its own travel: `radius` */
export const dialOf = (division: Stated, divisions: Stated | null, reads: 'diameter' | 'radius'): Dial => {
  const mm = inBase(division);
  return {
    division,
    perTurn: divisions && toNumber(divisions.value),
    travel: toNumber(reads === 'diameter' ? mul(mm, ratio(1, 2)) : mm),
  };
};

/** A float's own error must not cost a division: a millionth of one is nothing that a dial shows. */
const SPECK = 1e-6;

/** Whole divisions that a travel comes to. @param travel of the slide, mm, ≥ 0 */
export const divisionsFor = (
  dial: Pick<Dial, 'travel'>,
  travel: number,
  rule: 'nearest' | 'down' | 'up',
): number => {
  const exact = travel / dial.travel;
  if (rule === 'nearest') return Math.round(exact);
  return rule === 'down' ? Math.floor(exact + SPECK) : Math.ceil(exact - SPECK);
};

/**
 * The setting at so many divisions from zero, counted on past a full turn. The reading is exact: divisions × the value
 * of one, never a sum of rounded steps.
 */
export const settingAt = ({ division, perTurn }: Dial, divisions: number): DialSetting => ({
  divisions,
  reading: stated(mul(division.value, divisions), division.unit),
  turns: perTurn === null ? null : Math.floor(divisions / perTurn),
  past: perTurn === null ? divisions : divisions % perTurn,
});

/** A travel of the slide, mm, in the dial's own count: for saying it, not for setting it. */
export const asRead = (dial: Dial, travel: number): number =>
  (travel / dial.travel) * toNumber(fromBase(inBase(dial.division), dial.division.unit));
