/** Most starts that may be entered. */
export const MAX_STARTS = 60;
