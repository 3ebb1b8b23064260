import {
  WIRING_BOUNDS,
  type Bond,
  type CableField,
  type CableKind,
  type Colour,
  type FindingCode,
  type Missing,
  type Place,
  type SectionId,
} from '../core/wiring/record';
import { mark } from './numbers';

/** Words of the wiring record. `{screen}`, `{earth}`, `{mains}` and `{inverter}` are put in by `trade` (text/prove). */
export const placeName: Readonly<Record<Place, string>> = {
  encoder: 'Encoder',
  controller: 'Controller',
  drive: 'Drive',
  display: 'Display',
  stop: 'Stop button',
  inverter: '{Inverter}',
  other: 'Other',
};

export const kindName: Readonly<Record<CableKind, string>> = {
  'encoder-single': 'Encoder, single-ended',
  'encoder-differential': 'Encoder, differential',
  'step-single': 'Step and direction, single-ended',
  'step-differential': 'Step and direction, differential',
  display: 'Display',
  stop: 'Stop circuit',
  motor: 'Motor of the drive',
  power: '{Mains}, {inverter}, spindle motor',
  other: 'Other low-voltage signals',
};

export const colourName: Readonly<Record<Colour, string>> = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  TQ: 'turquoise',
};

/** "white/green". */
export const colourText = (colour: string): string =>
  colour
    .split('/')
    .map((c) => colourName[c as Colour])
    .join('/');

export const sectionText = (id: SectionId): string => {
  const [unit, size = ''] = id.split('-');
  return unit === 'awg' ? `AWG\u00a0${size}` : `${size.replace('.', mark())}\u00a0mm²`;
};

export const bondName: Readonly<Record<Bond, string>> = {
  clamp: 'Clamp',
  shell: 'Plug’s shell',
  wire: 'Wire',
  capacitor: 'Capacitor',
  open: 'Not bonded',
};

export const cableFieldName: Readonly<Record<CableField, string>> = {
  length: 'Length',
  supply: 'Supply at its near end',
  least: 'Least voltage borne at the far end',
  current: 'Current drawn',
};

export const missingName: Readonly<Record<Extract<Missing, { of: 'cable' }>['field'], string>> = {
  ...cableFieldName,
  section: 'conductors',
  screen: 'whether it has one',
  bondFrom: 'how it is bonded',
  bondTo: 'how it is bonded',
  contacts: 'which contacts',
};

/** What each finding says, behind the names of what it is about. */
export const findingText: Readonly<Record<FindingCode, string>> = {
  ends: 'Every wire lands on both ends.',
  'end-open': 'An end lands on no connector.',
  pins: 'No pin carries two wires.',
  'pin-twice': 'Two wires on one pin.',
  'pin-beyond': 'The connector has no such pin.',
  'pin-unknown': 'The pin isn’t known.',
  'signal-unknown': 'A wire without a signal.',
  'usual-missing': 'Usual in such a cable, and not recorded.',
  'partner-missing': 'The other half of the signal is missing.',
  pairs: 'Halves of each signal share a twisted pair.',
  'pair-split': 'The halves of one signal are in two pairs: put both in one.',
  'pair-crowd': 'More than two wires in one pair.',
  'pair-unknown': 'Which twisted pair isn’t known.',
  screen: '{Screen} recorded as bonded.',
  'screen-unknown': '{Screen}',
  'screen-none': 'No {screen}: away from the motor cable by 0.2 to 0.3 m, crossing it at right angles.',
  'screen-open': '{Screen} bonded directly at neither end: it screens nothing.',
  'screen-one-end':
    'Bonded at one end. For digital signals makers mostly ask for both, or a capacitor at the other.',
  'screen-pigtail': 'Bonded by a wire: 5 cm of it are some 3 Ω at 10 MHz. A clamp all round is better.',
  supply: 'Supply along the cable',
  'supply-below': 'The supply is no higher than the least that the far end bears.',
  'reach-single': 'Length, single-ended',
  'reach-differential': 'Length at this rate',
  'reach-too-fast': 'Faster than 10 Mb/s: beyond the guide for such a line.',
  contacts: 'Recorded: contacts closed, so that a broken wire opens the circuit too.',
  'contacts-open':
    'Open contacts: a broken wire goes unnoticed, and then the button does nothing. Use closed ones.',
  'contacts-unknown': 'Stop button',
  'dangerous-connector':
    '{Mains} or motor wires and signals in one connector. Keep them apart; ask a competent person.',
  'dangerous-cable':
    '{Mains} or motor wires and signals in one cable. Keep them apart; ask a competent person.',
  'earth-colour': 'Green and yellow is for protective {earth} alone.',
  'name-twice': 'Two things of this name.',
};

