import type { START } from '../../core/checks';
import type { Words } from '../words';
import type { TextsOf } from './item-text';

export const startTexts = (w: Words): TextsOf<typeof START> => ({
  'chuck-key': {
    question: 'Chuck key out?',
    look: 'It lies in its place, not in the chuck.',
    why: 'The spindle throws a key that was left in.',
  },
  'work-tight': {
    question: 'Work tight?',
    first: 'Spindle stopped.',
    look: 'All jaws bear and are pulled up. Carrier, centre or steady tight. If you used the key again, take it out again.',
    why: 'Threading pulls along the work and both ways; loose work slips, then flies.',
  },
  guard: {
    question: 'Guard shut?',
    look: 'Chuck guard closed, covers on belts and gears.',
    why: 'It stops chips, broken tools and hands.',
  },
  clothing: {
    question: 'Sleeves, hair, gloves?',
    look: 'Sleeves above the elbow or tight, hair tied up, no gloves, no rings or cords. Eye protection on.',
    why: 'A turning chuck winds in whatever touches it, faster than you can pull away.',
  },
  'handwheel-nut': {
    question: 'Handwheel and nut as planned?',
    look: 'Carriage handwheel free to turn or folded away, no hand on it. Nut open or closed as the plan says. Tool clear of the work.',
    why: 'A driven handwheel hits the wrist; a nut in the wrong state moves the carriage at once.',
  },
  'speed-set': {
    question: 'Speed as planned?',
    look: `Look at lever, belt or ${w.inverter}: it is the speed shown here.`,
    why: 'Stopping distance grows with speed. The app doesn’t see what the spindle turns.',
  },
});
