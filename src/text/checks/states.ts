import type { CheckState, Finding, FindingCode, Phase, RecordRefusal, State, Tier } from '../../core/checks';
import type { EventKind, InputPath, JobPath, Lapse } from '../../core/context';
import { FIELDS, type FieldName, type Group } from '../../core/machine';
import { refusalText } from '../typed';

export const tierName: Readonly<Record<Tier, string>> = {
  change: 'After a change',
  day: 'Each day',
  job: 'Each job',
  start: 'Each start',
  scratch: 'After the scratch pass',
  pass: 'Each pass',
  service: 'Before service',
};

export const phaseName: Readonly<Record<Phase, string>> = {
  before: 'Before the cut',
  scratch: 'After the scratch pass',
  pass: 'Before each pass',
  service: 'Before service',
};

const STATE_WORDS: Readonly<Record<State, string>> = {
  done: 'Done',
  'not-done': 'Not done',
  'not-ok': 'Not OK',
  failed: 'Too much',
  unknown: 'Not known',
};

/** One or two words for a state; what is computed is spoken of as figures are, not as something done. */
export const stateText = (s: CheckState): string => {
  if (s.state !== 'done') return STATE_WORDS[s.state];
  if (s.standing === 'near') return 'Close';
  return s.item.kind === 'computed' ? 'OK' : STATE_WORDS.done;
};

const FINDING_WORDS: Readonly<Record<FindingCode, string>> = {
  'inputs-missing': 'Something it needs isn’t entered.',
  'not-reckoned': 'It couldn’t be worked out.',
  'ratio-exact': 'The controller holds the ratio exactly, if the entries match the machine.',
  'ratio-close': 'The controller holds the ratio nearly.',
  'ratio-off': 'The controller can’t hold this ratio closely enough.',
  'lead-known': 'Calculated from your figures.',
  'limits-kept': 'Within every limit, calculated from your figures.',
  'limits-close': 'Close to a limit.',
  'limits-broken': 'Beyond a limit.',
  'limits-not-known': 'A limit isn’t known.',
  'nut-rule-known': 'Calculated from your figures.',
  'speed-chosen': 'As you set it; not measured.',
  'no-stop-fitted': 'You entered that this machine has no stop.',
  'stop-fitted': 'As you entered it.',
  'stop-by-software':
    'You entered that the stop only asks the controller. That is no emergency stop: a program can hang. Have one fitted that cuts power.',
  'stop-by-enable':
    'You entered that the stop only takes the enable away. Many drives are enabled by an open wire: a cut wire would not stop them.',
  'no-overload-fitted': 'You entered that nothing gives between motor and screw.',
  'overload-fitted': 'As you entered it.',
  'reading-within': 'Your reading is within its limits.',
  'reading-close': 'Your reading is close to its limit.',
  'reading-low': 'Your reading is below its limit.',
  'reading-high': 'Your reading is above its limit.',
  'ramp-covers': 'Your ramp test covers this lead and speed.',
  'ramp-lead-larger': 'Your ramp test was made at a smaller lead.',
  'ramp-below-speed': 'Your ramp test didn’t reach this speed.',
  'test-passed': 'You recorded its commissioning test as passed.',
  'test-failed':
    'You recorded its commissioning test as failed: repeat it, or answer here after putting it right.',
  'stop-seen': 'You recorded that you saw it, under Stop tests. The app did not see it.',
  'stop-not-seen':
    'You recorded under Stop tests that it was not as it must be. Don’t run it until it is put right and tested anew.',
  'stop-inadequate':
    'As you described it, this is no emergency stop, whatever its tests show. Stop tests say why.',
  'stop-not-described': 'Not all of how the stop is arranged is entered.',
  'stop-tests-recorded': 'You recorded each test that applies. The app saw none of them.',
  'stop-tests-close': 'You recorded each test that applies, but the arrangement has weak points.',
  'stop-tests-failed':
    'You recorded that a test of the stop was not as it must be. Don’t run it until it is put right and tested anew.',
  'stop-tests-due': 'Tests of the stop aren’t recorded, or no longer hold.',
};
/** Why a computed item, or a reading, stands as it does. */
export const findingText = (f: Finding): string => FINDING_WORDS[f.why];

