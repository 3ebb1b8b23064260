import { blankBounds, wireBounds } from '../bounds';
import type { Item } from '../item';
import { openingNut, threading } from './applies';
import { SET_UP, THREAD } from './reads';

const SET = { version: 1, reads: THREAD, events: SET_UP } as const;

/** Each job: work, tool, blank and gauges. */
export const JOB_SET_UP = [
  {
    id: 'chuck-secured',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: [...THREAD, 'job.rpm', 'machine.chuckMount'], events: SET_UP },
  },
  { id: 'overhang', tier: 'job', kind: 'physical', rule: SET },
  {
    id: 'blank',
    tier: 'job',
    kind: 'reading',
    rule: { version: 2, reads: [...THREAD, 'job.classId', 'job.noseKind'], events: SET_UP },
    applies: threading,
    shows: 'blank',
    reading: { units: ['mm', 'in'], min: '0.1', max: '2000', bounds: blankBounds },
  },
  { id: 'chamfer', tier: 'job', kind: 'physical', rule: SET, applies: threading },
  {
    id: 'tool',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: [...THREAD, 'job.noseKind', 'job.noseSize'], events: SET_UP },
  },
  { id: 'compound', tier: 'job', kind: 'physical', rule: SET, applies: threading },
  { id: 'tool-clear', tier: 'job', kind: 'physical', rule: SET },
  { id: 'withdrawal', tier: 'job', kind: 'physical', rule: SET },
  {
    id: 'half-nut',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: [...THREAD, 'machine.halfNut'], afterHours: 50, events: SET_UP },
    applies: openingNut,
  },
  {
    id: 'plan',
    tier: 'job',
    kind: 'reading',
    rule: {
      version: 1,
      reads: [...THREAD, 'job.classId', 'job.noseKind', 'job.noseSize'],
      events: SET_UP,
    },
    applies: threading,
    shows: 'depth',
    reading: { units: ['count'], min: '1', max: '200', whole: true },
  },
  { id: 'zero', tier: 'job', kind: 'physical', rule: SET },
  {
    id: 'gauge',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: [...THREAD, 'job.classId'] },
    applies: threading,
    reading: { units: ['mm', 'in'], min: '0.05', max: '50', bounds: wireBounds },
  },
] as const satisfies readonly Item[];
