import type { FigureCode, NoteCode, WayId } from '../core/cut/ways';
import { mark } from './numbers';
import { capital, words } from './words';

/** Words of the page about work that isn't an outside right-hand thread of one start. */
export const waysText = {
  title: 'Other work',
  others: 'The rest',
  none: 'An outside right-hand thread of one start: nothing here is asked of it.',
  noThread: 'Choose a thread first, and the figures are for it.',
  notKnown: 'Not known',
  back: 'Back to the cut',
  starts: 'Starts: how to go from one to the next',
  limits: 'Gauge length and turns',
  stop: 'Stopping room',
  chuck: 'How is the chuck held on?',
  sources:
    'Widths, angles and times: own geometry from your figures. Clearances and rules of thumb: common practice. Undercuts: ISO 4755, GB/T 3.',
  missing: 'Work and tool: enter what is missing',
} as const;

export const wayName: Readonly<Record<WayId, string>> = {
  'left-hand': 'A left-hand thread',
  internal: 'An inside thread',
  'multi-start': 'A thread of several starts',
  taper: 'A taper thread',
  worm: 'A worm or other deep groove',
  coarse: 'A coarse lead',
  'relief-plunge': 'A thread with a relief plunged first',
  'from-the-chuck': 'Cutting away from the chuck, spindle reversed',
};

/** Label and, where it helps, a line below each figure. */
export const figureText: Readonly<Record<FigureCode, () => readonly [label: string, note: string]>> = {
  'start-groove': () => ['Groove to start in, at least', 'the finished groove’s width and 0.5 mm'],
  helix: () => ['Helix angle at the root', ''],
  leading: () => ['Relief, leading side', '2° clear, from upright'],
  trailing: () => ['Relief, trailing side', 'below nothing: may lean out'],
  reach: () => ['Bar reach, at least', 'thread, run-out, 2 mm before the mouth'],
  hole: () => ['Blind hole, at least', 'thread, run-out, 0.5 mm at the bottom'],
  widest: () => ['Point to back of bar, at most', 'wider can’t be drawn back clear'],
  bar: () => ['Bar, at most', ''],
  'bar-times': () => ['Reach in bar diameters', 'steel to 4, carbide to 6'],
  lead: () => ['Lead', ''],
  shift: () => ['From start to start', 'one pitch along the axis'],
  'side-angle': () => ['Attachment set to', 'angle of one side to the axis'],
  'set-over': () => ['Tailstock set-over', 'for each 100 mm between centres'],
  'axial-pitch': () => ['Set-over alters the pitch by', 'along the axis'],
  depth: () => ['Depth', 'radial'],
  'top-width': () => ['Groove at the surface', ''],
  'root-width': () => ['Groove at the bottom', 'rough with a narrower tool'],
  carriage: () => ['Carriage goes', 'at the speed set'],
  seconds: () => ['The room lasts', 'from the mark to the end of it'],
  'screw-turns': () => ['Leadscrew turns for each of the spindle', ''],
  'groove-floor': () => ['Relief, floor', 'ISO 4755 least; inside GB/T 3'],
  'groove-diameter': () => ['Relief, diameter of the floor', ''],
};

/** What is said only where the job or machine is so. */
export const wayNote: Readonly<Record<NoteCode, string>> = {
  'in-shallow': 'The hole as entered is too shallow for thread and run-out.',
  'in-slender': 'Longer than four diameters: a steel bar chatters. Carbide, or a thicker bar.',
  'in-too-slender':
    'Longer than six diameters of the thickest bar that goes in: tap it, or finish it with a tap.',
  'wm-pi': 'The lead carries π: no dial and no count brings the nut back. Closed from first pass to last.',
  'co-time': 'The room lasts longer than your whole stopping time with its factor.',
  'co-too-short':
    'The room is over before your whole stopping time with its factor. Slower, a wider groove, away from the shoulder, or by hand.',
  'co-time-unknown': 'Whether you can stop in time is not known: room, speed or stopping time is missing.',
  'co-up': 'The screw is driven faster than the spindle: start gently; wheels driving up can break teeth.',
  'fc-never':
    'You entered that the chuck is screwed on. Reversed under load it can unscrew and come off: not on this machine.',
  'fc-unknown': 'How the chuck is held on is not known. What is screwed on can unscrew in reverse.',
  'fc-locked': 'You entered that the chuck is locked on its nose. Look whether its locks are tight.',
};

