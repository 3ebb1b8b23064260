import type { ContextPath, InputPath, Inputs } from '../context';
import * as drive from '../drive';
import { inBase, leadHigh, min, ratio, type Lead, type Ratio, type Stated } from '../quantity';
import { define, type Ask } from './define';
import { RAMP_RULE, rampCovers } from './evidence';
import type { FigureValues } from './ids';
import { readLimit, type LimitBasis, type LimitId, type LimitReading, type Need } from './limit';
import { MARGIN_ELECTRONIC, MARGIN_NONE } from './standing';
import { exact, type ShownUnit, type Term } from './why';

const READS = [
  'machine.driveKind',
  'machine.encoderLines',
  'machine.spindlePulley',
  'machine.encoderPulley',
  'machine.encoderMaxRpm',
  'machine.encoderMaxChannel',
  'machine.counterMaxEdges',
  'machine.motorMaxRpm',
  'machine.pulseHigh',
  'machine.pulseLow',
  'machine.stepInputMax',
  'machine.controllerMaxSteps',
  'machine.pulseTiming',
  'machine.carriageMax',
  'machine.chuckMaxRpm',
  'machine.spindleDrive',
  'machine.spindleSpeeds',
  'machine.spindleMax',
  'machine.wholeStopTime',
  'machine.safetyFactor',
  'job.room',
  'context.records',
  'context.now',
  'context.day',
  'context.events',
  'context.hours',
  'context.cuttingSince',
  'context.cuttingDay',
] as const satisfies readonly InputPath[];
type Reads = (typeof READS)[number] | (typeof RAMP_RULE)['reads'][number];
const USES = [
  'lead',
  'screwLead',
  'countsPerRev',
  'motorPerScrew',
  'stepsPerScrewRev',
  'stepsPerCount',
] as const;
type Uses = (typeof USES)[number];
type LimitAsk = Ask<Reads, Uses>;

type StatedPath = { [P in Reads]: P extends ContextPath ? never : P }[Reads];

/** Collects terms and missing paths while a limit is put together. */
class Basis {
  readonly terms: Record<string, Term> = {};
  readonly missing: InputPath[] = [];
  constructor(private readonly ask: LimitAsk) {}

  stated(name: string, path: StatedPath): Ratio | null {
    const s = this.ask.input(path) as Stated | null;
    this.terms[name] = { amount: s && exact(s.value, s.unit), from: path };
    if (!s) this.missing.push(path);
    return s && inBase(s);
  }

  /** A figure's own value; `as` writes it as the term of the line. */
  figure<F extends Uses>(
    name: string,
    id: F,
    unit: ShownUnit,
    as: (value: FigureValues[F]) => Ratio,
  ): FigureValues[F] | null {
    const f = this.ask.figure(id);
    this.terms[name] = { amount: f.value === null ? null : exact(as(f.value), unit), from: id };
    this.missing.push(...f.missing);
    return f.value;
  }

  ratio(name: string, id: Exclude<Uses, 'lead' | 'stepsPerCount'>, unit: ShownUnit): Ratio | null {
    return this.figure(name, id, unit, (value) => value);
  }

  /** For limits a lead that carries π is taken a hair too large. */
  lead(): Lead | null {
    return this.figure('lead', 'lead', 'mm', leadHigh);
  }

  make(
    id: LimitId,
    need: Need,
    side: 'drive' | 'work',
    unit: ShownUnit,
    perRpm: Ratio | null,
    limit: Ratio | null,
    margin = MARGIN_ELECTRONIC,
    source = 'rates',
  ): LimitBasis {
    const missing = [...new Set(this.missing)];
    return { id, need, side, unit, margin, source, terms: this.terms, missing, perRpm, limit };
  }
}

/** The frequency the step input bears: the least of what its rated frequency and its pulse times allow. */
const stepInput = (b: Basis): Ratio | null => {
  const before = b.missing.length;
  const rated = b.stated('rated', 'machine.stepInputMax');
  const high = b.stated('high', 'machine.pulseHigh');
  const low = b.stated('low', 'machine.pulseLow');
  const byTimes = high && low ? drive.pulseRate(high, low) : null;
  const known = [rated, byTimes].filter((x) => x !== null);
  const [first, ...rest] = known;
  // Either the rated frequency or both pulse times are enough; only with neither is it not known.
  if (first) b.missing.length = before;
  return first ? min(first, ...rest) : null;
};

const stepRate = (b: Basis): Ratio | null => {
  const l = b.lead();
  const screw = b.ratio('screw', 'screwLead', 'mm');
  const steps = b.ratio('steps', 'stepsPerScrewRev', 'steps/rev');
  return l && screw && steps ? drive.stepRatePerRpm(l, screw, steps) : null;
};

