/** Name and number of the file's form: a reader refuses what it doesn't know. */
export const RUNS_SCHEMA = 'latheside-runs-1';

/**
 * Runs as JSON: each as it is kept (core/run/stored), exact figures as the texts of two whole numbers.
 * @throws TypeError where a run holds a figure that was not made ready to be kept
 */
export const runsFile = (runs: readonly { readonly id: string; readonly run: unknown }[]): string =>
  `${JSON.stringify({ schema: RUNS_SCHEMA, runs }, null, 1)}\n`;

/** The runs in such a file; null for anything else. `read` is given what was kept and gives null for what isn't a run. */
export const readRunsFile = <R>(
  text: string,
  read: (x: unknown) => R | null,
): readonly { readonly id: string; readonly run: R }[] | null => {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof file !== 'object' || file === null) return null;
  const { schema, runs } = file as { schema?: unknown; runs?: unknown };
  if (schema !== RUNS_SCHEMA || !Array.isArray(runs)) return null;
  return runs.flatMap((x: unknown) => {
    const { id, run } = (typeof x === 'object' && x !== null ? x : {}) as { id?: unknown; run?: unknown };
    const value = read(run);
    return typeof id === 'string' && value !== null ? [{ id, run: value }] : [];
  });
};