const JOB_WORDS: Readonly<Record<JobPath, string>> = {
  'job.thread': 'Thread',
  'job.starts': 'Number of starts',
  'job.hand': 'Hand of the thread',
  'job.side': 'Outside or inside thread',
  'job.classId': 'Class of fit',
  'job.noseKind': 'Tool nose',
  'job.noseSize': 'Tool nose',
  'job.rpm': 'Speed',
  'job.room': 'Stopping room',
  'job.roomFrom': 'Stopping room',
  'job.use': 'What the thread is for',
  'job.length': 'Length of the thread',
  'job.material': 'Material',
  'job.blank': 'Blank as measured',
  'job.ending': 'What the thread ends in',
  'job.groove': 'Groove',
  'job.shoulder': 'Shoulder',
  'job.gap': 'Gap to what is in the way',
  'job.holding': 'How the work is held',
  'job.toolMaterial': 'What the tool is made of',
  'job.infeed': 'Infeed',
  'job.topSlide': 'Top slide',
  'job.passRule': 'Plan of passes',
  'job.passHold': 'Plan of passes',
  'job.firstPass': 'Plan of passes',
  'job.leastPass': 'Plan of passes',
  'job.passCount': 'Plan of passes',
  'job.chipArea': 'Plan of passes',
  'job.springPasses': 'Spring passes',
  'job.outwards': 'Direction of the cut',
};

const GROUP_WORDS: Readonly<Record<Group, string>> = {
  name: 'Name of the machine',
  drive: 'Drive',
  gears: 'Change gears',
  screw: 'Leadscrew',
  nut: 'Half-nut or thread dial',
  encoder: 'Encoder',
  motor: 'Motor or its drive to the screw',
  pulses: 'Step input',
  controller: 'Controller',
  carriage: 'Carriage',
  dials: 'Handwheels’ dials',
  load: 'Load or torque',
  spindle: 'Spindle or chuck',
  stop: 'Stop',
  notes: 'Notes',
};

const isJobPath = (path: InputPath): path is JobPath => Object.hasOwn(JOB_WORDS, path);

/** What changed, as a person would call it: the machine's parts by their place, the job's values by name. */
export const changedWord = (path: InputPath): string => {
  if (isJobPath(path)) return JOB_WORDS[path];
  const field = path.slice(path.indexOf('.') + 1);
  return Object.hasOwn(FIELDS, field) ? GROUP_WORDS[FIELDS[field as FieldName].group] : 'Records';
};

/** Things that happen to a machine, as its owner logs them. */
export const eventText: Readonly<Record<EventKind, string>> = {
  power: 'Power was off',
  wiring: 'Wiring was changed',
  firmware: 'Firmware was changed',
  driver: 'Drive or its settings were changed',
  belt: 'Belt or pulley was changed',
  'work-moved': 'Work was moved or changed',
  'stopped-in-cut': 'Stopped in mid-cut',
  crash: 'Ran into something',
  'long-rest': 'Stood unused for long',
  'cut-ended': 'A cut was ended',
};

const plural = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** Why a recorded answer no longer counts. */
export const lapseText = (lapse: Lapse): string => {
  switch (lapse.code) {
    case 'clock-back':
      return 'The phone’s clock was set back: not known';
    case 'rule-changed':
      return 'This check was corrected in a newer version: do it again';
    case 'recalled':
      return 'A formula it rests on was corrected since: for review';
    case 'input-changed':
      return `${changedWord(lapse.path)} changed since`;
    case 'new-day':
      return 'New day';
    case 'days': {
      const hours = Math.round(lapse.days * 24);
      return hours < 24 ? `More than ${plural(hours, 'hour')} since` : `${plural(lapse.days, 'day')} since`;
    }
    case 'hours':
      return `${plural(lapse.hours, 'running hour')} since, or not known: due again`;
    case 'hours-back':
      return 'The running-hours log went back: not known';
    case 'event':
      return `${eventText[lapse.kind]} since`;
    case 'other-cut':
      return 'Another cut since';
  }
};

/** Why an answer wasn't taken. */
export const readingRefusalText = (r: RecordRefusal): string => {
  switch (r.code) {
    case 'computed':
      return 'This one answers itself from what you entered.';
    case 'reading-needed':
      return 'Enter the figure you read.';
    case 'no-reading-here':
      return 'No figure is asked for here.';
    case 'lead-unknown':
      return 'Choose a thread first: the test is made at a lead.';
    default:
      return refusalText(r);
  }
};
