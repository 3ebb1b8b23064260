import type { Inputs } from '../context';
import * as drive from '../drive';
import { leadHigh, min, mul, ratio, type Ratio } from '../quantity';
import { Basis, READS, USES, type LimitAsk, type Reads, type Uses } from './basis';
import { define } from './define';
import { RAMP_RULE, rampCovers } from './evidence';
import { readLimit, type LimitBasis, type LimitId, type LimitReading } from './limit';
import { direction, edgeGap, phaseCrowding, torque, whip } from './load';
import { roomHolds } from './room-from';
import { MARGIN_ELECTRONIC, MARGIN_NONE } from './standing';
import { exact } from './why';

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
    const crowd = phaseCrowding(b, ask);
    const per = r && counts && crowd ? mul(drive.burstPerRpm(r, counts), crowd) : null;
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
  edgeGap,
  direction,
  torque,
  whip,
  (b) => {
    const limit = b.stated('limit', 'machine.chuckMaxRpm');
    return b.make('chuck', 'required', 'work', 'rpm', ratio(1), limit, MARGIN_NONE, 'chuck');
  },
  (b, ask) => {
    const limit = spindleTop(b, ask);
    return b.make('spindle-range', 'supporting', 'work', 'rpm', ratio(1), limit, MARGIN_NONE, 'spindle');
  },
  (b, ask) => {
    const l = b.lead();
    const time = b.stated('time', 'machine.wholeStopTime');
    const factor = b.stated('factor', 'machine.safetyFactor');
    const holds = roomHolds(ask.input('job.roomFrom'), (path) => ask.input(path));
    const room = holds ? b.stated('room', 'job.room') : b.lapsed('room', 'job.room');
    const per = l && time && factor ? drive.stoppingPerRpm(l, time, factor) : null;
    return b.make('stopping-room', 'required', 'work', 'mm', per, room, MARGIN_NONE, 'stopping');
  },
];

/** The limits that change gears have too; the others are an electronic drive's. */
const WITHOUT_ELECTRONICS: readonly LimitId[] = [
  'carriage',
  'whip',
  'chuck',
  'spindle-range',
  'stopping-room',
];

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
  rule: 2,
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
      tests: ask.input('context.tests') ?? [],
      events: ask.input('context.events'),
      cuttingSince: ask.input('context.cuttingSince'),
      cuttingDay: ask.input('context.cuttingDay'),
    },
  };
};
