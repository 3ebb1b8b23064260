/** Work in pieces: whoever runs it may let the screen answer between two of them. */
export type Steps<T> = Generator<undefined, T>;

/** All of it at once. */
export const atOnce = <T>(steps: Steps<T>): T => {
  for (;;) {
    const s = steps.next();
    if (s.done) return s.value;
  }
};
