import { noneBounds, tenTurnsBounds } from '../bounds';
import { stopIsFitted, stopIsTested } from '../findings';
import { RULES } from '../../prove/rules';
import { STOP_READS, STOP_RULES } from '../../prove/stops';
import type { StopTestId } from '../../context';
import type { Item } from '../item';
import { dialFitted, electronic } from './applies';
import { EACH_DAY, ELECTRIC, GEARING } from './reads';

const STOP = { ...EACH_DAY, reads: ['machine.stopCuts'], events: ['power', ...ELECTRIC] } as const;

/** A stop test whose record answers one of these for the day. */
const tested = (id: StopTestId) => ({ test: { id, rule: STOP_RULES[id] } });

/** Each day and after each power-up. */
export const DAY = [
  {
    id: 'machine-identity',
    tier: 'day',
    kind: 'physical',
    rule: {
      ...EACH_DAY,
      reads: [...GEARING, 'machine.servoEncoder', 'machine.servoGearMax'],
      events: ['power', 'driver', 'belt', 'firmware'],
    },
  },
  {
    id: 'old-feeds',
    tier: 'day',
    kind: 'physical',
    applies: electronic,
    rule: { ...EACH_DAY, reads: ['machine.gearboxRatio', 'machine.gearboxLever'] },
  },
  {
    id: 'carriage-free',
    tier: 'day',
    kind: 'physical',
    rule: { ...EACH_DAY, reads: ['machine.gearboxLever'], events: ['power', 'work-moved'] },
  },
  { id: 'lubrication', tier: 'day', kind: 'physical', rule: { ...EACH_DAY, reads: ['machine.halfNut'] } },
  {
    id: 'dial-meshed',
    tier: 'day',
    kind: 'physical',
    rule: { ...EACH_DAY, reads: ['machine.threadDial', 'machine.dialTeeth', 'machine.dialLines'] },
    applies: dialFitted,
  },
  { id: 'chips', tier: 'day', kind: 'physical', rule: { ...EACH_DAY, reads: [] } },
  {
    // Before the stop tests: it ends with a power-up, after which those are due again.
    id: 'power-return',
    ...tested('stop-power-returns'),
    tier: 'day',
    kind: 'physical',
    rule: { ...STOP, reads: ['machine.stopCuts', 'machine.halfNut', 'machine.motorKind'] },
  },
  {
    id: 'stop-reach',
    ...tested('stop-reach'),
    tier: 'day',
    kind: 'physical',
    rule: STOP,
    evaluate: stopIsFitted,
  },
  {
    id: 'stop-at-rest',
    ...tested('stop-press-at-rest'),
    tier: 'day',
    kind: 'physical',
    applies: electronic,
    rule: STOP,
    evaluate: stopIsFitted,
  },
  {
    id: 'stop-latches',
    ...tested('stop-stays-in'),
    tier: 'day',
    kind: 'physical',
    rule: STOP,
    evaluate: stopIsFitted,
  },
  {
    id: 'stop-release',
    ...tested('stop-release'),
    tier: 'day',
    kind: 'physical',
    rule: STOP,
    evaluate: stopIsFitted,
  },
  {
    id: 'stop-restart',
    ...tested('stop-separate-start'),
    tier: 'day',
    kind: 'physical',
    rule: STOP,
    evaluate: stopIsFitted,
  },
  {
    id: 'stop-moving',
    ...tested('stop-press-moving'),
    tier: 'day',
    kind: 'physical',
    rule: STOP,
    evaluate: stopIsFitted,
  },
  {
    id: 'stop-tests',
    tier: 'day',
    kind: 'computed',
    rule: { ...EACH_DAY, reads: STOP_READS },
    evaluate: stopIsTested,
  },
  {
    id: 'drift',
    test: { id: 'drift', rule: RULES.drift },
    tier: 'day',
    kind: 'physical',
    applies: electronic,
    rule: {
      ...EACH_DAY,
      reads: ['machine.encoderLines', 'machine.edgesPerLine', 'machine.spindleDrive'],
      events: ['power', ...ELECTRIC],
    },
    reading: { units: ['count'], min: '0', max: '1000000', whole: true, bounds: noneBounds },
  },
  {
    id: 'ten-turns',
    test: { id: 'counts', rule: RULES.counts },
    tier: 'day',
    kind: 'physical',
    applies: electronic,
    rule: {
      ...EACH_DAY,
      reads: [
        'machine.encoderLines',
        'machine.edgesPerLine',
        'machine.spindlePulley',
        'machine.encoderPulley',
      ],
      events: ['power', 'belt', ...ELECTRIC],
    },
    shows: 'countsPerRev',
    reading: { units: ['count'], min: '1', max: '100000000', whole: true, bounds: tenTurnsBounds },
  },
] as const satisfies readonly Item[];
