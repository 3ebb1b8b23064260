import { Chance } from './chance';
import { stepSource, type StepSource } from './format';
import { Recorder, SECTORS, type Buckets } from './record';
import { checkTrace, type TraceRefusal } from './check';
import { namesOn, type IngredientName, type TraceSpec } from './spec';

const TWO_PI = 2 * Math.PI;
/** The follower is stepped at most so much of a radian of its own swing at once. */
const FINEST = 0.1;
/** And at least so much. */
const COARSEST = 0.03;
const OVER_MM = [60, 300] as const;

/** What a run shows. Lengths in mm; errors are where the tool is less where it should be. */
export interface TraceResult {
  readonly on: readonly IngredientName[];
  readonly counts: number;
  readonly turns: number;
  /** Thread length of one drawn sector, mm, and the drawing. */
  readonly sector: number;
  readonly buckets: Buckets;
  /** Mean error of the first turn: from here the rest is counted, since a constant error is none of pitch. */
  readonly zero: number;
  /** Lowest to highest error, single steps evened out over a 32nd of a turn. */
  readonly spread: number;
  /** Mean error of the last turn less that of the first, and turns between them. */
  readonly cumulative: number;
  readonly between: number;
  /** Most that one turn swings, lowest to highest; null where there is a single turn. */
  readonly drunkenness: number | null;
  readonly drunkenAt: number;
  /** Most that pitch is off between any two places of the nut's length; and of any 60 and 300 mm. */
  readonly nut: number;
  readonly nutAt: number;
  readonly over60: number;
  readonly over300: number;
  /** How far the carriage was behind the steps due, mm, at the end. */
  readonly lag: number;
  readonly lost: {
    /** Steps for which there was no room. */
    readonly output: number;
    /** Steps by which the motor fell back, in whole electrical cycles. */
    readonly motor: number;
    readonly missed: number;
    readonly extra: number;
  };
}

/** sin x within 1e-6 for |x| ≤ π, by folding and four terms: a library sine costs as much as all the rest. */
const sine = (x: number): number => {
  const y = x > Math.PI / 2 ? Math.PI - x : x < -Math.PI / 2 ? -Math.PI - x : x;
  const s = y * y;
  return y * (0.9999966 + s * (-0.16664824 + s * (0.00830629 - s * 0.00018363)));
};

/** The first whole count at or after x, small enough to be held as a small integer. */
const wholeOf = (x: number): number => Math.min(2 ** 30, Math.ceil(x)) | 0;

/**
 * The whole chain, count by count: spindle, encoder, controller, output, motor, screw, nut. Runs in pieces, so that a
 * caller can tell how far it is and stop. Source: own model of the chain; closed forms stand in its tests.
 */
export class Trace {
  readonly total: number;
  done = 0;
  private readonly source: StepSource;
  private readonly chance: Chance;
  private readonly recorder: Recorder;
  private readonly first: number;
  private readonly perSector: number;
  /** Commands on their way, where the controller acts late: due times and steps, in a ring. */
  private readonly dueAt: Float64Array;
  private readonly dueSteps: Float64Array;
  private ringHead = 0;
  private ringTail = 0;

  private time = 0;
  private lastAngle = 0;
  private pending = 0;
  private nextTick: number;
  private nextMissed: number;
  private nextExtra: number;
  private dipA = 1;
  private dipB = 0;
  /** Steps due, steps sent, steps waiting; the motor's place and speed, in steps and steps/s. */
  private due = 0;
  private sent = 0;
  private queue = 0;
  private rate: number;
  private place: number;
  private speed = 0;
  private fallen = 0;
  /** Speed of a stepper's field, evened out, and whether the rotor keeps step with it. */
  private field = 0;
  private inStep = true;
  private lastGoal = 0;
  /** Time the motor has not been stepped through yet, and its steps over that time. */
  private owed = 0;
  private owedGoal = 0;
  private nut: number;
  private lostOutput = 0;
  private missed = 0;
  private extra = 0;

