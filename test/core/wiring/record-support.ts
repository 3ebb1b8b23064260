import { blankWiring, withLayout, type LayoutId, type WiringRecord } from '../../../src/core/wiring/record';

/** Ids that are the same at each run. */
export const counter = (): (() => string) => {
  let n = 0;
  return () => `id${(n += 1)}`;
};

export const layoutRecord = (kind: LayoutId): { record: WiringRecord; cable: string } =>
  withLayout(blankWiring(), kind, counter());

/** The id of the one wire that carries a signal. */
export const wireOf = (r: WiringRecord, signal: string): string => {
  const found = Object.entries(r.wires).filter(([, w]) => w.signal === signal);
  if (found.length !== 1 || !found[0]) throw new Error(`${found.length} wires carry ${signal}`);
  return found[0][0];
};
