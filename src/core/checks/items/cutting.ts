import type { Item } from '../item';
import { threading } from './applies';
import { GEARING, THREAD } from './reads';

/** After the scratch pass, at each pass, and before any service. */
export const CUTTING = [
  {
    id: 'gauging-clean',
    tier: 'scratch',
    kind: 'physical',
    rule: { version: 1, reads: THREAD, perCut: true },
    applies: threading,
  },
  {
    id: 'scratch-pitch',
    tier: 'scratch',
    kind: 'physical',
    rule: { version: 1, reads: [...THREAD, ...GEARING], perCut: true, events: ['power', 'work-moved'] },
    applies: threading,
    shows: 'pitch',
  },
  {
    id: 'nothing-changed',
    tier: 'pass',
    kind: 'physical',
    rule: {
      version: 1,
      reads: [
        ...THREAD,
        ...GEARING,
        'job.rpm',
        'machine.ratioHeld',
        'machine.ratioDigits',
        'machine.ratioBits',
      ],
      perCut: true,
      events: ['power', 'wiring', 'firmware', 'driver', 'belt', 'work-moved', 'stopped-in-cut'],
    },
    shows: 'job.rpm',
  },
  {
    id: 'isolated',
    tier: 'service',
    kind: 'physical',
    rule: { version: 1, reads: [], daily: true, perCut: true, afterDays: 1 / 24, events: ['power'] },
  },
] as const satisfies readonly Item[];
