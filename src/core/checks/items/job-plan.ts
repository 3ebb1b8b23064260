import { gapBounds, grooveBounds, runInBounds, torqueBounds } from '../bounds';
import { leadIsKnown, limitsAtSpeed, nutRuleIsKnown, rampAnswers, ratioIsHeld } from '../findings';
import type { Item } from '../item';
import {
  electronic,
  internal,
  leftHand,
  multiStart,
  rangedSpindle,
  stoppedInCut,
  threading,
} from './applies';
import { ELECTRIC, GEARING, SET_UP, THREAD } from './reads';

/** A computed item keeps no record, so nothing lapses; what it rests on is its figure's own affair. */
const COMPUTED = { version: 1, reads: [] } as const;
const SPEED_AND_SET_UP = { version: 1, reads: [...THREAD, 'job.rpm'], events: SET_UP } as const;

/** Each job: ratio, lead, speed, nut and room. */
export const JOB_PLAN = [
  {
    id: 'recovery',
    tier: 'job',
    kind: 'physical',
    // Rests on the stop alone: another thread later doesn't bring an old stop back.
    rule: { version: 1, reads: [], events: ['stopped-in-cut'] },
    applies: stoppedInCut,
  },
  {
    id: 'ratio-held',
    tier: 'job',
    kind: 'computed',
    rule: COMPUTED,
    shows: 'ratioHeld',
    evaluate: ratioIsHeld,
  },
  { id: 'lead', tier: 'job', kind: 'computed', rule: COMPUTED, shows: 'lead', evaluate: leadIsKnown },
  {
    id: 'drive-limits',
    tier: 'job',
    kind: 'computed',
    rule: COMPUTED,
    shows: 'speed',
    evaluate: limitsAtSpeed('drive'),
  },
  {
    id: 'torque',
    tier: 'job',
    kind: 'reading',
    applies: electronic,
    rule: {
      version: 1,
      reads: [
        ...THREAD,
        'job.rpm',
        'machine.motorKind',
        'machine.screwPitch',
        'machine.screwStarts',
        'machine.motorPulley',
        'machine.screwPulley',
        'machine.gearboxRatio',
      ],
      events: ELECTRIC,
    },
    reading: { units: ['percent'], min: '0', max: '1000', bounds: torqueBounds },
    answered: rampAnswers,
  },
  {
    id: 'chuck-limit',
    tier: 'job',
    kind: 'computed',
    rule: COMPUTED,
    shows: 'job.rpm',
    evaluate: limitsAtSpeed(['chuck', 'spindle-range']),
  },
  {
    id: 'stopping-room',
    tier: 'job',
    kind: 'computed',
    rule: COMPUTED,
    shows: 'speed',
    evaluate: limitsAtSpeed(['stopping-room']),
  },
  {
    id: 'start-index',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: [...THREAD, ...GEARING] },
    applies: multiStart,
    shows: 'lead',
    evaluate: leadIsKnown,
  },
  {
    id: 'nut-rule',
    tier: 'job',
    kind: 'physical',
    rule: {
      version: 1,
      reads: [
        ...THREAD,
        ...GEARING,
        'machine.halfNut',
        'machine.threadDial',
        'machine.dialTeeth',
        'machine.dialLines',
        'machine.ratioHeld',
        'machine.ratioTopMax',
        'machine.ratioBottomMax',
        'machine.ratioDigits',
        'machine.ratioBits',
      ],
    },
    applies: threading,
    shows: 'nutRule',
    evaluate: nutRuleIsKnown,
  },
  { id: 'direction', tier: 'job', kind: 'physical', rule: { version: 1, reads: THREAD, events: SET_UP } },
  {
    id: 'left-hand',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: THREAD, events: SET_UP },
    applies: leftHand,
  },
  {
    id: 'speed-limited',
    tier: 'job',
    kind: 'physical',
    rule: {
      version: 1,
      reads: ['job.rpm', 'machine.spindleDrive', 'machine.spindleMin', 'machine.spindleMax'],
    },
    applies: rangedSpindle,
    shows: 'job.rpm',
  },
  {
    id: 'gap',
    tier: 'job',
    kind: 'reading',
    rule: SPEED_AND_SET_UP,
    reading: { units: ['mm', 'in'], min: '0', max: '5000', bounds: gapBounds },
  },
  {
    id: 'groove',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: THREAD, events: SET_UP },
    applies: threading,
    reading: { units: ['mm', 'in'], min: '0', max: '500', bounds: grooveBounds },
  },
  {
    id: 'run-in',
    tier: 'job',
    kind: 'reading',
    rule: { version: 1, reads: [...THREAD, 'machine.backlash'], events: SET_UP },
    applies: threading,
    reading: { units: ['mm', 'in'], min: '0', max: '5000', bounds: runInBounds },
  },
  {
    id: 'bar-reach',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: THREAD, events: SET_UP },
    applies: internal,
  },
  {
    id: 'retract-way',
    tier: 'job',
    kind: 'physical',
    rule: { version: 1, reads: THREAD, events: SET_UP },
    applies: internal,
  },
] as const satisfies readonly Item[];
