import { blank } from './blank';
import type { Registry } from './define';
import { depth } from './depth';
import { ratioHeld } from './held';
import { nutRule } from './nut';
import { plan } from './plan';
import { coasting, stopRoom, stopSpeed } from './stop';
import { drill } from './thread';
import { train } from './train';

/** The figures that rest on tables of threads and forms of numbers; loaded beside the screens that show them. */
export const REST = {
  train,
  ratioHeld,
  nutRule,
  depth,
  blank,
  drill,
  plan,
  stopRoom,
  stopSpeed,
  coasting,
} as const satisfies Partial<Registry>;
