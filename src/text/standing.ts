import type { Standing } from '../core/figures/standing';
import type { Ratio } from '../core/quantity';
import { decimal } from './numbers';

/** How a figure stands to its limit, in one or two words: the first thing that is shown. */
export const standingWord: Record<Standing, string> = {
  within: 'OK',
  near: 'Close',
  over: 'Too much',
  unknown: 'Not known',
};

/** How the job stands, and at what speed. */
export const standingOf = (standing: Standing, rpm: Ratio | null): [word: string, at: string] => [
  standingWord[standing],
  rpm ? `at ${decimal(rpm, 1)} rpm` : '· no speed set',
];