  /** @throws RangeError for a spec that `checkTrace` refuses */
  constructor(readonly spec: TraceSpec) {
    const refusal = checkTrace(spec);
    if (refusal) throw new RangeError(`${refusal.code} ${refusal.field}`);
    const { job, with: on } = spec;
    const countsOf = (mm: number): number => Math.round((mm / job.lead) * job.counts);
    this.first = countsOf(job.runIn);
    this.total = this.first + countsOf(job.length);
    this.perSector = Math.max(1, Math.round(job.counts / SECTORS));
    this.source = stepSource(on.format ?? { kind: 'fraction', ...spec.exact });
    this.chance = new Chance(spec.seed);
    this.recorder = new Recorder([job.engagement, ...OVER_MM].map((mm) => mm / job.lead));
    this.nextTick = on.timing && on.timing.period > 0 ? 0 : Infinity;
    this.nextMissed = this.chance.gap((on.miscounts?.missed ?? 0) / 1e6);
    this.nextExtra = this.chance.gap((on.miscounts?.extra ?? 0) / 1e6);
    const edgeRate = (2 * job.rpm * job.counts) / 60;
    const ring = on.timing?.latency ? Math.ceil(on.timing.latency * edgeRate * 2) + 16 : 1;
    this.dueAt = new Float64Array(ring);
    this.dueSteps = new Float64Array(ring);
    const a = on.output?.acceleration;
    this.rate = on.output ? (a ? Math.min(on.output.rate, Math.sqrt(2 * a)) : on.output.rate) : Infinity;
    const motion = startOf(spec);
    this.place = motion.place;
    this.speed = motion.speed;
    this.field = motion.speed;
    const play = +(on.backlash?.play ?? 0);
    this.nut = on.backlash && !on.backlash.takenUp ? play : 0;
  }

