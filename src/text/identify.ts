import type { SeparatingKind } from '../core/thread/identify';

export const identifyLabels = {
  'identify.diameter': 'Diameter measured',
  'identify.length': 'Length over the crests',
  'identify.crests': 'Crests in that length, both ends counted',
  'identify.gauge': 'Pitch gauge leaf that fits',
} as const;

/** Words of the page that asks what a thread is. */
export const identifyText = {
  title: 'What is this thread?',
  help: 'Give what you can measure. The more, the fewer are left.',
  side: { external: 'Outside: a screw', internal: 'Inside: a hole' },
  sideName: 'Screw or hole',
  diameter: { external: 'Outside diameter', internal: 'Bore over the crests' },
  pitchBy: 'Pitch by',
  pitchWays: { count: 'Crests counted', gauge: 'Gauge leaf' },
  lengthOver: 'Length over crests',
  crestsIn: 'Crests in it',
  enter: 'Enter',
  readWith: 'Measured with',
  instruments: { caliper: 'Caliper', micrometer: 'Micrometer', rule: 'Rule' },
  angle: 'Flank angle',
  angles: { none: 'Not known', '60': '60°', '55': '55°', '47.5': '47½°', '30': '30°', '29': '29°' },
  clear: 'Clear all readings',
  fits: 'Fits your readings; others may.',
  far: 'None in the list fits well. Measure again, or it is a thread of its own.',
  nothing: 'Nothing measured yet.',
  refused: 'A reading is not above nothing.',
  together: 'These can’t be told apart by what you measured:',
  others: 'Less likely:',
  likely: (p: number): string =>
    p > 0.95 ? 'very likely' : p > 0.6 ? 'likely' : p > 0.15 ? 'possible' : p > 0.01 ? 'unlikely' : 'hardly',
  crest: {
    'as-cut': 'crests as cut',
    under: 'crests a little small or worn',
    'far-under': 'crests well under size or worn',
    over: 'crests plated or swollen',
  },
  next: 'To tell the first two apart:',
  nextBy: {
    diameter: (d: string): string => `the diameter again, with care: they differ by ${d} mm.`,
    'pitch-over-length': (d: string, n: number | null): string =>
      `count crests over ${n === null ? 'as long a length as there is' : `${n} pitches or more`}: the pitches differ by ${d} mm.`,
    angle: (d: string): string => `the flank angle: they differ by ${d}°.`,
    'over-wires': (d: string): string => `over wires: they differ by ${d} mm.`,
    starts: (): string => 'count the ends of thread at the face: they differ in starts.',
    taper: (): string => 'the diameter at two places: one is tapered.',
  } satisfies Record<SeparatingKind, (d: string, n: number | null) => string>,
  notApart: 'Nothing that is usually measured tells these two apart.',
  use: (name: string): string => `Use ${name}`,
} as const;
