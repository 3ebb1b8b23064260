import type { JOB_PLAN } from '../../core/checks';
import { capital, type Words } from '../words';
import type { TextsOf } from './item-text';

const AIR = 'No work in the way: tool withdrawn, low speed, a hand on the main switch.';

export const jobPlanTexts = (w: Words): TextsOf<typeof JOB_PLAN> => ({
  recovery: {
    question: 'Recovered from the stop?',
    first: 'Isolate before you touch work or tool.',
    look: 'Withdraw the tool, then open the nut. Look at tool, work and nut for damage. Pick the thread up anew before any cut.',
    why: 'After a stop in mid-cut the tool may still be in the groove, and the place is lost.',
  },
  'ratio-held': {
    question: 'Ratio held by the controller',
    look: 'Calculated from your figures: whether the controller can hold this ratio.',
    why: 'A ratio that is a little off is a pitch that is a little off, along the whole thread.',
  },
  lead: {
    question: 'Lead of this thread',
    look: 'Calculated from your figures: pitch times number of starts.',
    why: 'The drive follows the lead. Pitch and lead differ as soon as there is more than one start.',
  },
  'drive-limits': {
    question: 'Drive keeps up at this speed',
    look: 'Calculated from your figures: step rate, bursts, counter, encoder, motor and carriage.',
    why: 'Beyond a limit steps are lost without a sound.',
  },
  torque: {
    question: 'Enough torque at this speed?',
    look: 'Reckon the motor torque that this cut asks for. Divide it by the pull-out torque its curve gives at this speed and at your supply voltage. A ramp test at this lead and speed answers this by itself.',
    why: 'A motor stalled in mid-thread leaves the spindle cutting on without it. Half of pull-out is the usual limit.',
    notOk: 'Go slower, or take less at each pass.',
    figure: 'Torque needed, as part of pull-out',
  },
  'chuck-limit': {
    question: 'Chuck and spindle allow this speed',
    look: 'Calculated from your figures. It holds for the chuck you entered: look at the mark on the one fitted.',
    why: 'Above its marked speed a chuck loses its grip and may burst.',
  },
  'stopping-room': {
    question: 'Stopping room at this speed',
    look: 'Calculated from your figures: lead, speed, whole stopping time and safety factor against the room you have.',
    why: 'Too fast, and the tool meets the shoulder before the nut is clear.',
  },
  'start-index': {
    question: 'Lead set, not pitch?',
    look: 'Look at the controller: it holds the lead shown here. You know how each next start is found, and which one you cut first.',
    why: 'With several starts, setting the pitch cuts another thread altogether.',
  },
  'nut-rule': {
    question: 'Nut rule understood?',
    look: 'Read the rule shown here and say it to yourself. It may differ from the plate on your lathe; if in doubt keep the nut closed.',
    why: 'Closing the nut on a wrong line cuts a second groove.',
  },
  direction: {
    question: 'Carriage goes the right way?',
    first: AIR,
    look: 'Close the nut and let the spindle turn slowly. The carriage moves the way this thread needs. Stop well before chuck or tailstock.',
    why: 'The wrong hand cuts the wrong thread, and runs into the chuck.',
  },
  'left-hand': {
    question: 'Set up for left hand?',
    first: AIR,
    look: `The tool enters at the headstock end and moves towards the tailstock. ${capital(w.undercut)} at the headstock end, ${w.topSlide} swivelled the other way.`,
    why: 'Everything about run-in and room is turned round, the habits of a right-hand thread are not.',
  },
  'speed-limited': {
    question: 'Speed knob can’t run away?',
    look: `Gear or belt in the low range. The top of the ${w.inverter} is limited, so that a brushed knob can’t take it far above the speed shown.`,
    why: 'A knob touched by a sleeve doubles the speed at the shoulder.',
  },
  gap: {
    question: 'Stopping distance against the gap?',
    first: 'Spindle stopped.',
    look: 'Put the tool where it has to stop. Measure to the nearest solid thing in the way of tool, slides and carriage: shoulder, jaws, centre or steady. Enter the smallest.',
    why: 'The carriage needs this room to stop, whichever part meets something first.',
    notOk: 'Go slower, make room, or cut away from the shoulder.',
    figure: 'Smallest gap',
  },
  groove: {
    question: `${capital(w.undercut)} wide and deep enough?`,
    first: 'Spindle stopped.',
    look: 'Its bottom lies below the root of the thread, its width takes the tool and the room to stop. Enter its width if there is one. If the thread runs off the end, leave it out.',
    why: 'In a groove too shallow or too narrow the tool buries itself.',
    figure: 'Width of the groove',
  },
  'run-in': {
    question: 'Long enough run-in?',
    look: 'Measure from where the carriage sets off to where the thread begins.',
    why: 'Backlash and lag have to be taken up before the tool cuts, or the first turns are off pitch.',
    notOk: 'Start further out.',
    figure: 'Run-in',
  },
  'bar-reach': {
    question: 'Bar reaches, and not too far?',
    first: 'Spindle stopped.',
    look: 'The bar reaches the end of the thread without touching the bore. In a blind hole the depth is marked and chips have somewhere to go.',
    why: 'Inside you don’t see the end coming.',
  },
  'retract-way': {
    question: 'Which way is out?',
    look: 'Say aloud which way the cross-slide turns to bring the tool off the thread. Inside it is towards the middle. Then back along the bore, without touching the far wall.',
    why: 'The outside habit drives an inside tool deeper in.',
  },
});