  /** Runs at most so many counts more. True when the thread is at its end. */
  advance(most: number): boolean {
    // Small integers throughout: the engine then keeps the count in a register.
    const end = Math.min(this.total, this.done + most) | 0;
    const total = this.total | 0;
    const { spec, source, chance, recorder, dueAt, dueSteps } = this;
    const first = this.first | 0;
    const perSector = this.perSector | 0;
    const { job, with: on } = spec;
    const ring = dueAt.length;
    const perCount = +(job.lead / job.counts);
    const perStep = +(job.screwLead / job.steps);

    const base = +((job.rpm * job.counts) / 60);
    const ripple = +(on.ripple?.amount ?? 0);
    const ramp = rampOf(spec, base);
    const rampEnd = wholeOf(ramp.counts);
    const rampFrom = +ramp.from2;
    const rampSlope = +ramp.slope;
    const dip = on.dip !== null;
    const dipDepth = +((on.dip?.drop ?? 0) * Math.E);
    const dipRate = +(on.dip ? 1 / on.dip.seconds : 0);

    const wheel = on.eccentricity;
    const off = +(wheel ? ((wheel.offset / wheel.radius) * job.counts) / (wheel.perRev * TWO_PI) : 0);
    const shift = +((on.phase?.degrees ?? 0) / 90);
    const missedP = +((on.miscounts?.missed ?? 0) / 1e6);
    const extraP = +((on.miscounts?.extra ?? 0) / 1e6);

    const period = +(on.timing?.period ?? 0);
    const latency = +(on.timing?.latency ?? 0);
    const ticking = period > 0;

    const output = on.output !== null;
    const top = +(on.output?.rate ?? Infinity);
    const acceleration = +(on.output?.acceleration ?? 0);
    const slowest = +(acceleration ? Math.min(top, Math.sqrt(2 * acceleration)) : top);
    const lose = on.output?.full === 'lose';

    const motor = on.motor;
    const follows = motor !== null;
    const stepper = motor?.kind === 'stepper';
    const w = +(!motor
      ? 0
      : motor.kind === 'stepper'
        ? TWO_PI * motor.natural
        : 2 * motor.damping * motor.gain);
    const w2 = +(w * w);
    const damping = +(2 * (motor?.damping ?? 0) * w);
    const hardest = +(motor?.kind === 'servo' ? (motor.acceleration ?? Infinity) : Infinity);
    const fullStep = +(motor?.kind === 'stepper' ? motor.fullStep : 1);
    const electrical = +(Math.PI / (2 * fullStep));
    const pull = +(w2 / electrical);
    const corner = +(motor?.kind === 'stepper' ? (motor.corner ?? Infinity) : Infinity);
    const load = +(motor?.kind === 'stepper' ? motor.load * pull : 0);

    const cyclic = +(on.screw?.cyclic ?? 0);
    const travel = perStep * (1 + (on.screw?.per300 ?? 0) / 300);
    const play = on.backlash?.play ?? 0;

    // Three hands that turn with every count, by sin(x + t) = 2 cos t · sin x − sin(x − t); set anew for each sector, so
    // that their rounding can't add up.
    const from = this.done | 0;
    const turnA = ((wheel?.perRev ?? 0) * TWO_PI) / job.counts;
    const turnB = ((on.ripple?.perRev ?? 0) * TWO_PI) / job.counts;
    const turnC = (job.lead / job.screwLead) * (TWO_PI / job.counts);
    const a2Cos = 2 * Math.cos(turnA);
    const b2Cos = 2 * Math.cos(turnB);
    const c2Cos = 2 * Math.cos(turnC);

    // The plus signs tell the engine that these are numbers: without, it makes an object of each at every count.
    let time = +this.time;
    let lastAngle = +this.lastAngle;
    let nextTick = +this.nextTick;
    let nextMissed = +this.nextMissed;
    let nextExtra = +this.nextExtra;
    let nextMiscount = wholeOf(Math.min(nextMissed, nextExtra));
    let dipA = +this.dipA;
    let dipB = +this.dipB;
    let due = +this.due;
    let sent = +this.sent;
    let queue = +this.queue;
    let rate = +this.rate;
    let place = +this.place;
    let speed = +this.speed;
    let fallen = +this.fallen;
    let nut = +this.nut;
    let lostOutput = +this.lostOutput;
    let field = +this.field;
    let lastGoal = +this.lastGoal;
    let owed = +this.owed;
    let owedGoal = +this.owedGoal;
    let pending = this.pending | 0;
    let ringHead = this.ringHead | 0;
    let ringTail = this.ringTail | 0;
    /** When the next command on its way takes effect. */
    let nextDue = ringHead === ringTail ? Infinity : +(dueAt[ringHead] as number);
    let inStep = this.inStep;

    let k = from | 0;
    while (k < end) {
      const measured = k >= first;
      const stop =
        (measured
          ? Math.min(total, first + (Math.floor((k - first) / perSector) + 1) * perSector)
          : Math.min(end, first)) | 0;
      let low = Infinity;
      let high = -Infinity;
      let sum = 0;
      const began = k;
      // Numbers too small for the usual form would slow every count to come.
      if (dipA < 1e-12) dipA = 0;
      if (dipB < 1e-12) dipB = 0;
      const dipping = dip && measured && dipA + dipB > 0;
      let odd = k & 1 ? shift : 0;
      let a0 = Math.sin(turnA * k);
      let a1 = Math.sin(turnA * (k - 1));
      let b0 = Math.sin(turnB * k);
      let b1 = Math.sin(turnB * (k - 1));
      let c0 = Math.sin(turnC * k);
      let c1 = Math.sin(turnC * (k - 1));
      while (k < stop) {
        k = (k + 1) | 0;
        const a = a2Cos * a0 - a1;
        a1 = a0;
        a0 = a;
        const b = b2Cos * b0 - b1;
        b1 = b0;
        b0 = b;
        const c = c2Cos * c0 - c1;
        c1 = c0;
        c0 = c;

        // Spindle: where it truly stands when this edge passes, and how long it took.
        odd = shift - odd;
        const angle = k - off * a + odd;
        let pace = base * (1 + ripple * b);
        if (k < rampEnd) pace *= Math.sqrt(rampFrom + rampSlope * k);
        if (dipping) pace *= 1 - dipDepth * dipB;
        const gone = angle - lastAngle;
        const dt = (gone > 1e-9 ? gone : 1e-9) / pace;
        lastAngle = angle;
        time += dt;
        if (dipping) {
          // Exponentials by their series would be no truer: a count is short against the dip.
          let x = dt * dipRate;
          if (x > 0.5) x = 0.5;
          dipB += (dipA - dipB) * x;
          dipA -= dipA * x;
        }

        // Controller: what has become due within this interval, and for which part of it.
        let come = 0;
        let part = 1;
        if (nextTick <= time) {
          come = source.step(pending);
          pending = 0;
          part = (time - nextTick) / dt;
          if (part > 1) part = 1;
          if (latency > 0) {
            dueAt[ringTail] = nextTick + latency;
            dueSteps[ringTail] = come;
            if (nextDue === Infinity) nextDue = nextTick + latency;
            ringTail = ringTail + 1 === ring ? 0 : ringTail + 1;
            come = 0;
          }
          nextTick += period;
          if (nextTick <= time) nextTick += Math.ceil((time - nextTick) / period) * period;
        }
        if (nextDue <= time) {
          do {
            come += dueSteps[ringHead] as number;
            part = (time - nextDue) / dt;
            ringHead = ringHead + 1 === ring ? 0 : ringHead + 1;
            nextDue = ringHead === ringTail ? Infinity : +(dueAt[ringHead] as number);
          } while (nextDue <= time);
          if (part > 1) part = 1;
        }
        due += come;

        // Output: steps wait for one another, each as long as the rate asks.
        const before = sent;
        if (output) {
          if (come > 0) {
            if (lose && queue > 1e-9) {
              const gap = Math.ceil(queue - 1e-9);
              lostOutput += gap;
              queue = 0;
            }
            queue += come;
          }
          const drained = queue - rate * dt;
          if (acceleration > 0) {
            const changed = rate + (drained > 0 ? acceleration : -acceleration) * dt;
            rate = changed > top ? top : changed < slowest ? slowest : changed;
          }
          queue = drained > 0 ? drained : 0;
          sent = due - lostOutput - Math.ceil(queue - 1e-9);
          part = 0.5;
        } else sent = due;

        // Motor.
        if (follows) {
          owed += dt;
          owedGoal += (before + (sent - before) * part) * dt;
        }
        // Counts come much faster than a motor swings: several are taken together, and it coasts in between.
        if (owed * w > COARSEST) {
          const mean = owedGoal / owed;
          const moved = mean - lastGoal;
          lastGoal = mean;
          // The push acts about the moment at which the place is known: halfway to the mean before.
          const goal = mean - fallen - (owed * w > FINEST ? 0 : moved / 2);
          let parts = 1;
          let h = owed;
          if (owed * w > FINEST) {
            parts = Math.ceil((owed * w) / FINEST);
            h = owed / parts;
          }
          if (stepper) {
            let aim = goal;
            field = parts > 1 ? moved / owed : field + w * (moved - field * owed);
            for (let n = 0; n < parts; n += 1) {
              let behind = aim - place;
              if (behind > 2 * fullStep || behind < -2 * fullStep) {
                // Past half an electrical cycle the rotor is drawn to the next pole, a whole cycle away.
                const cycles = Math.round(behind / (4 * fullStep)) * 4 * fullStep;
                fallen += cycles;
                aim -= cycles;
                behind -= cycles;
                inStep = false;
              }
              // In step it is damped about the field's speed; fallen out of it, the field only shakes it.
              if (!inStep && speed > 0.9 * field && speed < 1.1 * field) inStep = true;
              const swing = inStep ? speed - field : speed;
              const left = speed > corner || speed < -corner ? corner / (speed < 0 ? -speed : speed) : 1;
              speed += (pull * left * sine(electrical * behind) - load - damping * swing) * h;
              place += speed * h;
            }
          } else {
            for (let n = 0; n < parts; n += 1) {
              let force = w2 * (goal - place) - damping * speed;
              if (force > hardest) force = hardest;
              else if (force < -hardest) force = -hardest;
              speed += force * h;
              place += speed * h;
            }
          }
          owed = 0;
          owedGoal = 0;
        }

        // This edge is counted, or missed, or seen twice.
        let seen = 1;
        if (k >= nextMiscount) {
          if (k >= nextMissed) {
            seen = 0;
            this.missed += 1;
            nextMissed = k + chance.gap(missedP);
          }
          if (k >= nextExtra) {
            seen += 1;
            this.extra += 1;
            nextExtra = k + chance.gap(extraP);
          }
          nextMiscount = wholeOf(Math.min(nextMissed, nextExtra));
        }
        if (ticking) pending += seen;
        else {
          const steps = source.step(seen);
          if (latency > 0) {
            if (steps !== 0) {
              dueAt[ringTail] = time + latency;
              dueSteps[ringTail] = steps;
              if (nextDue === Infinity) nextDue = time + latency;
              ringTail = ringTail + 1 === ring ? 0 : ringTail + 1;
            }
          } else if (output) {
            if (lose && queue > 1e-9 && steps > 0) {
              lostOutput += Math.ceil(queue - 1e-9);
              queue = 0;
            }
            queue += steps;
            due += steps;
          } else {
            due += steps;
            sent = due;
          }
        }

        // Screw and nut.
        const screw = (follows ? place + speed * owed : sent) * travel + cyclic * c;
        if (nut < screw) nut = screw;
        else if (nut > screw + play) nut = screw + play;
        const error = nut - angle * perCount;
        if (error < low) low = error;
        if (error > high) high = error;
        sum += error;
      }
      if (measured) recorder.sector(low, high, sum / (k - began));
    }
    this.done = k;
    this.time = time;
    this.lastAngle = lastAngle;
    this.nextTick = nextTick;
    this.nextMissed = nextMissed;
    this.nextExtra = nextExtra;
    this.dipA = dipA;
    this.dipB = dipB;
    this.due = due;
    this.sent = sent;
    this.queue = queue;
    this.rate = rate;
    this.place = place;
    this.speed = speed;
    this.fallen = fallen;
    this.nut = nut;
    this.lostOutput = lostOutput;
    this.field = field;
    this.lastGoal = lastGoal;
    this.owed = owed;
    this.owedGoal = owedGoal;
    this.pending = pending;
    this.ringHead = ringHead;
    this.ringTail = ringTail;
    this.inStep = inStep;
    return this.done >= this.total;
  }

