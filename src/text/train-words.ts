import type { Stages } from '../core/drive/trains/written';

const chain = (c: readonly number[]): string =>
  c.map((z, i) => (i > 0 && i < c.length - 1 ? `(${z})` : `${z}`)).join(' → ');

/** "40 → (70) → 60 · 20 → 80": what drives, what is between, what is driven. */
export const stagesText = (stages: Stages): string => stages.map(chain).join(' · ');
