import { decimalText, fractionText, isExactDecimal, mul, ratio, type Stated } from '../quantity';
import type { OwnThread } from './own';

/** Longest power of two that people read as a fraction of an inch. */
const FINEST = 64n;

const figure = ({ value, unit }: Stated): string => {
  const binary = FINEST % value.d === 0n;
  if (unit !== 'mm' && binary) return fractionText(value);
  return isExactDecimal(value, 6) ? decimalText(value, { places: 6 }) : fractionText(value);
};

/** What stands for the size: the major diameter, or the pitch of a thread that has none. */
export const ownSize = ({ major, pitch }: OwnThread): string => {
  const size = major ?? pitch;
  return size ? figure(size) : '';
};

/** Threads per inch after a hyphen (ASME B1.1), any other pitch after a times sign (ISO 965-1). */
const pitchPart = (pitch: Stated, starts: number): string => {
  const p = figure(pitch);
  if (pitch.unit === 'tpi') return starts === 1 ? `-${p}` : `-${p} ×${starts}`;
  if (pitch.unit === 'mm') return starts === 1 ? `×${p}` : `×Ph${lead(pitch, starts)}P${p}`;
  const unit = pitch.unit === 'in' ? ' in' : pitch.unit === 'dp' ? ' DP' : ' module';
  return `×${p}${unit}${starts === 1 ? '' : ` ×${starts}`}`;
};
const lead = (pitch: Stated, starts: number): string =>
  figure({ value: mul(pitch.value, ratio(starts)), unit: pitch.unit });

/** A name from the figures, as the standards write them: "14×1.25", "1/2-13", "14×Ph3P1.5-LH". */
export const ownDesignation = (own: OwnThread): string => {
  const { major, pitch, starts, hand } = own;
  const size = major ? figure(major) : '';
  const parts = pitch ? pitchPart(pitch, starts) : '';
  const name = size ? `${size}${parts}` : parts.replace(/^[×-]/, '');
  return hand === 'left' ? `${name}-LH` : name;
};
