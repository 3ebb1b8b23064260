/** How the ends of a screw are held: clamped in two bearings, resting in one, or free. */
export const SCREW_ENDS = ['held-held', 'clamped-held', 'clamped-clamped', 'clamped-free'] as const;
export type ScrewEnds = (typeof SCREW_ENDS)[number];

/** First eigenvalue λ of a bending beam for its ends: roots of cos λ cosh λ = ±1 and tan λ = tanh λ (beam theory). */
const LAMBDA: Readonly<Record<ScrewEnds, number>> = {
  'held-held': Math.PI,
  'clamped-held': 3.926602,
  'clamped-clamped': 4.730041,
  'clamped-free': 1.875104,
};

/** Young's modulus and density of steel, N/m² and kg/m³: handbook figures. */
const STEEL = { modulus: 206e9, density: 7850 };

/**
 * Speed at which a round steel screw begins to whip, rpm: λ²/(2π ℓ²) · √(E I / ρ A) · 60, with √(I/A) = d/4 (bending
 * of beams; handbooks of machine design). The half-nut steadies the screw where it stands, so the whole length
 * between bearings is on the careful side.
 * @param root diameter at the root of the screw, mm, above 0
 * @param free length between bearings, mm, above 0
 */
export const whipSpeed = (root: number, free: number, ends: ScrewEnds): number => {
  const wave = Math.sqrt(STEEL.modulus / STEEL.density);
  const [d, l] = [root / 1000, free / 1000];
  return ((60 * LAMBDA[ends] ** 2) / (2 * Math.PI * l ** 2)) * wave * (d / 4);
};
