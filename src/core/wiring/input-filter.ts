/** An input filter no longer than this share of the shortest gap between edges; common practice. */
export const FILTER_SHARE = 1 / 3;

/** What an input filter may last, s: at least as long as the noise, at most a third of the gap. Empty when it lasts longer. */
export const filterWindow = (noise: number, gap: number) => {
  const most = gap * FILTER_SHARE;
  return { least: noise, most, fits: noise <= most };
};
