import type { HoldNote } from '../core/cut/hold';
import type { Ending, Holding, Infeed, MaterialId, ToolMaterial } from '../core/job';
import { mark } from './numbers';
import { capital, words } from './words';

export const materialName: Readonly<Record<MaterialId, string>> = {
  'free-cutting-steel': 'Free-cutting steel',
  'mild-steel': 'Mild steel',
  'carbon-steel': 'Medium-carbon steel',
  'alloy-steel': 'Alloy steel',
  stainless: 'Stainless steel',
  'tool-steel': 'Tool steel, annealed',
  'grey-iron': 'Grey cast iron',
  brass: 'Brass',
  bronze: 'Bronze',
  aluminium: 'Aluminium',
  plastic: 'Acetal, nylon',
};

export const endingName: Readonly<Record<Ending, string>> = {
  groove: 'A groove',
  'run-out': 'Fades out',
  through: 'The open end',
};
export const holdingName: Readonly<Record<Holding, string>> = {
  chuck: 'Chuck',
  collet: 'Collet',
  'chuck-and-centre': 'Chuck and centre',
  'between-centres': 'Between centres',
  faceplate: 'Faceplate',
};
export const toolMaterialName: Readonly<Record<ToolMaterial, string>> = { hss: 'HSS', carbide: 'Carbide' };
export const infeedName: Readonly<Record<Infeed, string>> = {
  radial: 'Straight in',
  flank: 'Flank',
  'modified-flank': 'Modified flank',
  'alternate-flank': 'Alternate flanks',
};
const TOP = (): string => capital(words().topSlide);
export const infeedHelp: Readonly<Record<Infeed, () => string>> = {
  radial: () => 'Cross-slide alone. Fine pitches, brass, inserts of the full form.',
  flank: () => `${TOP()} at the flank’s own angle: the chip comes off one side.`,
  'modified-flank': () =>
    `${TOP()} half a degree to one degree short of it: the other flank is shaved clean.`,
  'alternate-flank': () => `${TOP()} along the axis, shifted to and fro. Coarse and deep threads.`,
};

/** An angle of the top slide: 29.5°. */
export const angleText = (deg: number): string => `${one(deg)}°`;

const one = (x: number): string => x.toFixed(1).replace(/\.0$/, '').replace('.', mark());

/** What the holding asks, and how far the work stands out against the rule of thumb. */
export const holdText = (n: HoldNote): string => {
  switch (n.code) {
    case 'holding-unknown':
      return 'How the work is held is not known.';
    case 'overhang-unknown':
      return 'How far it stands out is not known: length or diameter is missing.';
    case 'overhang':
      return `Stands out at least ${one(n.times)} diameters; held at one end, up to ${n.most} (rule of thumb).${n.beyond ? ' Support it at the tailstock.' : ''}`;
    case 'span':
      return `At least ${one(n.times)} diameters between supports; up to ${n.most} without a steady (rule of thumb).${n.beyond ? ' Set a steady.' : ''}`;
    case 'chuck':
      return 'A diameter of grip in the jaws. Taken out, it never goes back true: finish the thread first.';
    case 'collet':
      return 'Size of the collet as the work’s: a slack one lets it be pushed in.';
    case 'chuck-and-centre':
      return 'A step or stop in the jaws, so that the cut can’t push the work in. Mind the centre when the carriage runs out.';
    case 'between-centres':
      return 'The dog goes back into the same slot each time: another slot is another start.';
    case 'faceplate':
      return 'Balanced, bolts short, slow: turn it by hand past the bed and the tool first.';
  }
};

export const workText = {
  title: 'Work and tool',
  back: 'Back to the cut',
  thread: 'The thread',
  designation: 'Thread',
  none: 'None chosen',
  work: 'The work',
  tool: 'The tool',
  dials: 'Dials of this machine',
  speed: 'Speed',
  material: 'Material',
  materialTitle: 'What is it made of?',
  materialBack: 'Back to work and tool',
  blank: 'Blank as measured',
  bore: 'Bore as measured',
  wanted: (text: string): string => `Wanted ${text}`,
  noLimits: 'Basic size, no limits to judge by',
  tooLarge: 'Too large: turn it down first, or the crests are sharp and nothing fits.',
  tooSmall: 'Too small: no infeed brings the crests back.',
  boreTooLarge: 'Too large: no infeed brings the crests back.',
  boreTooSmall: 'Too small: bore it first, or the crests are sharp and nothing fits.',
  length: 'Length of the thread',
  ending: 'It ends in',
  endingMore: 'Groove, gap and stopping room',
  holding: 'Held in',
  toolMaterial: 'Tool of',
  nose: 'Nose',
  noseSize: 'Size of the nose',
  infeed: 'Infeed',
  infeedUsual: (name: string): string => `Not chosen: the plan takes “${name.toLowerCase()}”.`,
  infeedOpen: 'Not chosen.',
  topSlide: (): string => `${capital(words().topSlide)} set to`,
  topUsual: (deg: string): string => `Not entered: the plan takes ${deg}, the trade’s usual`,
  topAsScale: 'As its own scale reads it',
  starts: 'Starts',
  hand: 'Hand',
  side: 'Outside or inside',
  rpm: 'Speed set',
  ways: 'Other work: what differs',
  notKnown: 'Not known',
  notChosen: 'Not chosen',
  bar: 'Bar, blind hole and which way to withdraw',
} as const;
