import { MOST_PART } from './format';
import type { TraceSpec } from './spec';

/** Why the model isn't run. `field` names the figure. */
export interface TraceRefusal {
  readonly code: 'out-of-range' | 'too-many-counts' | 'too-short';
  readonly field: string;
}

/** Counts of one run at most: a minute or so on a phone. */
export const MOST_COUNTS = 200_000_000;
/** Commands on their way at most. */
const MOST_LATE = 1_000_000;

type Bound = readonly [field: string, value: number | null | undefined, low: number, high: number];

/** Figures outside what the model is made for are refused: nothing is extrapolated. */
export const checkTrace = (spec: TraceSpec): TraceRefusal | null => {
  const { job, exact, with: on } = spec;
  const stepper = on.motor?.kind === 'stepper' ? on.motor : null;
  const servo = on.motor?.kind === 'servo' ? on.motor : null;
  const bounds: readonly Bound[] = [
    ['lead', job.lead, 1e-3, 1e3],
    ['counts', job.counts, 4, 1e7],
    ['steps', job.steps, 1, 1e8],
    ['screwLead', job.screwLead, 1e-2, 1e3],
    ['rpm', job.rpm, 0.1, 1e5],
    ['length', job.length, 1e-3, 1e5],
    ['runIn', job.runIn, 0, 1e4],
    ['engagement', job.engagement, 1e-3, 1e4],
    ['exact.top', exact.top, 1, MOST_PART],
    ['exact.bottom', exact.bottom, 1, MOST_PART],
    ['ripple.amount', on.ripple?.amount, 0, 0.5],
    ['ripple.perRev', on.ripple?.perRev, 1e-3, 1e3],
    ['ramp.from', on.ramp?.from, 0, 10],
    ['ramp.seconds', on.ramp?.seconds, 1e-3, 60],
    ['dip.drop', on.dip?.drop, 0, 0.9],
    ['dip.seconds', on.dip?.seconds, 1e-3, 60],
    ['eccentricity.offset', on.eccentricity?.offset, 0, 5],
    ['eccentricity.radius', on.eccentricity?.radius, 1, 1e3],
    ['eccentricity.perRev', on.eccentricity?.perRev, 1e-2, 100],
    ['phase.degrees', on.phase?.degrees, -89, 89],
    ['miscounts.missed', on.miscounts?.missed, 0, 1e5],
    ['miscounts.extra', on.miscounts?.extra, 0, 1e5],
    ['timing.period', on.timing?.period, 0, 1],
    ['timing.latency', on.timing?.latency, 0, 1],
    ['output.rate', on.output?.rate, 1, 1e9],
    ['output.acceleration', on.output?.acceleration, 1e-3, 1e12],
    ['motor.gain', servo?.gain, 0.1, 1e4],
    ['motor.damping', on.motor?.damping, stepper ? 0 : 0.1, 10],
    ['motor.acceleration', servo?.acceleration, 1, 1e12],
    ['motor.natural', stepper?.natural, 1, 2000],
    ['motor.fullStep', stepper?.fullStep, 1, 1e4],
    ['motor.corner', stepper?.corner, 1, 1e9],
    ['motor.load', stepper?.load, 0, 0.99],
    ['screw.cyclic', on.screw?.cyclic, 0, 1],
    ['screw.per300', on.screw?.per300, -10, 10],
    ['backlash.play', on.backlash?.play, 0, 10],
  ];
  // Written so that not-a-number is refused too.
  const bad = bounds.find(([, value, low, high]) => value != null && !(value >= low && value <= high));
  if (bad) return { code: 'out-of-range', field: bad[0] };
  const wheel = on.eccentricity;
  if (wheel && wheel.offset > wheel.radius / 4) return { code: 'out-of-range', field: 'eccentricity.offset' };
  if (job.length < job.lead) return { code: 'too-short', field: 'length' };
  if (((job.length + job.runIn) / job.lead) * job.counts > MOST_COUNTS)
    return { code: 'too-many-counts', field: 'length' };
  const late = ((on.timing?.latency ?? 0) * job.rpm * job.counts * 4) / 60;
  return late > MOST_LATE ? { code: 'out-of-range', field: 'timing.latency' } : null;
};
