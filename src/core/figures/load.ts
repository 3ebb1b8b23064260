import * as drive from '../drive';
import { readCurve } from '../drive/curve';
import * as motor from '../drive/torque';
import { whipSpeed } from '../drive/whip';
import { compare, div, leadHigh, mul, ratio, sub, toNumber, type Ratio } from '../quantity';
import type { Basis, LimitAsk } from './basis';
import type { LimitBasis } from './limit';
import { MARGIN_ELECTRONIC, MARGIN_NONE, MARGIN_PULL_OUT } from './standing';

/** Limits of the drive's load and timing. All supporting: a ramp test at this lead and speed may answer for them. */

/** Edges per line of a counter that counts both edges of both channels; only there does their phase matter. */
const BOTH_CHANNELS = 4;

/** Whether the counter is known to take fewer edges than both of both channels. */
const takesFewer = (ask: LimitAsk): boolean => {
  const edges = ask.input('machine.edgesPerLine');
  return edges !== null && compare(edges.value, BOTH_CHANNELS) !== 0;
};

/**
 * How much shorter than the average the shortest gap of two edges is: 90 ÷ (90 − φ) where a counter takes both edges of
 * both channels, 1 where it takes fewer. null: not known.
 */
export const phaseCrowding = (b: Basis, ask: LimitAsk): Ratio | null => {
  if (takesFewer(ask)) return ratio(1);
  const off = b.stated('phase', 'machine.encoderPhaseError');
  return ask.input('machine.edgesPerLine') && off ? div(90, sub(90, off)) : null;
};

/**
 * The shortest gap between two edges, as the rate of edges that it would be: channels that are φ out of their 90° have
 * an edge (90 − φ)/360 of a period after the other.
 */
export const edgeGap = (b: Basis, ask: LimitAsk): LimitBasis | null => {
  if (takesFewer(ask)) return null;
  const lines = b.stated('lines', 'machine.encoderLines');
  const spindle = b.stated('spindle', 'machine.spindlePulley');
  const encoder = b.stated('encoder', 'machine.encoderPulley');
  const crowd = phaseCrowding(b, ask);
  b.stated('edges', 'machine.edgesPerLine');
  const channel = lines && spindle && encoder ? drive.channelPerRpm({ lines, spindle, encoder }) : null;
  const per = channel && crowd ? mul(channel, BOTH_CHANNELS, crowd) : null;
  const limit = b.stated('limit', 'machine.counterMaxEdges');
  return b.make('edge-gap', 'supporting', 'drive', 'edges/s', per, limit, MARGIN_ELECTRONIC, 'edge-gap');
};

/** Microseconds in a second. */
const MICRO = 1_000_000;

/**
 * After a reversal the direction must stand before the first step. At rest the spindle reverses at every edge, so this
 * has nothing to do with the speed: the controller waits long enough, or it doesn't.
 */
export const direction = (b: Basis): LimitBasis => {
  const needs = b.number('setup', 'machine.directionSetup');
  const waits = b.number('wait', 'machine.directionWait');
  const known = needs !== null && waits !== null;
  const course = known ? { demand: () => needs * MICRO, bears: () => waits * MICRO } : null;
  return b.along('direction', 'us', course, MARGIN_NONE, 'direction');
};

/** Pull-out torque of a stepper at its own speed, Nm; null: something is missing. */
const stepper = (b: Basis, ask: LimitAsk): ((motorRpm: number) => number) | null => {
  const written = ask.input('machine.torqueCurve');
  const curve = written === null ? null : readCurve(written);
  if (curve?.ok) return (rpm) => motor.onCurve(curve.value, rpm);
  const holding = b.number('torque', 'machine.motorTorque');
  const volts = b.number('volts', 'machine.motorSupply');
  const amperes = b.number('amperes', 'machine.motorCurrent');
  const inductance = b.number('inductance', 'machine.motorInductance');
  // Where nothing of the four is known the curve would do as well, and more simply.
  if ([holding, volts, amperes, inductance].every((x) => x === null)) b.missing.push('machine.torqueCurve');
  const steps = b.number('fullSteps', 'machine.fullSteps');
  if (holding === null || volts === null || amperes === null || inductance === null || steps === null)
    return null;
  const corner = motor.cornerSpeed(volts, inductance, amperes, steps);
  return (rpm) => motor.pullOut(holding, corner, rpm);
};

