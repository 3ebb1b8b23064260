import type { InputPath } from '../context';
import { REGISTRY, type FigureId } from '../figures';
import { ITEMS, type AnyItem } from './items';

/** Figures reckoned straight from an input, and checks whose answers lapse when it changes. */
export const restsOn = (
  path: InputPath,
): { readonly figures: readonly FigureId[]; readonly checks: readonly AnyItem['id'][] } => {
  const reads = (of: { readonly reads: readonly InputPath[] }): boolean => of.reads.includes(path);
  return {
    figures: (Object.keys(REGISTRY) as FigureId[]).filter((id) => reads(REGISTRY[id])),
    checks: ITEMS.filter((item) => reads(item.rule)).map(({ id }) => id),
  };
};
