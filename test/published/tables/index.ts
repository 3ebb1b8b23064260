import type { Table } from '../figures/figure';
import { BRITISH } from './british';
import { DRILLS } from './drills';
import { ISO } from './iso';
import { ISO_965_1 } from './iso965-1';
import { PIPE } from './pipe';
import { POWER } from './power';
import { UNIFIED } from './unified';
import { WIRES } from './wires';

/** Every published table kept here: what is checked is what is counted. */
export const TABLES: readonly Table[] = [
  ...ISO,
  ...ISO_965_1,
  ...UNIFIED,
  ...BRITISH,
  ...PIPE,
  ...POWER,
  ...DRILLS,
  ...WIRES,
];