/** What holds of every such work. */
export const waySays = (id: WayId): readonly string[] => {
  const slide = words().topSlide;
  return {
    'left-hand': [
      'Spindle forward, the tool starts at the headstock and goes to the tailstock: it needs a groove to start in, and room to the centre at its end.',
      'The leading side is the tool’s right one: the larger relief goes there. A right-hand tool rubs.',
      `${capital(slide)} swivelled to the other side, to feed towards the tailstock; inside, as outside for right-hand.`,
    ],
    internal: [
      'Point towards you: the cut goes on by drawing the slide towards you, and you withdraw by turning it away, to the middle. Rehearse it in air: the habit of outside threads drives the tool in.',
      'The cross-slide’s dial counts backwards. Write the withdrawn reading down: too far, and the bar’s back rubs.',
      `${capital(slide)} swivelled opposite to an outside thread of the same hand.`,
      'The bar springs: a fifth to two fifths more passes, lighter; before gauging one more at the last setting, where tool and material bear it.',
      'Tool upside down against the far wall: dial and withdrawal as outside. The cut then lifts the bar: clamp it for that.',
    ],
    'multi-start': [
      'Turn the work by counts, or shift the tool by one pitch; never by a rounded step added up.',
      'Every start at one depth before any goes deeper: a thin land beside a full groove bends.',
      'The carriage goes by the lead: speed and stopping room follow it, not the pitch.',
    ],
    taper: [
      'Taper attachment or second driven axis: the pitch is then right along the axis, as NPT and R have it.',
      'Tool square to the work’s axis, not to the cone; depth is square to the axis too.',
      'Tailstock set over: the pitch comes out along the cone, short along the axis and uneven once a turn, since the dog drives at an angle. Set the tool square to the leaning work, or both flanks lean.',
      `With neither it can’t be cut by the leadscrew: a ${slide} fed by hand keeps no pitch. Turn the cone, use a die.`,
    ],
    worm: [
      'Rough straight in with a tool narrower than the bottom, open each flank by shifting along the axis, finish with the form tool a little at a time.',
      'A deep tool is buried on three sides: slow, flooded, chips cleared at each pass.',
      'Narrow enough below its edge on both sides, by the helix, or its heel ploughs the flank.',
    ],
    coarse: [
      'Run-in long enough for the carriage to come up to speed before the cut.',
      'By hand: isolate and lock off, crank the spindle, and take the crank off before there is power again.',
    ],
    'relief-plunge': [
      'Before the first pass, drive off, nut open: plunge the relief at the thread’s end, its floor below the root.',
      'It is a parting cut: slow, sharp, on centre. Never with the nut closed: the carriage takes the buried tool along.',
      'Plunged with the threading tool alone it leaves no room to stop in: shift and plunge again.',
    ],
    'from-the-chuck': [
      'Front tool upside down, or a rear tool the right way up: both cut with the spindle reversed.',
      'The pass begins at the shoulder: tool set into a groove, spindle still. It ends in the open, and stopping is no hurry.',
      'Drive and half-nut rule stay: reversed, the screw takes the carriage to the tailstock. Dry run first.',
      'In front the cut lifts slide and tool post: lighter passes, gibs snug. At the rear the dial counts backwards. Dog or driver must hold in reverse too.',
    ],
  }[id];
};

/** An angle as a taper attachment's scale is read: 1°47′24″. */
export const minutesText = (degrees: number): string => {
  const all = Math.round(Math.abs(degrees) * 3600);
  const two = (n: number): string => `${n}`.padStart(2, '0');
  return `${Math.floor(all / 3600)}°${two(Math.floor(all / 60) % 60)}′${two(all % 60)}″`;
};

/** A float to so many places, with the person's decimal mark and a true minus. */
export const places = (x: number, n: number): string => x.toFixed(n).replace('-', '−').replace('.', mark());
