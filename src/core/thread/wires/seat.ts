import { bothAngles, degrees, radians, type HalfAngles } from '../groove';

/** What the wires need to know of a thread. Lengths in one unit, angles in degrees. */
export interface WireThread {
  readonly half: HalfAngles;
  readonly pitch: number;
  /** Lead: starts × pitch. */
  readonly lead: number;
}

export interface Seat {
  /** Distance of the wire's centre line from the thread's axis. */
  readonly centreRadius: number;
  /** Radius at which the wire touches the flanks. */
  readonly contactRadius: number;
  /** How far the wire leans from square to the axis, degrees. */
  readonly lean: number;
}

export const symmetricalHalf = (half: HalfAngles): number | null => {
  const { leading, trailing } = bothAngles(half);
  return leading === trailing && leading > 0 ? leading : null;
};

/**
 * A straight wire lying in the helical groove of a symmetrical thread, solved in space (own derivation).
 *
 * The flank on one side, in cylinder coordinates, is z = (L/2π) θ + w(ρ) with w(ρ) = P/4 + (ρ − E/2) tan A,
 * the half width of the groove at radius ρ. The wire's centre line passes square through a radius at
 * distance R, leaning by φ. A point of the flank is held off by half a wire when
 * R = ρ cos θ + √(W²/4 − q²), with q = z cos φ − ρ sin θ sin φ. The wire may not enter the metal, so R is the
 * largest of these over the flank; pressed in, it leans so that this is as small as can be. At that saddle
 * the slopes in ρ, θ and φ vanish. The one in ρ has a closed answer, q being linear in ρ; θ and φ follow by
 * Newton's method. The opposite flank is this one turned half round the radius, so it touches at the same time.
 */
const solve = (t: WireThread, half: number, pitchDiameter: number, wire: number): Seat | null => {
  // Everything in pitches, so that one step size suits all threads.
  const e = pitchDiameter / t.pitch / 2;
  const w = wire / t.pitch / 2;
  const h = t.lead / t.pitch / (2 * Math.PI);
  const tan = Math.tan(radians(half));

  const touch = (theta: number, phi: number): { rho: number; z: number; q: number; rise: number } => {
    const perRho = tan * Math.cos(phi) - Math.sin(theta) * Math.sin(phi);
    const c = Math.cos(theta) / perRho;
    const rise = w / Math.hypot(1, c);
    const q = rise * c;
    const rho = (q - (h * theta + 0.25 - e * tan) * Math.cos(phi)) / perRho;
    return { rho, z: h * theta + 0.25 + (rho - e) * tan, q, rise };
  };
  const slopes = (theta: number, phi: number): readonly [number, number] => {
    const { rho, z, q, rise } = touch(theta, phi);
    return [
      -rho * Math.sin(theta) - (q / rise) * (h * Math.cos(phi) - rho * Math.cos(theta) * Math.sin(phi)),
      z * Math.sin(phi) + rho * Math.sin(theta) * Math.cos(phi),
    ];
  };

  let phi = Math.atan(h / e);
  let theta = (-w * Math.cos(radians(half)) * Math.sin(phi)) / e;
  for (let i = 0; i < 30; i += 1) {
    const d = 1e-6;
    const [g, k] = slopes(theta, phi);
    const [gt, kt] = slopes(theta + d, phi);
    const [gp, kp] = slopes(theta, phi + d);
    const [a, b, c, e2] = [(gt - g) / d, (gp - g) / d, (kt - k) / d, (kp - k) / d];
    const det = a * e2 - b * c;
    const [dTheta, dPhi] = [(g * e2 - k * b) / det, (k * a - g * c) / det];
    theta -= dTheta;
    phi -= dPhi;
    const size = Math.abs(dTheta) + Math.abs(dPhi);
    if (!Number.isFinite(size)) return null;
    if (size < 1e-12) {
      const { rho, rise } = touch(theta, phi);
      const centre = rho * Math.cos(theta) + rise;
      return { centreRadius: centre * t.pitch, contactRadius: rho * t.pitch, lean: degrees(phi) };
    }
  }
  return null;
};

/** Where a wire lies; null for a form that is not symmetrical, bad input, or a wire that finds no seat. */
export const wireSeat = (t: WireThread, pitchDiameter: number, wire: number): Seat | null => {
  const half = symmetricalHalf(t.half);
  if (half === null || half >= 80) return null;
  if (!(t.pitch > 0 && t.lead > 0 && pitchDiameter > 0 && wire > 0)) return null;
  const seat = solve(t, half, pitchDiameter, wire);
  return seat && seat.contactRadius > 0 ? seat : null;
};
