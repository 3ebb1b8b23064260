import type { MaterialId, ToolMaterial } from '../job';

/** Stock that hardens where a tool rubs on it. Common practice. */
const HARDENS: readonly MaterialId[] = ['stainless'];
const hardens = (material: MaterialId): boolean => HARDENS.includes(material);

/** Usual passes at the last setting, with high-speed steel and else. */
const SPRING = { hss: 2, hardening: 1, other: 1 } as const;

/** Cutting speeds for threading, m/min. */
export interface SpeedRange {
  readonly min: number;
  readonly max: number;
}

/**
 * Single-point threading with high-speed steel, m/min: a quarter to a third of the turning speed. Teaching texts of the
 * trade and common practice.
 */
export const THREADING_SPEED: Readonly<Record<MaterialId, SpeedRange>> = {
  'free-cutting-steel': { min: 8, max: 12 },
  'mild-steel': { min: 8, max: 12 },
  'carbon-steel': { min: 5, max: 8 },
  'alloy-steel': { min: 5, max: 8 },
  stainless: { min: 4, max: 6 },
  'tool-steel': { min: 4, max: 5 },
  'grey-iron': { min: 6, max: 8 },
  brass: { min: 15, max: 25 },
  bronze: { min: 8, max: 12 },
  aluminium: { min: 20, max: 30 },
  plastic: { min: 15, max: 25 },
};
/** What carbide wants at the least, m/min; seldom reached by hand. Common practice. */
export const CARBIDE_FROM = 60;

/** n = 1000·v ÷ (π·d), rev/min. @param v m/min @param d diameter cut, mm, > 0 */
export const rpmAt = (v: number, d: number): number => (1000 * v) / (Math.PI * d);
/** v = π·d·n ÷ 1000, m/min. */
export const cuttingSpeed = (rpm: number, d: number): number => (Math.PI * d * rpm) / 1000;

/** Stock in which more and lighter passes are taken. */
const TOUGH: readonly MaterialId[] = ['alloy-steel', 'stainless', 'tool-steel'];
/** So many more for tough stock and for an internal thread's slender bar: the middle of 20 to 40 %. Common practice. */
const MORE = 1.3;

/** Pitch up to, mm; passes with high-speed steel on a small lathe (common practice), with carbide (insert makers). */
const USUAL: readonly (readonly [pitch: number, hss: number, carbide: number])[] = [
  [0.5, 7, 6],
  [0.75, 8, 7],
  [1, 9, 8],
  [1.25, 11, 9],
  [1.5, 12, 10],
  [1.75, 14, 12],
  [2, 15, 12],
  [2.5, 18, 14],
  [3, 21, 16],
  [3.5, 24, 18],
  [4, 27, 18],
  [5, 30, 24],
];
/** Coarser than that they grow with the pitch. Own choice. */
const PER_MM = { hss: 6, carbide: 5 } as const;

/** Usual number of passes. A tool that isn't known counts as high-speed steel, which takes more. @param pitch mm */
export const usualPasses = (q: {
  readonly pitch: number;
  readonly tool: ToolMaterial | null;
  readonly material: MaterialId | null;
  readonly side: 'external' | 'internal';
}): number => {
  const tool = q.tool ?? 'hss';
  const row = USUAL.find(([p]) => q.pitch <= p + 0.01);
  const base = row ? row[tool === 'hss' ? 1 : 2] : Math.ceil(q.pitch * PER_MM[tool]);
  const tough = q.material !== null && TOUGH.includes(q.material);
  return Math.min(120, Math.ceil(base * (tough ? MORE : 1) * (q.side === 'internal' ? MORE : 1) - 1e-9));
};

/** Least radial depth of a pass, mm: carbide by insert makers, high-speed steel, sharp, by common practice. */
export const LEAST_PASS: Readonly<Record<ToolMaterial, number>> = { carbide: 0.05, hss: 0.025 };

/**
 * Passes at the last setting: one to three with high-speed steel (common practice), none with carbide in stock that
 * work-hardens (insert makers advise against cuts of nothing), nor while that isn't known.
 */
export const usualSprings = (tool: ToolMaterial | null, material: MaterialId | null): number => {
  if (tool === 'hss') return material !== null && hardens(material) ? SPRING.hardening : SPRING.hss;
  return material === null || hardens(material) ? 0 : SPRING.other;
};

/** Whether a pass of nothing would only harden the work. */
export const springRubs = (tool: ToolMaterial | null, material: MaterialId | null): boolean =>
  tool === 'carbide' && material !== null && hardens(material);
