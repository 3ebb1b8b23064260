import { RAMP_RULE, RAMP_TEST } from '../../figures';
import { backlashBounds, stopTimeBounds } from '../bounds';
import { judgeRamp, overloadIsKnown, rampAnswers } from '../findings';
import { RULES } from '../../prove/rules';
import type { Item } from '../item';
import { electronic } from './applies';

/** After a change of machine, wiring or firmware, and when hours or days run out. */
export const CHANGE = [
  {
    id: 'belts',
    test: { id: 'look-over', rule: RULES['look-over'] },
    tier: 'change',
    kind: 'physical',
    applies: electronic,
    rule: {
      version: 1,
      reads: ['machine.spindlePulley', 'machine.encoderPulley', 'machine.motorPulley', 'machine.screwPulley'],
      afterHours: 50,
      events: ['belt'],
    },
  },
  {
    id: 'overload',
    tier: 'change',
    kind: 'physical',
    rule: {
      version: 1,
      reads: ['machine.overload', 'machine.motorKind', 'machine.motorPulley', 'machine.screwPulley'],
      afterDays: 180,
      events: ['driver', 'belt'],
    },
    evaluate: overloadIsKnown,
  },
  {
    id: 'end-float',
    tier: 'change',
    kind: 'reading',
    rule: { version: 1, reads: ['machine.screwPitch', 'machine.screwStarts'], afterDays: 180 },
    reading: { units: ['mm', 'in'], min: '0', max: '5', bounds: backlashBounds },
  },
  {
    id: 'backlash',
    test: { id: 'backlash', rule: RULES.backlash },
    tier: 'change',
    kind: 'reading',
    rule: {
      version: 1,
      reads: ['machine.screwPitch', 'machine.screwStarts', 'machine.halfNut', 'machine.backlash'],
      afterHours: 50,
    },
    reading: { units: ['mm', 'in'], min: '0', max: '5', bounds: backlashBounds },
  },
  {
    id: 'stop-time',
    test: { id: 'stopping-time', rule: RULES['stopping-time'] },
    tier: 'change',
    kind: 'reading',
    rule: { version: 1, reads: ['machine.halfNut', 'machine.stopCuts'], afterHours: 50 },
    reading: { units: ['s', 'ms'], min: '0.05', max: '10', bounds: stopTimeBounds },
  },
  {
    id: RAMP_TEST,
    test: { id: 'ramp', rule: RULES.ramp },
    answered: rampAnswers,
    tier: 'change',
    kind: 'reading',
    applies: electronic,
    rule: RAMP_RULE,
    reading: {
      units: ['rpm'],
      min: '1',
      max: '20000',
      judge: (reading, sheet, record) => judgeRamp(reading, sheet, record !== null),
    },
  },
] as const satisfies readonly Item[];