const LIMITS: readonly ((b: Basis, ask: LimitAsk) => LimitBasis | null)[] = [
  (b) =>
    b.make(
      'step-rate',
      'required',
      'drive',
      'steps/s',
      stepRate(b),
      b.stated('limit', 'machine.controllerMaxSteps'),
    ),
  (b) => b.make('step-input', 'supporting', 'drive', 'steps/s', stepRate(b), stepInput(b)),
  (b, ask) => {
    // A controller that spreads its steps evenly has no bursts; one of which that isn't known may have them.
    if (ask.input('machine.pulseTiming') === 'spread') return null;
    const r = b.figure('ratio', 'stepsPerCount', 'steps/count', leadHigh);
    const counts = b.ratio('counts', 'countsPerRev', 'counts/rev');
    const per = r && counts ? drive.burstPerRpm(r, counts) : null;
    return b.make('burst', 'supporting', 'drive', 'steps/s', per, stepInput(b), MARGIN_ELECTRONIC, 'burst');
  },
  (b) => {
    const counts = b.ratio('counts', 'countsPerRev', 'counts/rev');
    const per = counts && drive.edgesPerRpm(counts);
    return b.make(
      'counter',
      'required',
      'drive',
      'edges/s',
      per,
      b.stated('limit', 'machine.counterMaxEdges'),
    );
  },
  (b) => {
    const lines = b.stated('lines', 'machine.encoderLines');
    const spindle = b.stated('spindle', 'machine.spindlePulley');
    const encoder = b.stated('encoder', 'machine.encoderPulley');
    const per = lines && spindle && encoder ? drive.channelPerRpm({ lines, spindle, encoder }) : null;
    return b.make(
      'encoder-channel',
      'supporting',
      'drive',
      'Hz',
      per,
      b.stated('limit', 'machine.encoderMaxChannel'),
    );
  },
  (b) => {
    const spindle = b.stated('spindle', 'machine.spindlePulley');
    const encoder = b.stated('encoder', 'machine.encoderPulley');
    const per = spindle && encoder ? ratio(spindle.n * encoder.d, spindle.d * encoder.n) : null;
    return b.make(
      'encoder-speed',
      'supporting',
      'drive',
      'rpm',
      per,
      b.stated('limit', 'machine.encoderMaxRpm'),
    );
  },
  (b) => {
    const l = b.lead();
    const screw = b.ratio('screw', 'screwLead', 'mm');
    const revs = b.ratio('revs', 'motorPerScrew', 'times');
    const per = l && screw && revs ? drive.motorPerRpm(l, screw, revs) : null;
    return b.make('motor-speed', 'required', 'drive', 'rpm', per, b.stated('limit', 'machine.motorMaxRpm'));
  },
  (b) => {
    const l = b.lead();
    const per = l && drive.carriagePerRpm(l);
    return b.make(
      'carriage',
      'supporting',
      'drive',
      'mm/s',
      per,
      b.stated('limit', 'machine.carriageMax'),
      MARGIN_NONE,
    );
  },
  (b) => {
    const limit = b.stated('limit', 'machine.chuckMaxRpm');
    return b.make('chuck', 'required', 'work', 'rpm', ratio(1), limit, MARGIN_NONE, 'chuck');
  },
  (b, ask) => {
    const limit = spindleTop(b, ask);
    return b.make('spindle-range', 'supporting', 'work', 'rpm', ratio(1), limit, MARGIN_NONE, 'spindle');
  },
  (b) => {
    const l = b.lead();
    const time = b.stated('time', 'machine.wholeStopTime');
    const factor = b.stated('factor', 'machine.safetyFactor');
    const room = b.stated('room', 'job.room');
    const per = l && time && factor ? drive.stoppingPerRpm(l, time, factor) : null;
    return b.make('stopping-room', 'required', 'work', 'mm', per, room, MARGIN_NONE, 'stopping');
  },
];

/** The limits that change gears have too; the others are an electronic drive's. */
const WITHOUT_ELECTRONICS: readonly LimitId[] = ['carriage', 'chuck', 'spindle-range', 'stopping-room'];

const spindleTop = (b: Basis, ask: LimitAsk): Ratio | null => {
  const way = ask.input('machine.spindleDrive');
  if (way === 'range') return b.stated('limit', 'machine.spindleMax');
  const speeds = way === 'speeds' ? ask.input('machine.spindleSpeeds') : null;
  const top = speeds?.at(-1)?.value ?? null;
  const from = way === 'speeds' ? 'machine.spindleSpeeds' : 'machine.spindleDrive';
  b.terms.limit = { amount: top && exact(top, 'rpm'), from };
  if (!top) b.missing.push(from);
  return top;
};

/** Every limit on spindle speed for this job on this machine, each known or not known by itself. */
export const limits = define<readonly LimitReading[], Reads, Uses>({
  reads: [...READS, ...RAMP_RULE.reads],
  uses: USES,
  rule: 1,
  compute: (ask) => {
    const l = ask.figure('lead').value;
    const covered = l ? rampCovers(inputsOf(ask), leadHigh(l)) : null;
    const gears = ask.input('machine.driveKind') === 'change-gears';
    const value = LIMITS.flatMap((limit) => {
      const basis = limit(new Basis(ask), ask);
      const asked = basis && (!gears || WITHOUT_ELECTRONICS.includes(basis.id));
      return asked ? [readLimit(basis, covered)] : [];
    });
    return {
      value,
      standing: null,
      missing: [],
      why: { formula: 'limits', terms: {}, result: null, source: 'rates', notes: [] },
    };
  },
});

/** The part of the inputs that the ramp record's rule looks at, read through the declared paths. */
const inputsOf = (ask: LimitAsk): Inputs => {
  const machine = Object.fromEntries(RAMP_RULE.reads.map((p) => [p.slice(8), ask.input(p)]));
  return {
    machine: machine as unknown as Inputs['machine'],
    job: {} as Inputs['job'],
    context: {
      now: ask.input('context.now'),
      day: ask.input('context.day'),
      hours: ask.input('context.hours'),
      records: ask.input('context.records'),
      events: ask.input('context.events'),
      cuttingSince: ask.input('context.cuttingSince'),
      cuttingDay: ask.input('context.cuttingDay'),
    },
  };
};
