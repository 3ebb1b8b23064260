/** Torque asked of the leadscrew's motor and what it has. SI units within: N, m, kg, s, Nm, rad/s. */

/** Acceleration of free fall, m/s², standard value (ISO 80000-3). */
const G = 9.80665;
const STEEL_DENSITY = 7850;
/** Efficiency of a toothed belt or a pair of gears: common practice. */
const BELT = 0.95;

export interface Load {
  /** Cutting force, N; the same is reckoned along the carriage, on the careful side. */
  readonly cutting: number;
  /** Carriage with what stands on it, kg. */
  readonly mass: number;
  /** Coefficient of friction of the ways. */
  readonly friction: number;
  /** Efficiency of screw and nut, 0 to 1. */
  readonly efficiency: number;
  /** Lead of the screw, mm. */
  readonly screwLead: number;
  /** Motor revs per screw rev. */
  readonly motorPerScrew: number;
}

/** Thrust on the carriage, N: F + μ (m g + F). Weight and cutting force press on the ways. */
export const thrust = ({ cutting, mass, friction }: Load): number =>
  cutting + friction * (mass * G + cutting);

/** Torque at the screw for a thrust, Nm: F · Ls ÷ (2π η) (power balance of a screw). */
export const screwTorque = (force: number, screwLead: number, efficiency: number): number =>
  (force * screwLead) / 1000 / (2 * Math.PI * efficiency);

/** Torque at the motor for a load, Nm: the screw's ÷ (i · 0.95), or as it is where motor and screw are one. */
export const loadTorque = (load: Load): number => {
  const at = screwTorque(thrust(load), load.screwLead, load.efficiency);
  return load.motorPerScrew === 1 ? at : at / (load.motorPerScrew * BELT);
};

export interface Masses {
  /** Carriage, kg. */
  readonly mass: number;
  /** Diameter and length of the screw, mm. */
  readonly screw: { readonly diameter: number; readonly length: number };
  /** Rotor of the motor, kg m². */
  readonly rotor: number;
  readonly screwLead: number;
  readonly motorPerScrew: number;
}

/** Inertia at the motor, kg m²: rotor + (m (Ls/2π)² + π ρ ℓ d⁴/32) ÷ i². Pulleys are left out. */
export const inertiaAtMotor = ({ mass, screw, rotor, screwLead, motorPerScrew }: Masses): number => {
  const lead = screwLead / 1000;
  const [d, l] = [screw.diameter / 1000, screw.length / 1000];
  const carriage = mass * (lead / (2 * Math.PI)) ** 2;
  const bar = (Math.PI * STEEL_DENSITY * l * d ** 4) / 32;
  return rotor + (carriage + bar) / motorPerScrew ** 2;
};

/** Torque to bring an inertia to a speed within a time, Nm: J · 2π n ÷ (60 t). @param rpm of the motor */
export const speedUpTorque = (inertia: number, rpm: number, seconds: number): number =>
  (inertia * 2 * Math.PI * rpm) / (60 * seconds);

/**
 * Highest speed at which a stepper's phase current can still reverse fully, rpm: 60 V ÷ (2 L I N), N full steps per
 * rev. Beyond it torque falls as 1/n (stepper application practice).
 * @param inductance H
 */
export const cornerSpeed = (volts: number, inductance: number, amperes: number, steps: number): number =>
  (60 * volts) / (2 * inductance * amperes * steps);

/** A point of a maker's pull-out curve. */
export interface CurvePoint {
  readonly rpm: number;
  readonly torque: number;
}

/** Torque of a curve at a speed, straight between its points; below the first its own, beyond the last none. */
export const onCurve = (points: readonly CurvePoint[], rpm: number): number => {
  const at = points.findIndex((p) => p.rpm >= rpm);
  if (at < 0) return 0;
  const [b, a] = [points[at] as CurvePoint, points[at - 1]];
  if (!a) return b.torque;
  return a.torque + ((b.torque - a.torque) * (rpm - a.rpm)) / (b.rpm - a.rpm);
};

/** Share of the holding torque that a stepper has turning slowly: common practice, 0.7. */
export const PULL_OUT_SHARE = 0.7;

/** Pull-out torque of a stepper from its holding torque and corner speed, Nm; rpm of the motor. */
export const pullOut = (holding: number, corner: number, rpm: number): number =>
  holding * PULL_OUT_SHARE * (rpm <= corner ? 1 : corner / rpm);