  /** Steps sent to the motor so far. */
  get steps(): number {
    return this.sent;
  }

  result(): TraceResult {
    const { recorder, spec } = this;
    const perStep = spec.job.screwLead / spec.job.steps;
    const [nut, over60, over300] = recorder.windows;
    const reached = spec.with.motor ? this.place + this.speed * this.owed : this.sent;
    return {
      on: namesOn(spec.with),
      counts: this.done,
      turns: recorder.turns,
      sector: (this.perSector * spec.job.lead) / spec.job.counts,
      buckets: recorder.buckets(),
      zero: recorder.firstTurn ?? 0,
      spread: recorder.turns > 0 ? recorder.high - recorder.low : 0,
      cumulative: recorder.lastTurn - (recorder.firstTurn ?? 0),
      between: Math.max(0, recorder.turns - 1),
      drunkenness: recorder.drunken,
      drunkenAt: recorder.drunkenAt,
      nut: nut?.worst ?? 0,
      nutAt: nut?.at ?? 0,
      over60: over60?.worst ?? 0,
      over300: over300?.worst ?? 0,
      lag: (this.due - this.lostOutput - this.fallen - reached) * perStep,
      lost: { output: this.lostOutput, motor: this.fallen, missed: this.missed, extra: this.extra },
    };
  }
}