export const wiringText = {
  title: 'Wiring record',
  caution: 'Before a box is opened',
  cautions: [
    'Switch off, pull the plug or lock the main switch off. Then wait until the capacitors are discharged, as the maker says; an {inverter} holds its charge for minutes.',
    '{Mains}, motor and protective {earth} wires are for a competent person, under your local rules.',
    'This record draws extra-low-voltage signals. It designs no {mains} wiring and sizes no protective device.',
  ],
  intro: 'What goes where: to find a wire years from now, and to check it before power is put on.',
  invented:
    'Pins and colours of a layout are made up. Change them to what your maker’s sheet and your wires say.',
  loading: 'Being read from the phone …',
  unreadable: 'The record of this machine can’t be read by this version. It is kept as it is.',
  none: 'Nothing recorded yet.',
  checks: 'What the checks say',
  byRecord: 'By what you recorded; the app saw none of it.',
  cables: 'Cables',
  connectors: 'Connectors',
  add: 'Add a cable with its ends',
  addEmpty: 'Add an empty one',
  emptyCable: 'Cable',
  connector: 'Connector',
  full: 'The record is full.',
  sheet: 'Page for the lid, and continuity',
  back: 'Back to the record',
  machine: 'Back to Machine',
  toCable: 'Back to the cable',
  gone: 'This is no longer in the record.',
  wires: (n: number): string => (n === 1 ? '1 wire' : `${n} wires`),
  pinsOf: (n: number): string => (n === 1 ? '1 pin' : `${n} pins`),
  addWire: 'Add a wire',
  name: 'Name',
  keep: 'Keep it',
  nameLong: `No more than ${WIRING_BOUNDS.name} signs.`,
  kind: 'Kind',
  place: 'Where it is',
  pins: 'Number of pins',
  noWires: 'No wire here.',
  sections: 'Each conductor',
  screen: '{Screen}',
  bonding: 'how it is bonded at each end',
  yes: 'Has one',
  no: 'None',
  bondFrom: (at: string): string => `{Screen} at ${at}`,
  nearEnd: 'the near end',
  farEnd: 'the far end',
  supplies: 'What it feeds',
  contacts: 'Contacts while nobody presses',
  closed: 'Closed',
  open: 'Open',
  notKnown: 'Not known',
  enter: 'Enter',
  take: (what: string): string => `Take out ${what}`,
  wire: 'Wire',
  noSignal: 'no signal',
  signal: 'Signal',
  otherSignal: 'Another name',
  colour: 'Colour',
  body: 'Body',
  stripe: 'Second colour',
  pair: 'Twisted pair',
  noPair: 'None',
  from: 'Comes from',
  to: 'Goes to',
  openEnd: 'Open end',
  pin: 'Pin',
  rings: 'Rings: twisted pairs. Letters: IEC 60757.',
  print: 'Print, one page',
  continuity: 'Continuity',
  continuityHow:
    'All plugs off, everything dead, a meter on ohms. Tick what shows as said; a tick lapses when that wire changes.',
  reads: { closed: 'closed', open: 'open' },
  ticked: (day: string): string => `ticked ${day}`,
  lapsed: 'changed since: again',
  lost: (drop: string, allowed: string): string =>
    `${drop}\u00a0V of ${allowed}\u00a0V that may be lost, contacts not counted`,
  upTo: (length: string, reach: string): string => `${length}\u00a0m, up to ${reach}\u00a0m`,
  practice: 'near an {inverter}, common practice',
  rate: (rate: string): string => `at ${rate}\u00a0kb/s`,
  drawn: (from: string, to: string, signal: string, more: string): string =>
    `${from} to ${to}: ${signal}, ${more}.`,
} as const;
