import type { Standing } from '../../figures/standing';
import type { FieldName } from '../../machine';
import type { Ratio } from '../../quantity';
import type { CableField } from './fields';

export const FINDING_CODES = [
  'ends',
  'end-open',
  'pins',
  'pin-twice',
  'pin-beyond',
  'pin-unknown',
  'signal-unknown',
  'usual-missing',
  'partner-missing',
  'pairs',
  'pair-split',
  'pair-crowd',
  'pair-unknown',
  'screen',
  'screen-unknown',
  'screen-none',
  'screen-open',
  'screen-one-end',
  'screen-pigtail',
  'supply',
  'supply-below',
  'reach-single',
  'reach-differential',
  'reach-too-fast',
  'contacts',
  'contacts-open',
  'contacts-unknown',
  'dangerous-connector',
  'dangerous-cable',
  'earth-colour',
  'name-twice',
] as const;
export type FindingCode = (typeof FINDING_CODES)[number];

/** What would have to be entered: of the cable, or of the machine. */
export type Missing =
  | {
      readonly of: 'cable';
      readonly field: CableField | 'section' | 'screen' | 'bondFrom' | 'bondTo' | 'contacts';
    }
  | { readonly of: 'machine'; readonly field: FieldName };

/** One thing that the checks say. The words are in text/wiring. */
export interface Finding {
  readonly code: FindingCode;
  readonly standing: Standing;
  readonly cable: string | null;
  readonly connector: string | null;
  readonly pin: number | null;
  /** Wires it is about. */
  readonly wires: readonly string[];
  /** Names of signals, or of things, that it is about. */
  readonly names: readonly string[];
  readonly missing: readonly Missing[];
  /** V, m or bits a second, by what they are. */
  readonly values: Readonly<Partial<Record<'drop' | 'allowed' | 'length' | 'reach' | 'rate', Ratio>>>;
}

export const finding = (code: FindingCode, standing: Standing, about: Partial<Finding> = {}): Finding => ({
  cable: null,
  connector: null,
  pin: null,
  wires: [],
  names: [],
  missing: [],
  values: {},
  ...about,
  code,
  standing,
});
