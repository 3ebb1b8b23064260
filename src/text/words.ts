/** Trade words that differ between the two sides of the Atlantic, chosen by a setting. Never after "a" or "an". */
const PAIRS = {
  pitchDiameter: { uk: 'effective diameter', us: 'pitch diameter' },
  topSlide: { uk: 'top slide', us: 'compound' },
  earth: { uk: 'earth', us: 'ground' },
  mains: { uk: 'mains', us: 'line' },
  inverter: { uk: 'inverter', us: 'VFD' },
  screen: { uk: 'screen', us: 'shield' },
  grubScrew: { uk: 'grub screw', us: 'set screw' },
  undercut: { uk: 'undercut', us: 'thread relief' },
} as const satisfies Record<string, Record<'uk' | 'us', string>>;

export type Trade = 'uk' | 'us';
export type Word = keyof typeof PAIRS;
export type Words = { readonly [W in Word]: string };

const chosen = (trade: Trade): Words =>
  Object.freeze(Object.fromEntries(Object.entries(PAIRS).map(([w, pair]) => [w, pair[trade]]))) as Words;

const ALL: Readonly<Record<Trade, Words>> = { uk: chosen('uk'), us: chosen('us') };

export const wordsFor = (trade: Trade): Words => ALL[trade];

let current: Words = ALL.uk;
/** Chooses the trade words for everything written from now on. */
export const setWords = (trade: Trade): void => {
  current = ALL[trade];
};
export const words = (): Words => current;

/** The word at the beginning of a sentence. */
export const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