interface Asked {
  readonly load: number;
  readonly inertia: number;
  /** Motor revs per spindle rev. */
  readonly gearing: number;
  readonly time: number;
}

/** What the load asks of the motor; the masses are set moving in the time the spindle takes. */
const asked = (b: Basis): Asked | null => {
  const lead = b.lead();
  const screw = b.ratio('screw', 'screwLead', 'mm');
  const revs = b.ratio('revs', 'motorPerScrew', 'times');
  const cutting = b.number('force', 'machine.cuttingForce');
  const mass = b.number('mass', 'machine.carriageMass');
  const friction = b.number('friction', 'machine.slideFriction');
  const efficiency = b.number('efficiency', 'machine.screwEfficiency');
  const diameter = b.number('diameter', 'machine.screwDiameter');
  const length = b.number('length', 'machine.screwLength');
  const rotor = b.number('rotor', 'machine.rotorInertia');
  const time = b.number('ramp', 'machine.rampTime');
  if (!lead || !screw || !revs || b.missing.length > 0) return null;
  if (cutting === null || mass === null || friction === null || efficiency === null) return null;
  if (diameter === null || length === null || rotor === null || time === null) return null;
  const chain = { screwLead: toNumber(screw), motorPerScrew: toNumber(revs) };
  return {
    load: motor.loadTorque({ cutting, mass, friction, efficiency, ...chain }),
    inertia: motor.inertiaAtMotor({ mass, rotor, screw: { diameter, length }, ...chain }),
    gearing: toNumber(div(mul(leadHigh(lead), revs), screw)),
    time,
  };
};

const total = ({ load, inertia, gearing, time }: Asked, rpm: number): number =>
  load + motor.speedUpTorque(inertia, rpm * gearing, time);

/**
 * Torque: the load through the screw and the masses that follow the spindle, against what the motor has at that speed.
 * A servo bears the load for ever by its rated torque and load and masses together by its peak; the nearer of the
 * two counts.
 */
export const torque = (b: Basis, ask: LimitAsk): LimitBasis => {
  const kind = b.chosen('machine.motorKind');
  const needs = asked(b);
  // What the motor lacks can't be named before it is known which kind it is.
  if (kind === null) return b.along('torque', 'Nm', null, MARGIN_NONE, 'torque');
  if (kind === 'servo') {
    const rated = b.number('rated', 'machine.motorTorque');
    const peak = b.number('peak', 'machine.motorPeak');
    const course =
      needs && rated !== null && peak !== null
        ? {
            // Both as shares of the rated torque, so that the larger of them is the one that counts.
            demand: (rpm: number) => Math.max(needs.load, (total(needs, rpm) * rated) / peak),
            bears: () => rated,
          }
        : null;
    return b.along('torque', 'Nm', course, MARGIN_ELECTRONIC, 'torque');
  }
  const has = stepper(b, ask);
  const course =
    needs && has
      ? { demand: (rpm: number) => total(needs, rpm), bears: (rpm: number) => has(rpm * needs.gearing) }
      : null;
  return b.along('torque', 'Nm', course, MARGIN_PULL_OUT, 'torque');
};

/** Careful share of the crest diameter that a leadscrew's root has; common practice. */
const ROOT_SHARE = 0.8;

/** The leadscrew begins to whip at a speed of its own. */
export const whip = (b: Basis): LimitBasis => {
  const lead = b.lead();
  const screw = b.ratio('screw', 'screwLead', 'mm');
  const diameter = b.number('diameter', 'machine.screwDiameter');
  const length = b.number('length', 'machine.screwLength');
  const ends = b.chosen('machine.screwEnds');
  const per = lead && screw ? div(leadHigh(lead), screw) : null;
  // The root is what bends; of a leadscrew it is taken as eight tenths of what a caliper reads over the crests.
  const limit =
    diameter !== null && length !== null && ends
      ? ratio(BigInt(Math.floor(whipSpeed(ROOT_SHARE * diameter, length, ends))))
      : null;
  return b.make('whip', 'supporting', 'drive', 'rpm', per, limit, MARGIN_ELECTRONIC, 'whip');
};
