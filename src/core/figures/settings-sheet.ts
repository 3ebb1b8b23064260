import { choosePulses, electronicGear, FINE_STEP, mostPulses, type PulseChoice } from '../drive/servo';
import { pulseRate } from '../drive';
import type { Held } from '../drive';
import type { Inputs } from '../context';
import type { Job } from '../job';
import { compare, div, inBase, min, mul, ratio, type Lead, type Ratio } from '../quantity';
import type { Figure } from './define';
import type { RatioHeld } from './ids';
import { figuresFor } from './registry';
import { MARGIN_ELECTRONIC } from './standing';

/** What to enter in the controller for one thread. */
export interface SheetRow {
  readonly lead: Lead | null;
  readonly held: Figure<RatioHeld>;
}

/** The row of a thread on this machine, judged strictly: a sheet is for every use. */
export const sheetRow = (inputs: Inputs, thread: Job['thread'], starts: number): SheetRow => {
  const sheet = figuresFor({ ...inputs, job: { ...inputs.job, thread, starts, classId: null, use: null } });
  return { lead: sheet.get('lead').value, held: sheet.get('ratioHeld') };
};

/** What the step input, or the controller, bears, Hz: the least of what is known; null where nothing is. */
const rateOf = ({ machine: m }: Inputs): Ratio | null => {
  const known = [
    m.stepInputMax && inBase(m.stepInputMax),
    m.pulseHigh && m.pulseLow && pulseRate(inBase(m.pulseHigh), inBase(m.pulseLow)),
    m.controllerMaxSteps && inBase(m.controllerMaxSteps),
  ].filter((x) => x !== null);
  const [first, ...rest] = known;
  return first ? min(first, ...rest) : null;
};

export interface ServoSheet {
  readonly pulses: bigint;
  /** null where encoder counts or the gear's largest number aren't known, or nothing fits. */
  readonly gear: Held | null;
  /** Pulse rate at the motor's highest speed, and what is borne, Hz; null where not known. */
  readonly rate: Ratio | null;
  readonly bears: Ratio | null;
  /** One step on the carriage, mm, and whether that is fine enough. */
  readonly step: Ratio | null;
  readonly fine: boolean | null;
  /** A number of pulses that does better, where what is set is too fast or too coarse; null where none is known. */
  readonly better: PulseChoice | null;
}

/** The servo drive's own settings; null for a stepper, or where the pulses per rev aren't known. */
export const servoSheet = (inputs: Inputs): ServoSheet | null => {
  const m = inputs.machine;
  if (m.motorKind !== 'servo' || !m.servoPulses) return null;
  const sheet = figuresFor(inputs);
  const pulses = m.servoPulses.value.n;
  const encoder = m.servoEncoder?.value.n ?? null;
  const most = m.servoGearMax?.value.n ?? null;
  const rpm = m.motorMaxRpm?.value ?? null;
  const bears = rateOf(inputs);
  const rate = rpm && div(mul(rpm, pulses), 60);
  const step = sheet.get('stepOnCarriage').value;
  const fine = step && compare(step, FINE_STEP) <= 0;
  const slow = rate && bears && compare(rate, mul(bears, MARGIN_ELECTRONIC)) <= 0;
  const known = encoder !== null && most !== null;
  const better =
    known && rpm && bears && step && !(slow && fine)
      ? choosePulses({
          encoder,
          most,
          top: mostPulses(bears, MARGIN_ELECTRONIC, rpm),
          perMotorRev: mul(step, ratio(pulses)),
        })
      : null;
  return {
    pulses,
    gear: known ? electronicGear(encoder, pulses, most) : null,
    rate,
    bears,
    step,
    fine,
    better,
  };
};
