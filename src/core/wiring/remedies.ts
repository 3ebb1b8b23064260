/** What a person sees. */
export const SYMPTOMS = ['running', 'switching', 'speed', 'rest', 'stop', 'flicker'] as const;
export type Symptom = (typeof SYMPTOMS)[number];

/** What to mind before it is done. `maker`: the maker's manual and a competent person decide. */
export type RemedyCaution = 'isolate' | 'maker' | 'stop-time' | 'stop-circuit';

interface Remedy {
  /** 0: look and move; 1: minutes and pennies; 2: a part or two; 3: a new device; 4: a competent person's work. */
  readonly cost: 0 | 1 | 2 | 3 | 4;
  readonly caution?: RemedyCaution;
}

/** What helps against noise, by what it costs; common practice. */
export const REMEDIES = {
  contacts: { cost: 0, caution: 'isolate' },
  apart: { cost: 0, caution: 'isolate' },
  rates: { cost: 0 },
  'input-filter': { cost: 0 },
  measure: { cost: 0 },
  ramp: { cost: 0, caution: 'stop-time' },
  'nut-open': { cost: 0 },
  carrier: { cost: 0, caution: 'maker' },
  bond: { cost: 1, caution: 'isolate' },
  clamp: { cost: 1, caution: 'isolate' },
  'pull-up': { cost: 1, caution: 'isolate' },
  near: { cost: 1, caution: 'isolate' },
  light: { cost: 1, caution: 'isolate' },
  suppressor: { cost: 2, caution: 'stop-circuit' },
  ring: { cost: 2, caution: 'isolate' },
  thicker: { cost: 2, caution: 'isolate' },
  'low-pass': { cost: 2, caution: 'isolate' },
  receiver: { cost: 2, caution: 'isolate' },
  supply: { cost: 3, caution: 'isolate' },
  differential: { cost: 3, caution: 'isolate' },
  insulate: { cost: 3, caution: 'isolate' },
  'motor-cable': { cost: 4, caution: 'maker' },
  'mains-filter': { cost: 4, caution: 'maker' },
  brake: { cost: 4, caution: 'maker' },
} as const satisfies Record<string, Remedy>;
export type RemedyId = keyof typeof REMEDIES;

const BY_SYMPTOM: Readonly<Record<Symptom, readonly RemedyId[]>> = {
  running: [
    ...(['apart', 'contacts', 'clamp', 'bond', 'input-filter', 'pull-up', 'ring', 'carrier'] as const),
    ...(['differential', 'insulate', 'motor-cable', 'mains-filter'] as const),
  ],
  switching: ['apart', 'contacts', 'input-filter', 'clamp', 'bond', 'suppressor', 'ring', 'differential'],
  speed: ['rates', 'input-filter', 'contacts', 'pull-up', 'receiver', 'measure', 'thicker', 'differential'],
  rest: ['contacts', 'light', 'measure', 'clamp', 'near', 'pull-up', 'differential'],
  stop: ['ramp', 'nut-open', 'measure', 'contacts', 'supply', 'brake'],
  flicker: ['measure', 'contacts', 'apart', 'near', 'thicker', 'ring', 'low-pass', 'supply'],
};

/** What to try for a symptom, cheapest first. */
export const ladder = (symptom: Symptom): readonly RemedyId[] =>
  [...BY_SYMPTOM[symptom]].sort((a, b) => REMEDIES[a].cost - REMEDIES[b].cost);

export const cautionOf = (id: RemedyId): RemedyCaution | null => {
  const remedy: Remedy = REMEDIES[id];
  return remedy.caution ?? null;
};
