import type { JOB_SET_UP } from '../../core/checks';
import { capital, type Words } from '../words';
import type { TextsOf } from './item-text';

export const jobSetUpTexts = (w: Words): TextsOf<typeof JOB_SET_UP> => ({
  'chuck-secured': {
    question: 'Chuck secured for reverse?',
    first: 'Spindle stopped.',
    look: 'Look at the spindle nose: cams or bolts tight, or the clamp of a screw-on chuck in place. A screw-on chuck with no clamp is never reversed under power.',
    why: 'Reversing or braking can unscrew a chuck and throw it off.',
  },
  overhang: {
    question: 'Work short or supported?',
    look: 'Overhang no more than three diameters, or a centre or steady carries the end. Both turn freely and are greased.',
    why: 'Long work bends, chatters and can climb out of the chuck.',
  },
  blank: {
    question: 'Blank measured?',
    first: 'Spindle stopped before you measure.',
    look: 'Measure the outside, or the bore of an inside thread, at both ends of the thread.',
    why: 'An oversize blank breaks the tap or jams in the gauge; an undersize one has no crests.',
    figure: 'Diameter of blank or bore',
  },
  chamfer: {
    question: 'Chamfer below the root?',
    look: 'The edge where the tool enters, and the one where it leaves, are chamfered to below the root of the thread.',
    why: 'Without it the first turn stands up as a burr, and no gauge goes on.',
  },
  tool: {
    question: 'Tool sharp, square, on centre?',
    first: 'Spindle stopped.',
    look: 'Angle by the gauge, tip at centre height, square to the work. Nose as entered. The leading side clears the slope of the thread.',
    why: 'A leaning or rubbing tool cuts a thread that measures right and doesn’t fit.',
  },
  compound: {
    question: `${capital(w.topSlide)} angle and dials clear?`,
    look: 'Know which axis its angle is read from. Know whether the cross-slide dial shows diameter or radius. Backlash of both taken up.',
    why: 'Read from the other axis, the angle is its complement; a dial misread is twice the depth or half of it.',
  },
  'tool-clear': {
    question: 'Tool clear at full depth?',
    first: 'Spindle stopped; isolate its motor before you turn it by hand.',
    look: `Bring the tool to full depth where the thread ends. Tip, sides, holder and slides clear shoulder and jaws. Set over, the ${w.topSlide} also creeps along the thread.`,
    why: 'The last pass goes further along than the first, and meets what the first one missed.',
  },
  withdrawal: {
    question: 'Stop set, withdrawal rehearsed?',
    first: 'In air: tool clear of the work.',
    look: 'Set the cross-slide’s threading stop. At the planned speed rehearse withdrawing the tool and opening the nut, until your hands do it in the right order.',
    why: 'There is no time to think at the end of the thread.',
  },
  'half-nut': {
    question: 'Nut closes and frees at once?',
    first: 'In air: tool clear of the work, low speed.',
    look: 'Close it: the lever goes fully home. Open it while the carriage is driven: it lets go at once, without a second pull.',
    why: 'A half-closed nut rides the crest of the screw; one that sticks doesn’t stop.',
  },
  plan: {
    question: 'Plan of passes made?',
    look: `Depth of each pass, passes in all, spring passes if the material allows them. The ${w.pitchDiameter} or gauge to end on is written down. Enter the number of passes.`,
    why: 'A depth from the tool’s nose gets you close; the measured size ends the job.',
    figure: 'Passes planned',
  },
  zero: {
    question: 'Zero touched off?',
    first: 'Spindle stopped, or turned by hand with its motor isolated.',
    look: 'Touch the tool on the blank and set the dials to zero. Note which dial is advanced.',
    why: 'Every pass counts from here.',
  },
  gauge: {
    question: 'Gauge or wires to hand?',
    look: 'A gauge, nut, thread micrometer or wires that fit this thread, cleaned. With wires, enter their diameter.',
    why: 'Without one you find out too late, and wires of the wrong size lie on the crests.',
    figure: 'Wire diameter',
  },
});
