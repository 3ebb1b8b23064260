const two = (n: number): string => n.toString().padStart(2, '0');

/** A moment by the phone's clock, "14:32". @param at milliseconds since 1970 */
export const timeOf = (at: number): string => {
  const d = new Date(at);
  return `${two(d.getHours())}:${two(d.getMinutes())}`;
};
