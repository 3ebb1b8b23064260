import { speedIsChosen } from '../findings';
import type { Item } from '../item';

/**
 * A walk past the machine is good for the one start that follows it, and for no longer than an hour (own
 * choice: long enough to set off, too short to come back after lunch).
 */
const WALK = { version: 1, daily: true, perCut: true, afterDays: 1 / 24 } as const;
const AGAIN = ['power', 'work-moved', 'stopped-in-cut', 'cut-ended'] as const;

/** Each start, six of them, walked from headstock to tailstock. */
export const START = [
  { id: 'chuck-key', tier: 'start', kind: 'physical', rule: { ...WALK, reads: [], events: AGAIN } },
  {
    id: 'work-tight',
    tier: 'start',
    kind: 'physical',
    rule: { ...WALK, reads: ['job.thread', 'job.side', 'machine.chuckMount'], events: AGAIN },
  },
  { id: 'guard', tier: 'start', kind: 'physical', rule: { ...WALK, reads: [], events: AGAIN } },
  { id: 'clothing', tier: 'start', kind: 'physical', rule: { ...WALK, reads: [], events: AGAIN } },
  {
    id: 'handwheel-nut',
    tier: 'start',
    kind: 'physical',
    rule: {
      ...WALK,
      reads: ['job.thread', 'job.starts', 'job.hand', 'job.side', 'machine.halfNut'],
      events: AGAIN,
    },
  },
  {
    id: 'speed-set',
    tier: 'start',
    kind: 'physical',
    rule: {
      ...WALK,
      reads: [
        'job.rpm',
        'machine.spindleDrive',
        'machine.spindleSpeeds',
        'machine.spindleMin',
        'machine.spindleMax',
      ],
      events: AGAIN,
    },
    shows: 'job.rpm',
    evaluate: speedIsChosen,
  },
] as const satisfies readonly Item[];
