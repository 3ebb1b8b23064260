/** Time for one piece of reckoning between two looks at the screen, ms. */
const PIECE = 5;

/**
 * Long reckoning a piece at a time, so that a touch meanwhile is answered.
 * @param wanted asked between two pieces @returns null where the answer was no longer wanted before the end
 */
export const inPieces = async <T>(steps: Generator<void, T>, wanted: () => boolean): Promise<T | null> => {
  for (let until = performance.now() + PIECE; ;) {
    const { done, value } = steps.next();
    if (done) return value;
    if (performance.now() < until) continue;
    await new Promise((resolve) => setTimeout(resolve));
    if (!wanted()) return null;
    until = performance.now() + PIECE;
  }
};
