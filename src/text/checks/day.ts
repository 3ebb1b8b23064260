import type { DAY } from '../../core/checks';
import { capital, type Words } from '../words';
import type { TextsOf } from './item-text';

const BARE = 'No work in the chuck, nut open, low speed, a hand on the main switch.';
const ISOLATE_SPINDLE = 'Isolate the spindle motor before you turn the spindle by hand.';
const REPAIR = 'Don’t run it. Have the stop circuit put right by someone trained for it.';

export const dayTexts = (w: Words): TextsOf<typeof DAY> => ({
  'machine-identity': {
    question: 'Is this the machine?',
    look: 'Compare name and serial plate with the profile. Compare screw, encoder, microstep switches and gearbox lever. All as entered?',
    why: 'The right sum on the wrong machine cuts the wrong pitch.',
    notOk: 'Choose the other machine, or correct the profile.',
  },
  'old-feeds': {
    question: 'Old gears and feeds out?',
    first: 'Isolate before you reach into the gear cover.',
    look: 'No change gear meshes with spindle or screw. The feed lever stands in neutral.',
    why: 'Two drives on one screw fight each other until something breaks.',
  },
  'carriage-free': {
    question: 'Carriage free to travel?',
    first: 'Spindle stopped.',
    look: 'Carriage lock off, feed-shaft clutch out. Push the carriage by hand along the whole cut. The gibs neither bind nor rock.',
    why: 'A lock left on costs steps, and nothing tells you.',
  },
  lubrication: {
    question: 'Screw clean and oiled?',
    first: 'Spindle stopped, drive off.',
    look: 'Brush the chips off the screw. Oil screw and nut.',
    why: 'A chip in the nut jams it half closed; a dry screw asks for more torque.',
  },
  'dial-meshed': {
    question: 'Thread dial in mesh?',
    first: 'Spindle stopped.',
    look: 'If you mean to use the dial, its gear runs fully in the screw. It has the teeth you entered and can’t slip round.',
    why: 'A dial that skips a tooth shows the right line at the wrong place.',
  },
  chips: {
    question: 'Brush and fluid to hand?',
    look: 'A brush for chips and for cutting fluid. No cloth, no emery, no fingers near turning work.',
    why: 'A rag or a long chip caught by the work takes the hand with it.',
  },
  'power-return': {
    question: 'No start when power returns?',
    first:
      'Hands clear, and a helper at the main switch. No work in the chuck, low speed, room for the carriage both ways.',
    look: 'With the nut closed and the spindle turning, cut the power. The helper restores it while you keep clear. Nothing may move until you start it on purpose.',
    why: `When ${w.mains} power comes back a drive can set off by itself, or snap by a few steps, with the nut closed.`,
    notOk: REPAIR,
  },
  'stop-reach': {
    question: 'Emergency stop within reach?',
    look: 'Stand where you thread. Either hand reaches it within half a metre. You don’t reach across the chuck.',
    why: 'It is the last resort, and it is pressed by a startled hand.',
    notOk: 'Move the stop or add one before you cut.',
  },
  'stop-at-rest': {
    question: 'Stop pressed: motor limp?',
    first: `${BARE} ${ISOLATE_SPINDLE}`,
    look: 'Press the stop at rest, then turn the spindle by hand. The screw must not step. Its motor turns freely or a spring brake holds it.',
    why: 'A motor still held by current still has power: that is no emergency stop. Nor is a stop that only asks the controller.',
    notOk: REPAIR,
  },
  'stop-latches': {
    question: 'Does the stop stay in?',
    first: BARE,
    look: 'Press it and take your hand away. It stays in until it is turned or pulled out.',
    why: 'A button that springs back lets the machine start again by itself.',
    notOk: REPAIR,
  },
  'stop-release': {
    question: 'Released: still nothing moves?',
    first: `${BARE} ${ISOLATE_SPINDLE}`,
    look: 'Release the stop and touch nothing. Turn the spindle by hand: no step. Then let it run slowly: still none.',
    why: 'Letting go of the stop may only allow a start, never make one.',
    notOk: REPAIR,
  },
  'stop-restart': {
    question: 'Starts only on purpose?',
    first: BARE,
    look: 'After the release it takes a separate start. The controller says that it has lost its place. It doesn’t carry on in the middle of a thread.',
    why: 'A drive that carries on by itself cuts a second groove, or moves while you lean in.',
    notOk: REPAIR,
  },
  'stop-moving': {
    question: 'Stop halts carriage and spindle?',
    first:
      'No work in the chuck, low speed, a hand on the main switch, room to overrun. This test is done with the nut closed.',
    look: 'Let the carriage run at thread ratio and press the stop. Carriage and spindle both come to rest. Measure the overrun: no more than planned.',
    why: 'If the spindle runs on while the drive is dead, the thread drags tool and carriage.',
    notOk: REPAIR,
  },
  'stop-tests': {
    question: 'Stop tests recorded?',
    look: 'Machine, Stop tests: how the stop is arranged, and each test of it. All after a change and each half year, some each day.',
    why: 'A stop that was never tried may not be one. The app sees nothing of it: it keeps what you saw.',
    notOk: REPAIR,
  },
  drift: {
    question: 'No drift at rest?',
    first: 'Spindle stopped, nut open. Nothing is ever put in the chuck or spindle to hold it.',
    look: `${capital(w.inverter)} powered, spindle at rest. Watch the count, or a mark on the screw, for a minute. If your controller shows counts, enter how far they moved; else leave it out.`,
    why: 'A count without a turn is electrical noise, and noise moves the tool.',
    notOk: `Look at ${w.screen} and ${w.earth} connections with the power off, or leave it to someone trained.`,
    figure: 'Counts moved',
  },
  'ten-turns': {
    question: 'Ten turns counted right?',
    first: ISOLATE_SPINDLE,
    look: 'Turn the spindle forward ten times by hand, mark to mark. If your controller shows counts, enter them. Else see that the screw turned as far as it should.',
    why: 'It finds a slipping belt, a wrong pulley and lines taken for counts.',
    figure: 'Counts in ten turns',
  },
});
