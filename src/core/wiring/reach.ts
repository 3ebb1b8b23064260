/**
 * How far a differential pair reaches at a bit rate, m: the guide's points in the annex of TIA/EIA-422 (24 AWG twisted
 * pair, terminated): 1219 m at 100 kb/s, 122 m at 1 Mb/s, 12 m at 10 Mb/s.
 */
const GUIDE = [
  [100_000, 1219],
  [1_000_000, 122],
  [10_000_000, 12],
] as const;

/**
 * Reach at a bit rate in bit/s, m: between the points straight on log scales; slower than the first no further than
 * there; null above the last, of which the guide says nothing.
 */
export const differentialReach = (rate: number): number | null => {
  const next = GUIDE.findIndex(([at]) => rate <= at);
  const upper = GUIDE[next];
  if (!upper) return null;
  const lower = GUIDE[next - 1];
  if (!lower) return upper[1];
  const part = Math.log(rate / lower[0]) / Math.log(upper[0] / lower[0]);
  return lower[1] * (upper[1] / lower[1]) ** part;
};

/** Each period of a channel is two bits of the line: high and low. */
export const bitRate = (channel: number): number => 2 * channel;

/** Near an inverter, m; common practice. */
export const SINGLE_ENDED_REACH = 3;
export const OPEN_COLLECTOR_REACH = 5;
