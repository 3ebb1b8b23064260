import type { MaterialId, ToolMaterial } from '../job';
import { springRubs } from './materials';

/**
 * Whether a pass at the last setting may go before measuring: yes with high-speed steel; not where it would only rub and
 * harden; null while tool or stock isn't known.
 */
export const springAllowed = (tool: ToolMaterial | null, material: MaterialId | null): boolean | null => {
  if (tool === 'hss') return true;
  return tool === null || material === null ? null : !springRubs(tool, material);
};
