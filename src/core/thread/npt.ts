import { add, div, mul, ratio, sub, type Ratio } from '../quantity';
import { figure } from './number';

/** Size : length of hand engagement L1 in inches. ASME B1.20.1 Table 2 (from memory of that table). */
const L1 = `1/16:0.160 1/8:0.1615 1/4:0.2278 3/8:0.240 1/2:0.320 3/4:0.339 1:0.400 1-1/4:0.420 1-1/2:0.420 2:0.436
2-1/2:0.682 3:0.766 3-1/2:0.821 4:0.844 5:0.937 6:0.958 8:1.063 10:1.210 12:1.360 14:1.562 16:1.812 18:2.000 20:2.125
24:2.375`;

const lengths = new Map(
  L1.split(/\s+/).map((cell) => {
    const [size = '', length = ''] = cell.split(':');
    return [size.replace('-', ' '), length];
  }),
);

/** L1, inch, for a size as it stands on its key ("1 1/4"); null for a size outside the table. */
export const handEngagement = (size: string): Ratio | null => {
  const l = lengths.get(size);
  return l === undefined ? null : figure(l);
};

/** E0, pitch diameter at the small end of the external thread, inch: D − (0.05 D + 1.1) P (ASME B1.20.1). */
export const smallEndPitch = (pipe: Ratio, P: Ratio): Ratio =>
  sub(pipe, mul(add(mul(ratio(5, 100), pipe), ratio(11, 10)), P));

/** L2, length of effective thread, inch: (0.80 D + 6.8) P (ASME B1.20.1). */
export const effectiveLength = (pipe: Ratio, P: Ratio): Ratio =>
  mul(add(mul(ratio(80, 100), pipe), ratio(68, 10)), P);

/**
 * Diameters at the gauge plane (the end of hand engagement), inch, unrounded: E1 = E0 + L1/16, and half the height of
 * 0.8 P to either side. Null for a size outside the table.
 */
export const nptSizes = (
  size: string,
  pipe: Ratio,
  P: Ratio,
): { unit: 'in'; major: Ratio; pitch: Ratio; minor: Ratio } | null => {
  const l1 = handEngagement(size);
  if (!l1) return null;
  const pitch = add(smallEndPitch(pipe, P), div(l1, 16));
  const height = mul(ratio(8, 10), P);
  return { unit: 'in', major: add(pitch, height), pitch, minor: sub(pitch, height) };
};
