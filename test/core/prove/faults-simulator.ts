/**
 * A machine that is broken on purpose and measured with error, in plain arithmetic of its own: nothing here is shared
 * with what finds the fault.
 */
export interface Lathe {
  readonly lines: number;
  readonly edges: number;
  readonly spindlePulley: number;
  readonly encoderPulley: number;
  readonly full: number;
  readonly micro: number;
  readonly motorPulley: number;
  readonly screwPulley: number;
  readonly pitch: number;
  readonly unit: 'mm' | 'tpi';
  readonly starts: number;
}
/** What was slipped in: on the machine itself (the profile doesn't know), or in the controller. */
export interface Broken {
  readonly name: string;
  readonly where: 'profile' | 'controller';
  readonly part: Partial<Lathe>;
}
export interface Measured {
  readonly test: 'counts' | 'screw' | 'carriage' | 'travel';
  readonly over: number;
  readonly got: number;
  readonly half: number;
}

/** Small seeded generator (mulberry32). */
export const seeded = (seed: number) => {
  let a = seed;
  return (): number => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};
export const pick = <T>(random: () => number, list: readonly T[]): T => {
  const x = list[Math.floor(random() * list.length)];
  if (x === undefined) throw new RangeError('empty list');
  return x;
};

const inMm = (l: Lathe): number => l.starts * (l.unit === 'mm' ? l.pitch : 25.4 / l.pitch);
const perTurn = (l: Lathe): number => (l.lines * l.edges * l.spindlePulley) / l.encoderPulley;
const perScrew = (l: Lathe): number => (l.full * l.micro * l.screwPulley) / l.motorPulley;

/** What would be read without error: `noted` is the profile, with each slip put where it belongs. */
export const shows = (
  noted: Lathe,
  broken: readonly Broken[],
  threadLead: number,
  test: Measured['test'],
  over: number,
): number => {
  const at = (where: Broken['where']): Lathe =>
    broken.filter((b) => b.where === where).reduce((l, b) => ({ ...l, ...b.part }), noted);
  const [real, typed] = [at('profile'), at('controller')];
  // The controller turns counts into steps by what was typed; the machine turns steps into travel by what it is.
  const stepsPerCount = (threadLead / inMm(typed)) * (perScrew(typed) / perTurn(typed));
  const screwTurns = (spindleTurns: number): number =>
    (spindleTurns * perTurn(real) * stepsPerCount) / perScrew(real);
  if (test === 'counts') return over * perTurn(real);
  if (test === 'screw') return screwTurns(over);
  if (test === 'carriage') return over * inMm(real);
  return screwTurns(over / threadLead) * inMm(real);
};

export const LATHE_LINES = [360, 500, 600, 1000, 1024, 1200, 2048, 2500];
const ALL_LINES = [
  100, 200, 250, 256, 300, 360, 400, 500, 512, 600, 720, 800, 1000, 1024, 1200, 1250, 2000, 2048, 2500, 3600,
  4096, 5000,
];
const ALL_MM = [1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10];
const ALL_TPI = [2, 3, 4, 5, 6, 8, 10, 11, 12, 14, 16, 18, 20, 24];

export const someLathe = (random: () => number): Lathe => {
  const metric = random() < 0.5;
  const [spindlePulley, encoderPulley] = pick(random, [
    [1, 1],
    [60, 30],
    [36, 24],
    [40, 60],
  ] as const);
  const [motorPulley, screwPulley] = pick(random, [
    [1, 1],
    [20, 60],
    [24, 48],
    [30, 45],
  ] as const);
  return {
    lines: pick(random, LATHE_LINES),
    edges: 4,
    spindlePulley,
    encoderPulley,
    full: pick(random, [200, 400]),
    micro: pick(random, [4, 8, 10, 16, 32]),
    motorPulley,
    screwPulley,
    pitch: metric ? pick(random, [1.5, 2, 3, 4, 5, 6]) : pick(random, [4, 5, 6, 8, 10, 12, 16]),
    unit: metric ? 'mm' : 'tpi',
    starts: 1,
  };
};

/** Every slip this simulator knows to make on a lathe. */
export const slipsFor = (l: Lathe): Broken[] => {
  const parts: [string, Partial<Lathe>][] = [
    ...ALL_LINES.map((lines): [string, Partial<Lathe>] => ['lines', { lines }]),
    ['lines', { lines: l.lines * 4 }],
    ...(l.lines % 4 === 0 ? [['lines', { lines: l.lines / 4 }] as [string, Partial<Lathe>]] : []),
    ['edges', { edges: 2 }],
    ['edges', { edges: 1 }],
    ['encoder belt', { spindlePulley: l.encoderPulley, encoderPulley: l.spindlePulley }],
    ['encoder belt', { spindlePulley: 1, encoderPulley: 1 }],
    ['motor belt', { motorPulley: l.screwPulley, screwPulley: l.motorPulley }],
    ['motor belt', { motorPulley: 1, screwPulley: 1 }],
    ...[1, 2, 4, 5, 8, 10, 16, 20, 25, 32, 64, 128].map((micro): [string, Partial<Lathe>] => [
      'micro',
      { micro },
    ]),
    ['full', { full: l.full === 200 ? 400 : 200 }],
    ['unit', { unit: l.unit === 'mm' ? 'tpi' : 'mm' }],
    ...ALL_MM.map((pitch): [string, Partial<Lathe>] => ['pitch', { pitch, unit: 'mm' }]),
    ...ALL_TPI.map((pitch): [string, Partial<Lathe>] => ['pitch', { pitch, unit: 'tpi' }]),
    ...[2, 3, 4].map((starts): [string, Partial<Lathe>] => ['starts', { starts }]),
  ];
  const changes = parts.filter(([, part]) =>
    Object.entries(part).some(([k, v]) => l[k as keyof Lathe] !== v),
  );
  const seen = new Set<string>();
  return changes
    .filter(([, part]) => {
      const key = JSON.stringify({ ...l, ...part });
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .flatMap(([name, part]) => (['profile', 'controller'] as const).map((where) => ({ name, where, part })));
};

/** Reads with an error of up to ±half at each end, evenly spread. */
export const measure = (random: () => number, truth: number, half: number): number =>
  truth + half * (2 * random() - 1) - half * (2 * random() - 1);
