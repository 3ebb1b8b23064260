import { decimalText, type Ratio } from '../core/quantity';
import type { Band } from '../core/thread/limits';
import { mark } from './numbers';
import { sourceText, noteText } from './why-notes';
import { words } from './words';

const TAPER_SOURCE: Readonly<Record<string, string>> = {
  'asmeB1.20.1': 'ASME B1.20.1, Table 2, from memory.',
  'iso7-table': 'ISO 7-1, Table 1, from memory.',
};

const WORK_TO = 'Work to a gauge or the mating part.';
const CUSTOM = `A custom of the trade: no standard gives limits. ${WORK_TO}`;
const GEAR = 'Worms are held to limits as gears are, with the wheel they run in; none are built in.';
/** Families without limits of size: why. */
const NO_LIMITS: Readonly<Record<string, string>> = {
  square: `No standard gives limits for square threads. Fit the nut to the screw.`,
  round: `The tolerances of DIN 405 are not built in: no table of them could be checked. ${WORK_TO}`,
  cycle: `The limits of BS 811 are not built in: no table of them could be checked. ${WORK_TO}`,
  microscope: `The limits of ISO 8038 are not built in: no table of them could be checked. ${WORK_TO}`,
  'model-engineer': CUSTOM,
  brass: CUSTOM,
  'worm-module': GEAR,
  'worm-dp-29': GEAR,
  'worm-dp-40': GEAR,
};

const FORM_SOURCE: Readonly<Record<string, string>> = {
  'common practice': 'Form by common practice.',
  entered: 'Form as entered.',
  'BS 811': 'Form by BS 811, from memory.',
  'ASME B1.9': 'Form by ASME B1.9, from memory.',
  'DIN 405-1': 'Form by DIN 405-1, from memory.',
  'DIN 3975': 'Form by DIN 3975, from memory.',
};

/** Words of the page of limits and everything that goes with a thread's sizes. */
export const limitsText = {
  title: 'Limits of size',
  external: 'External',
  internal: 'Internal',
  classes: (side: string): string => `${side} class`,
  major: 'Major diameter',
  pitch: (): string => `${words().pitchDiameter.charAt(0).toUpperCase()}${words().pitchDiameter.slice(1)}`,
  minor: 'Minor diameter',
  minorFlat: 'Minor, flat root',
  notGiven: 'Not given',
  least: (x: string): string => `at least ${x}`,
  most: (x: string): string => `at most ${x}`,
  basic: 'Basic sizes',
  drawing: (name: string, cls: string, tool: boolean): string =>
    `${name} ${cls} in section to scale: most material heavy, least thin, the band between them filled${
      tool ? ', the tool’s point dashed in a groove' : ''
    }`,
  drawnToScale: 'To scale. Heavy: most material. Thin: least. Between them the tolerance.',
  toolDrawn: 'Dashed: the tool’s point, with the flanks in the middle of the limits.',
  profile: 'Profile',
  pitchLength: 'Pitch',
  sharpHeight: 'Height of the sharp V',
  depthFull: 'Crest to root',
  addendum: 'Crest to pitch line',
  engaged: 'Overlap of screw and nut',
  crest: { flat: 'Crest flat', radius: 'Crest radius' },
  root: { flat: 'Root flat', radius: 'Root radius' },
  formSource: (source: string): string => FORM_SOURCE[source] ?? `Form by ${source}.`,
  tool: 'Point of the tool',
  toolWidth: 'Width',
  squareNote: 'Half the pitch; a little more in the nut. Common practice.',
  largest: { radius: 'Largest round nose', flat: 'Largest flat nose' },
  largestNote:
    'Blunter, and the root stays where the mating crest needs room. Own reckoning from the profile.',
  helix: 'Lead angle',
  helixAt: { major: 'At the major diameter', pitch: 'At the pitch line', minor: 'At the root' },
  clearance: 'Tool clearance, upright, along the axis',
  leading: 'Leading side',
  trailing: 'Trailing side',
  clearanceNote: 'With 2° left at each flank. Leading is the side that goes ahead.',
  engagement: 'Length of engagement',
  short: 'Short, up to',
  normal: 'Normal, up to',
  long: 'Long, above',
  engagementSource: 'ISO 965-1, Table 2, from memory.',
  undercut: (): string => `${words().undercut.charAt(0).toUpperCase()}${words().undercut.slice(1)}`,
  iso: 'To ISO 4755',
  dinA: 'To DIN 76-1, form A, regular',
  dinB: 'To DIN 76-1, form B, short',
  gbNormal: 'Inside, normal',
  gbShort: 'Inside, short',
  floor: 'Floor, at least',
  length: 'Shoulder to full thread, at most',
  groove: 'Length of the groove',
  floorDiameter: 'Diameter of the floor',
  radius: 'Corner radius, about',
  neverMixed: 'Two standards: take all figures from one of them.',
  fromMemory: 'From memory of the standard.',
  isoSource: 'ISO 4755 by GB/T 3-1997, Table 2.',
  gbSource: 'GB/T 3-1997.',
  noUndercut: 'Without one',
  runOut: 'Run-out at the shoulder, normal',
  shoulder: 'Last full thread to shoulder',
  ends: 'Chamfer',
  chamferTo: 'Down to',
  chamferLength: 'Length along the axis',
  chamferNote: '45° to below the root, so that the first turn grows from nothing. Common practice.',
  drills: 'Tapping drills',
  percent: (p: string): string => `${p} % thread`,
  inBore: {
    within: 'within the minor diameter’s limits',
    below: 'below the minor diameter’s limits',
    above: 'above the minor diameter’s limits',
    unknown: '',
  },
  recommended: 'Take this one',
  taper: 'Taper',
  taperOn: 'On diameter',
  side: 'One side to the axis',
  gaugeLength: 'Small end to gauge plane',
  gaugeOutside: 'Gauge plane outside',
  gaugeInside: 'Gauge plane inside',
  turns: (n: string): string => (n === '1' ? '± 1 turn' : `± ${n} turns`),
  useful: 'Useful thread',
  smallEnd: 'At the small end',
  taperNote:
    'Cut with a taper attachment or a second axis, the tool square to the axis. Setting the tailstock over shortens the pitch.',
  setOver: (ppm: string): string => `Set over, the pitch is ${ppm} ppm short.`,
  source: (code: string): string =>
    TAPER_SOURCE[code] ?? (sourceText as Readonly<Record<string, string>>)[code] ?? code,
  /** Why there are no limits, in the family's own words where it has some. */
  refused: (code: string, family: string): string =>
    (code === 'no-limits-known' && NO_LIMITS[family]) ||
    ((noteText as Readonly<Record<string, string>>)[code] ?? code),
  noThread: 'Choose a thread first.',
  back: 'Back to the thread',
} as const;

/** A diameter as limits are printed: thousandths of a millimetre, tenths of a thousandth of an inch. */
export const sizeText = (r: Ratio, unit: 'mm' | 'in'): string =>
  decimalText(r, { places: unit === 'mm' ? 3 : 4, keepZeros: true, mark: mark() });

/** Least and largest permitted size, or what the standard leaves open. */
export const bandText = ({ min, max }: Band, unit: 'mm' | 'in'): string => {
  if (min && max) return `${sizeText(min, unit)} – ${sizeText(max, unit)}`;
  if (min) return limitsText.least(sizeText(min, unit));
  return max ? limitsText.most(sizeText(max, unit)) : limitsText.notGiven;
};
