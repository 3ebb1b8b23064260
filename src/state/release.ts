import { formulasOf, RECALLS, type Made, type Recall } from '../core/recall';

/** The formulas that were corrected, as this release knows. */
export const TABLE: readonly Recall[] = [...RECALLS, ...__RECALL__.table];

/** What this release keeps with everything that is recorded or begun. */
export const MADE: Made = { app: __VERSION__, formulas: formulasOf(TABLE) };