/**
 * The motor begins settled at the speed at which the spindle begins: behind its steps by the lag of that speed, and a
 * loaded stepper by the arc that holds its load. From rest (`ramp.from` 0) it begins at rest.
 */
const startOf = ({ job, with: on }: TraceSpec): { place: number; speed: number } => {
  if (!on.motor) return { place: 0, speed: 0 };
  const speed = ((on.ramp?.from ?? 1) * job.rpm * job.lead * job.steps) / (60 * job.screwLead);
  if (on.motor.kind === 'servo') return { place: -speed / on.motor.gain, speed };
  return { place: (-Math.asin(on.motor.load) * 2 * on.motor.fullStep) / Math.PI, speed };
};

/** Even acceleration: the square of the speed grows evenly with the angle turned. */
const rampOf = (spec: TraceSpec, base: number): { counts: number; from2: number; slope: number } => {
  const ramp = spec.with.ramp;
  if (!ramp) return { counts: 0, from2: 1, slope: 0 };
  const counts = (base * (1 + ramp.from) * ramp.seconds) / 2;
  const from2 = ramp.from * ramp.from;
  return { counts, from2, slope: (1 - from2) / counts };
};

/** Runs to the end. For short traces; long ones are run in pieces. */
export const runTrace = (
  spec: TraceSpec,
): { ok: true; result: TraceResult } | { ok: false; refusal: TraceRefusal } => {
  const refusal = checkTrace(spec);
  if (refusal) return { ok: false, refusal };
  const trace = new Trace(spec);
  trace.advance(Infinity);
  return { ok: true, result: trace.result() };
};
