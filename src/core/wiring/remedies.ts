/** What helps against what a person sees, cheapest first: look and move, then a part or two, then a new device; common practice. */
const LADDERS = {
  running: [
    ...(['apart', 'contacts', 'input-filter', 'carrier', 'clamp', 'bond', 'pull-up', 'ring'] as const),
    ...(['differential', 'insulate', 'motor-cable', 'mains-filter'] as const),
  ],
  switching: ['apart', 'contacts', 'input-filter', 'clamp', 'bond', 'suppressor', 'ring', 'differential'],
  speed: ['rates', 'input-filter', 'contacts', 'measure', 'pull-up', 'receiver', 'thicker', 'differential'],
  rest: ['contacts', 'measure', 'light', 'clamp', 'near', 'pull-up', 'differential'],
  stop: ['ramp', 'nut-open', 'measure', 'contacts', 'supply', 'brake'],
  flicker: ['measure', 'contacts', 'apart', 'near', 'thicker', 'ring', 'low-pass', 'supply'],
} as const;
export type Symptom = keyof typeof LADDERS;
export type RemedyId = (typeof LADDERS)[Symptom][number];

/** What a person sees. */
export const SYMPTOMS = Object.keys(LADDERS) as Symptom[];

export const ladder = (symptom: Symptom): readonly RemedyId[] => LADDERS[symptom];

/** What to mind before it is done. `maker`: the maker's manual and a competent person decide. */
export type RemedyCaution = 'isolate' | 'live' | 'moving' | 'maker' | 'stop-time' | 'stop-circuit';

/** Those for which it isn't enough, or isn't needed, that everything is isolated. */
const OTHERWISE: Partial<Record<RemedyId, RemedyCaution | null>> = {
  rates: null,
  'input-filter': null,
  measure: 'live',
  'nut-open': 'moving',
  ramp: 'stop-time',
  suppressor: 'stop-circuit',
  carrier: 'maker',
  'motor-cable': 'maker',
  'mains-filter': 'maker',
  brake: 'maker',
};
export const cautionOf = (id: RemedyId): RemedyCaution | null => {
  const other = OTHERWISE[id];
  return other === undefined ? 'isolate' : other;
};
