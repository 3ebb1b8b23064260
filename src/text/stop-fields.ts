import type { ArrangementField } from '../core/prove/stops';
import type { FieldText } from './machine-fields';

const ASKED = 'Stop tests judge it. Not known stays not known.';
const DIAGRAM =
  'The wiring diagram. If there is none, ask someone trained for such circuits: don’t open the box.';

/** How the stop is arranged: what a person enters of it. */
export const stopFields: Readonly<Record<Exclude<ArrangementField, 'stopCuts'>, FieldText>> = {
  stopDevice: {
    label: 'Stop button',
    question: 'What kind of stop button is it?',
    where:
      'Press it: does it stay in? Direct-opening contacts carry an arrow through a circle, and its data sheet says so.',
    needed: ASKED,
  },
  stopContacts: {
    label: 'Its contacts',
    question: 'Which contacts does the stop button work?',
    where: DIAGRAM,
    needed: ASKED,
  },
  enableOpen: {
    label: 'Enable input left open',
    question: 'What does the drive do when its enable input is open?',
    where: 'The drive’s manual. Many step drives are enabled by an open input.',
    needed: ASKED,
  },
  motorAtStop: {
    label: 'Leadscrew motor at the stop',
    question: 'What does the leadscrew’s motor do after the stop?',
    where:
      'The wiring diagram, then the first stop test: limp, braked or stiff, felt with the spindle’s motor isolated.',
    needed: ASKED,
  },
  stopSpindle: {
    label: 'The stop and the spindle',
    question: 'How does the stop reach the spindle’s motor?',
    where: DIAGRAM,
    needed: ASKED,
  },
  spindleRests: {
    label: 'The spindle comes to rest',
    question: 'How does the spindle come to rest after the stop?',
    where: 'Watch it in air, with no work in the chuck.',
    needed: ASKED,
  },
  stopReset: {
    label: 'Starting again',
    question: 'What does it take to run again after a stop?',
    where: 'The wiring diagram, then the stop tests.',
    needed: ASKED,
  },
  powerReturn: {
    label: 'When power returns',
    question: 'What does the drive do when power comes back?',
    where: 'The wiring diagram and the drive’s manual, then the stop test with a helper.',
    needed: ASKED,
  },
  stopMonitor: {
    label: 'What watches the stop',
    question: 'What notices that a part of the stop has failed?',
    where: DIAGRAM,
    needed: ASKED,
  },
};

export const stopChoices = {
  stopDevice: {
    'latching-direct': {
      label: 'Stays in, direct opening',
      note: 'The button’s own force tears the contacts apart.',
    },
    'latching-other': { label: 'Stays in, other contacts', note: 'A welded contact may stay closed.' },
    'springs-back': {
      label: 'Springs back',
      note: 'Not an emergency stop: the command ends with the finger.',
    },
  },
  stopContacts: {
    'nc-one': { label: 'One that opens', note: 'Normally closed: a broken wire stops too.' },
    'nc-two': { label: 'Two that open', note: 'Normally closed, each in a circuit of its own.' },
    no: { label: 'One that closes', note: 'Normally open: with a broken wire the button does nothing.' },
  },
  enableOpen: {
    off: { label: 'It is disabled', note: 'A broken wire stops it. It is still a signal, not the power.' },
    on: { label: 'It is enabled', note: 'A broken wire lets it run: not an emergency stop.' },
  },
  motorAtStop: {
    limp: { label: 'It is limp', note: 'No power in it.' },
    'spring-brake': {
      label: 'A spring brake holds it',
      note: 'No power in it; the brake needs power to open.',
    },
    'until-rest': {
      label: 'It follows until the spindle rests',
      note: 'Then a timer of its own, outside the program, takes the power away.',
    },
    held: { label: 'Its current holds it', note: 'Category 2: not an emergency stop.' },
    follows: { label: 'It goes on following', note: 'A live drive follows a spindle that coasts.' },
  },
  stopSpindle: {
    contactor: { label: 'A contactor cuts its power', note: '' },
    sto: { label: 'The torque-off input (STO)', note: 'Of its drive. No torque, but no isolation.' },
    run: { label: 'The run input only', note: 'A signal that a program has to obey.' },
    no: { label: 'It doesn’t', note: 'The chuck goes on turning when the stop is pressed.' },
  },
  spindleRests: {
    coasts: { label: 'It coasts', note: 'The tool stands still in a moving groove: the work may be spoilt.' },
    brake: { label: 'It is braked', note: 'A chuck that is screwed on without a lock can unscrew.' },
  },
  stopReset: {
    start: { label: 'Release, then a start key', note: 'The release only permits a start.' },
    power: { label: 'Power off and on', note: 'Power coming back is then the start.' },
    release: { label: 'The release alone', note: 'Not allowed of an emergency stop: it restarts by itself.' },
  },
  powerReturn: {
    off: { label: 'It stays off until started', note: '' },
    live: { label: 'It is live at once', note: 'It follows the spindle as soon as power is there.' },
  },
  stopMonitor: {
    none: { label: 'Nothing', note: 'A welded contact is noticed only by a test.' },
    feedback: { label: 'Feedback of the contactor', note: 'A contactor that stuck refuses the next start.' },
    channels: { label: 'Two channels compared', note: 'One that doesn’t open refuses the next start.' },
    both: { label: 'Both', note: 'Two channels compared, and feedback of the contactors.' },
  },
} as const;
