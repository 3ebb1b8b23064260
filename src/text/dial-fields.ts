import type { FieldName } from '../core/machine';
import type { FieldText } from './machine-fields';

const PLAN = 'Without it the plan of passes can’t be given in the dial’s own terms.';

type DialField =
  'crossReads' | 'crossDivision' | 'crossDivisions' | 'topDivision' | 'topDivisions' | 'topScale' | 'coast';

/** What the handwheels’ dials, the top slide’s scale and the spindle’s coasting are asked as. */
export const dialFields: Readonly<Record<DialField & FieldName, FieldText>> = {
  crossReads: {
    label: 'Cross-slide dial reads',
    question: 'Does the cross-slide’s dial read diameter or radius?',
    where:
      'Turn it by 1 mm on the dial with an indicator on the slide. The slide moves 0.5 mm: it reads diameter. 1 mm: radius.',
    needed: PLAN,
  },
  crossDivision: {
    label: 'Cross-slide, one division',
    question: 'What is one division of the cross-slide’s dial?',
    where: 'As the dial itself counts it: 0.02 mm or 0.001 in are usual. Engraved beside the zero.',
    needed: PLAN,
  },
  crossDivisions: {
    label: 'Cross-slide, divisions',
    question: 'How many divisions has one turn of the cross-slide’s dial?',
    where: 'Count from zero round to zero: 100 and 50 are usual, 125 and 200 on inch slides.',
    needed: 'Without it settings past a full turn can’t be given in turns.',
  },
  topDivision: {
    label: 'Top slide, one division',
    question: 'What is one division of the top slide’s dial?',
    where: 'The slide’s own travel along itself: 0.02 mm, 0.05 mm or 0.001 in are usual.',
    needed: PLAN,
  },
  topDivisions: {
    label: 'Top slide, divisions',
    question: 'How many divisions has one turn of the top slide’s dial?',
    where: 'Count from zero round to zero: 100 and 50 are usual, 125 and 200 on inch slides.',
    needed: 'Without it settings past a full turn can’t be given in turns.',
  },
  topScale: {
    label: 'Top slide’s scale at zero',
    question: 'Where does the top slide point when its scale says zero?',
    where:
      'Some scales are zero with the slide square to the work’s axis, some with it along the axis. 29.5° on the one is 60.5° on the other.',
    needed: 'Without it the angle to set is not known.',
  },
  coast: {
    label: 'Spindle coasts, turns',
    question: 'How many turns does the spindle make after its power is cut?',
    where:
      'At threading speed, chuck on, nut open: cut the power at a mark and count the turns. Enter the most that you saw.',
    needed: 'Without it nobody knows how far a stop by the spindle alone lets the carriage run.',
  },
};
