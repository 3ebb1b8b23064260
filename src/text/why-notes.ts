import type { PlanDepth } from '../core/cut/plan';
import type { PassRefusal } from '../core/cut/passes';
import type { PassRule } from '../core/job';
import type { InfeedRefusal, LimitRefusal } from '../core/thread';
import type { LimitSource } from '../core/thread/limits';
import { words } from './words';

/** Codes under which core/figures names its sources, beside those of the limits of size. */
export type SourceCode =
  | LimitSource
  | 'entered'
  | 'catalogue'
  | 'chain'
  | 'inch'
  | 'iso5408'
  | 'bestFraction'
  | 'formats'
  | 'iso1708'
  | 'nutTheorem'
  | 'groove'
  | 'square'
  | 'passes'
  | 'profile'
  | 'limits'
  | 'drill'
  | 'rates'
  | 'burst'
  | 'edge-gap'
  | 'direction'
  | 'torque'
  | 'whip'
  | 'chuck'
  | 'spindle'
  | 'stopping'
  | 'stop-room'
  | 'stop-fades'
  | 'coasting';

/** Codes of what is said beside a figure: its conditions, or why there is none. */
export type NoteCode =
  | LimitRefusal
  | `depth-${InfeedRefusal}`
  | 'no-diameter'
  | 'held-exact'
  | 'held-near'
  | 'held-other'
  | 'held-nothing'
  | 'held-sum'
  | 'held-rev'
  | 'held-rate'
  | 'held-float32-ends'
  | 'held-fastener'
  | 'held-finest'
  | 'held-picking-up'
  | 'change-gears'
  | 'no-wheels'
  | 'train-exact'
  | 'train-near'
  | 'train-other'
  | 'nut-conditions'
  | 'nut-sum'
  | 'depth-stop-on-diameter'
  | 'depth-from-crest'
  | 'depth-root-short'
  | 'depth-left-over'
  | 'depth-square-narrow'
  | 'blank-left-over'
  | 'blank-basic'
  | `plan-${PassRule | PassRefusal}`
  | `plan-aim-${PlanDepth['aim']}`
  | 'plan-nominal'
  | 'plan-rounded'
  | 'plan-along'
  | 'plan-alternate'
  | 'plan-fewer'
  | 'plan-spring-rubs'
  | 'plan-no-flank'
  | 'plan-past-flank'
  | 'plan-measure'
  | 'stop-depth'
  | 'stop-angle'
  | 'stop-inside'
  | 'stop-nothing'
  | 'stop-full-depth'
  | 'coasting'
  | 'not-positive'
  | 'no-drill-near';

/** Where a formula or a table comes from, honestly: also where it was written down from memory. */
export const sourceText: Record<SourceCode, string> = {
  entered: 'As entered',
  catalogue: 'The catalogue of threads; each table names its standard',
  chain: 'Own reckoning, in whole numbers and fractions',
  inch: 'Inch of 25.4 mm exactly: agreement of 1959 (ISO 31-1, BS 350)',
  iso5408: 'ISO 5408: lead and pitch',
  bestFraction: 'Best rational approximation by continued fraction: Khinchin, Continued Fractions, §6',
  iso1708:
    'Own reckoning, in whole numbers. Close up to 133 ppm, 0.04 mm in 300 mm: ISO 1708, threading test of a lathe, from memory',
  formats: 'Own reckoning in whole numbers; floating point by IEEE 754, bit by bit',
  nutTheorem:
    'Own derivation, in whole numbers; agrees with lathe makers’ dial plates for 8 tpi and 16 teeth',
  groove: 'Geometry of the groove; basic sizes of the thread’s standard (ISO 68-1, BS 84, BS 93)',
  square: 'Common practice: depth and width of half the pitch; no standard gives a square thread',
  passes:
    'Insert makers’ infeed rule; numbers of passes, least pass and angles by common practice; dial and geometry own reckoning',
  profile: 'The form’s basic profile; the catalogue names its standard or custom',
  limits: 'Limits of size of the thread’s own standard',
  drill: 'Common practice: major less pitch for metric, 75 % of thread for inch',
  'edge-gap': 'Geometry of two square waves out of their 90°; margin of 0.8 by common practice',
  direction: 'Makers’ data of step drivers: the direction must stand before the step',
  torque:
    'Power balance of a screw, Newton’s second law, corner speed of a stepper by V ÷ (2 L I N); 0.7 of the holding torque, half of the pull-out torque and 0.8 of a servo’s by common practice',
  whip: 'First bending frequency of a round bar (beam theory), steel of 206 GPa; root taken as 0.8 of the diameter; margin of 0.8 by common practice',
  rates: 'Own reckoning; margin of 0.8 on electronic rates by common practice',
  burst: 'Own reckoning of bunched pulses; margin of 0.8 by common practice',
  chuck: 'The maker’s mark on the chuck',
  spindle: 'The spindle’s own speeds as entered',
  stopping: 'Own reckoning; common practice for time and safety factor',
  'stop-room':
    'Own derivation from the tool’s shape: height × tangent of its leading flank, depth × tangent of the slide’s angle; margin by common practice',
  'stop-fades':
    'Run-out of a thread without groove, 2.5 P: GB/T 3, equivalent to ISO 3508, from memory; tool and creep by own derivation',
  coasting: 'Own derivation: the drive follows each turn',
  'iso965-table': 'ISO 965-1, tables',
  'iso965-formula': 'ISO 965-1, formulas: its table leaves out this diameter and pitch',
  'asmeB1.1-formula': 'ASME B1.1, formulas',
  'bs84-formula-from-memory': 'BS 84, formulas, from memory',
  'bs93-formula': 'BS 93:1951, formulas',
  'asmeB1.15-formula-from-memory': 'ASME B1.15, formulas, from memory',
  'iso228-table': 'ISO 228-1, table',
  'iso2903-formula': 'ISO 2903, formulas',
  'iso2903-multi-start-from-memory': 'ISO 2903, formulas; the factor for several starts from memory',
  'asmeB1.5-formula': 'ASME B1.5, formulas',
  'asmeB1.5-formula-from-memory': 'ASME B1.5, formulas, from memory',
  'asmeB1.8-formula-from-memory': 'ASME B1.8, formulas, from memory',
  'asmeB1.9-formula-from-memory': 'ASME B1.9, formulas, from memory',
};

