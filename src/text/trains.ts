import type { BanjoLimit, Misfit } from '../core/drive/trains';

export { stagesText } from './train-words';

const limitName: Record<BanjoLimit, string> = {
  shafts: 'distance of first shaft and leadscrew',
  least: 'inner end of the slot',
  most: 'outer end of the slot',
  studGap: 'studs apart',
  studs: 'number of studs',
  clearance: 'clearance to a shaft',
};

/** Words of the page of change gears, and of entering wheels. */
export const trainsText = {
  title: 'Change gears',
  none: 'This machine has an electronic drive: no wheels to change.',
  toDrive: 'What turns the leadscrew',
  missing: 'Not known yet, and needed for any train:',
  noThread: 'Choose a thread or a feed first',
  leadOf: (name: string, mm: string): string => (name ? `${name} · lead ${mm}` : `Lead ${mm}`),
  looking: 'Looking for trains',
  nothing: (percent: number): string =>
    `No train within ${percent < 1 ? '133 ppm' : `${percent} %`} can be set up with these wheels.`,
  dontFit: (n: number): string =>
    n === 1
      ? '1 set of wheels came near enough and can’t be set up.'
      : `${n} sets of wheels came near enough and can’t be set up.`,
  exact: 'Exact',
  off: (um: string, ppm: string, long: boolean): string =>
    `${um} mm in 300 mm too ${long ? 'long' : 'short'} (${ppm} ppm)`,
  error: 'Lead',
  cuts: 'It cuts',
  change: 'Wheels to put on',
  changes: (n: number): string => (n === 0 ? 'none to put on' : n === 1 ? '1 to put on' : `${n} to put on`),
  nut: 'Half-nut with this train',
  hand: 'Hand',
  hands: {
    right: 'Right',
    left: 'Left',
    either: 'By the tumbler',
    unknown: 'Not known',
  },
  leftScrew: 'With a right-hand leadscrew, and a box that keeps the sense.',
  lever: (name: string): string => `Box lever ${name}`,
  mount: 'This train is mounted now',
  nowMounted: 'Mounted now',
  orderName: 'In order of',
  order: { error: 'Smallest error', ease: 'Fewest changes' },
  easeHelp: 'Fewest changes looks no further than 133 ppm: 0.04 mm in 300 mm, ISO 1708 from memory.',
  pairsName: 'Pairs of wheels',
  pairs: { two: 'Up to two', three: 'Up to three' },
  list: 'Trains',
  more: 'More trains',
  uncheckedOne: 'Nothing was checked against what isn’t known: ',
  checked: 'It fits by the limits entered.',
  limits: (all: readonly BanjoLimit[]): string => all.map((l) => limitName[l]).join(', '),
  rules:
    'Rules: wheels in mesh are as far apart as their teeth together; of a pair in mesh, the teeth together must be more than the wheel beside one of them and the clearance; wheels in one plane that don’t mesh must not touch. Geometry; the clearance is common practice.',
  drawnToScale:
    'Pitch circles to scale. Heavy: to put on. Broken: idlers. The angle of the banjo is not known.',
  assumed: 'The distance of the shafts isn’t known: it is drawn as it may be.',
  firstShaft: 'First shaft',
  stud: (n: number): string => `Stud ${n}`,
  screw: 'Leadscrew',
  steps: {
    first: (z: number): string => `First shaft: ${z}`,
    idler: (n: number, z: number): string => `Stud ${n}: ${z} as idler`,
    stud: (n: number, a: number, b: number): string => `Stud ${n}: ${a} is driven, ${b} beside it drives on`,
    screw: (z: number): string => `Leadscrew: ${z}`,
  },
  putOn: 'put on',
  stays: 'stays',
  mountedTitle: 'What is mounted',
  notMounted: 'Not known which wheels are mounted: all count as to put on.',
  enterWheels: 'Enter or change the wheels',
  misfit: (m: Misfit): string => {
    switch (m.rule) {
      case 'studs':
        return `It needs ${m.needs} studs; there are ${m.has}.`;
      case 'reach':
        return 'The wheels don’t span from first shaft to leadscrew.';
      case 'slot':
        return 'The last stud would stand outside its slot.';
      case 'stud-gap':
        return 'Two studs would stand too close.';
      case 'wheel-on-shaft':
        return `The wheel of ${m.wheel} would run against a shaft.`;
      case 'wheels-touch':
        return `The wheels of ${m.wheel} and ${m.other} would touch.`;
    }
  },
  back: 'Back to the thread',
} as const;