/** What stands beside a figure that isn't an ordinary answer, or must be known with it. */
export const noteText: Record<NoteCode, string> = {
  'no-diameter': 'A bare pitch or a feed has no diameter. Choose a thread from the list.',
  'held-exact': 'Held exactly. Exact if the entries match the machine.',
  'held-near':
    'Not held exactly: the error grows with travel. The half-nut rule says whether the nut may be opened.',
  'held-other': 'The ratio is held in another form than two whole numbers. Its error is not reckoned here.',
  'held-sum':
    'Every addition is rounded, and the sum grows coarser the longer the spindle turns. It is reckoned from a fresh start; after more revs it is worse. Keep the nut closed.',
  'held-rev':
    'Off by part of a step within each rev, and set right at the encoder’s index: nothing adds up. Keep the nut closed all the same.',
  'held-rate':
    'A step rate follows the speed that was measured, not the spindle’s angle. Its error grows with time, without end: not for threads.',
  'held-float32-ends':
    'Above 16777216 steps it moves two steps at a time; a counter of the same kind stands still at 16777216 counts.',
  'held-fastener':
    'Judged as a fastener: the error of pitch over the engagement may take half of the tolerance of the diameter. Common practice.',
  'held-finest':
    'Judged by 6 µm in 300 mm, the finest grade of ball screw: ISO 3408-3 grade 1, from memory. On the page of the ratio you can say what the thread is for.',
  'held-picking-up':
    'Opened between passes the nut would move the groove by more than is allowed. Passes and revs are estimates. Keep the nut closed from first pass to last.',
  'held-nothing': 'No ratio this near fits the controller’s numbers.',
  'change-gears': 'This machine has change gears: there are no steps and no counts to reckon with.',
  'no-wheels': 'This machine has an electronic drive: there is no train of wheels.',
  'train-exact': 'The train mounted gives this lead exactly, if the wheels are as entered.',
  'train-near': 'The train mounted gives this lead nearly: the error grows with travel. Keep the nut closed.',
  'train-other': 'The train mounted is one for another lead. Change the wheels.',
  'nut-conditions':
    'Only while ratio, direction and power stay as they are, no counts are lost, the drive follows with the nut open, and the nut goes fully home. A dial plate may show fewer lines.',
  'nut-sum':
    'The ratio is held nearly. Over 200 passes, more than any plan has, its error stays below a tenth of what the thread allows: own choice. A spindle left to turn for more revs than stand here uses it up.',
  get 'depth-stop-on-diameter'() {
    return `Radial, from the nominal diameter to the basic ${words().pitchDiameter}. Stop on the measured diameter, not on this figure.`;
  },
  'depth-from-crest':
    'Radial, from the crest as turned to the full width of groove. Measure the thread, not this depth.',
  'depth-root-short':
    'This nose is too large: the root stays short of where the mating crest needs room, though the diameter measured on the flanks is right.',
  'stop-full-depth':
    'At full depth of the finished thread, the blank as measured where it is entered. The tool is taken to be as wide as its flanks make it.',
  'stop-inside':
    'Inside, the front of the bar must clear the bottom of the hole as well: measure it from the tool’s tip.',
  'stop-nothing': 'Nothing is left to stop in.',
  'stop-depth': 'The depth or the height of the shoulder can’t be.',
  'stop-angle':
    'The angle can’t be: a slide set past the flank’s own angle cuts that flank away. Look which way its scale counts.',
  coasting: 'If a stop cuts the spindle alone, with the nut closed and the drive alive.',
  'depth-left-over':
    'The insert cuts the crest too. Reckoned from a blank left 0.05 mm (0.002 in) over: common practice with such inserts.',
  'depth-square-narrow':
    'The tool is narrower than half the pitch: widen the groove by moving the tool along.',
  'blank-left-over':
    'The insert cuts the crest too, so 0.03 to 0.07 mm (0.001 to 0.003 in) stays on the diameter for it: common practice. What the insert’s maker says goes first.',
  'blank-basic': 'A basic size alone, without limits: work to a gauge or the mating part.',
  'plan-constant-chip':
    'After each of n passes: depth ÷ √(n − 1) × √φ, φ = 0.3, 1, 2 … n − 1. After the first two each chip has the same area.',
  'plan-equal-area': 'After pass i of n: depth × √(i ÷ n). Each chip has the same area.',
  'plan-fixed-step': 'After pass i of n: depth × i ÷ n. The chip grows with the depth.',
  'plan-rounded':
    'Each setting is rounded to a whole division from zero, never added up from rounded steps. The last is the most that doesn’t pass the depth.',
  get 'plan-nominal'() {
    return `From the nominal diameter to the basic ${words().pitchDiameter}. With the blank as measured it is reckoned from there to the class’s own limits.`;
  },
  get 'plan-aim-middle'() {
    return `From the blank as measured to the middle of the class’s limits of the ${words().pitchDiameter}.`;
  },
  get 'plan-aim-one-limit'() {
    return `From the blank as measured to the basic ${words().pitchDiameter}, or the one limit known.`;
  },
  get 'plan-aim-basic'() {
    return `From the blank as measured to the basic ${words().pitchDiameter}: no limits are known.`;
  },
  get 'plan-along'() {
    return `Along the ${words().topSlide}: depth ÷ cos of its angle. It brings the tool along the axis by depth × tan of it.`;
  },
  get 'plan-alternate'() {
    return `The ${words().topSlide} lies along the axis and is shifted by turns, so that one flank cuts at a time; never past (full depth − depth) × tan of the flank.`;
  },
  'plan-fewer': 'Fewer passes than the rule gives: none takes less than the least, for it would rub.',
  'plan-spring-rubs':
    'No spring passes: carbide that takes nothing hardens this stock. Insert makers advise against it.',
  'plan-no-flank': 'This thread has no flank to feed along: straight in.',
  get 'plan-past-flank'() {
    return `The ${words().topSlide} would stand steeper than the flank and cut steps into it. Is its scale counted from the other axis?`;
  },
  'plan-measure': 'Stop on the thread as measured, not on the last setting.',
  'plan-not-positive': 'A size is zero or below.',
  'plan-dial-too-coarse': 'One division of the dial is deeper than the whole thread.',
  'plan-too-many': 'This would take more than 200 passes.',
  'plan-chip-below-least':
    'The least that a pass may take makes a larger chip than is allowed at full depth. Allow a larger chip or a smaller least pass.',
  'plan-first-below-least':
    'The first pass and the least a pass may take leave no way to share out the depth. Allow a deeper first pass or a smaller least.',
  'depth-not-positive': 'A size is zero or below.',
  'depth-angle-out-of-range': 'The flank angles do not make a thread.',
  'depth-parallel-flanks':
    'A square thread gets its width from the tool: take a flat one, half the pitch wide.',
  'depth-nose-too-big':
    'The tool’s nose is too large for this pitch: its flanks would not reach the pitch line.',
  'depth-nothing-to-cut': 'The starting diameter leaves nothing to cut.',
  'depth-crest-vanishes': 'The crest would vanish before the depth is reached.',
  'depth-root-past-centre': 'The groove would pass the centre of the work.',
  'no-limits-known': 'No published limits are built in for this thread; work to a gauge or the mating part.',
  'class-not-in-standard': 'The standard does not give this class for this thread.',
  'class-unreadable': 'The class can’t be read.',
  'no-grade-at-this-pitch': 'The standard gives no such grade at this pitch.',
  'no-deviation-at-this-pitch': 'The standard gives no such position at this pitch.',
  'pitch-not-in-standard': 'The standard gives no limits for this pitch.',
  'pitch-too-fine-for-diameter': 'The standard does not give so fine a pitch at this diameter.',
  'diameter-not-in-standard': 'The standard gives no limits for this diameter.',
  'taper-gauged-by-length': 'A taper thread is gauged by its length, not by its diameter.',
  'multi-start-not-covered': 'The limits known here are for a single start; none are made up for several.',
  'no-major-diameter': 'This thread has no diameter of its own.',
  'not-positive': 'A size is zero or below.',
  'no-drill-near': 'No standard drill leaves between 30 and 100 % of thread.',
};
