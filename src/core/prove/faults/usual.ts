/**
 * Values met most often (common practice; none is a standard's list): what an entry may have been mistaken for.
 */
export const LINES = [
  100, 200, 250, 256, 300, 360, 400, 500, 512, 600, 720, 800, 1000, 1024, 1200, 1250, 2000, 2048, 2500, 3600,
  4000, 4096, 5000,
];
export const EDGES = [1, 2, 4];
export const FULL_STEPS = [48, 100, 200, 400];
export const MICROSTEPS = [1, 2, 4, 5, 8, 10, 16, 20, 25, 32, 40, 50, 64, 100, 125, 128, 200, 250, 256];
export const PULSES = [
  400, 500, 800, 1000, 1600, 2000, 2500, 3200, 4000, 4096, 5000, 6400, 8000, 10000, 12800, 20000,
];
export const STARTS = [1, 2, 3, 4];
export const PITCH_MM = ['1', '1.25', '1.5', '1.75', '2', '2.5', '3', '4', '5', '6', '8', '10', '12'];
export const PITCH_TPI = ['2', '3', '4', '5', '6', '8', '10', '11', '12', '14', '16', '18', '20', '24'];
/** Driving : driven teeth of a belt that was left out of the entries. */
export const BELTS: readonly (readonly [number, number])[] = [
  [1, 2],
  [2, 1],
  [1, 3],
  [3, 1],
  [2, 3],
  [3, 2],
  [1, 4],
  [4, 1],
  [3, 4],
  [4, 3],
  [2, 5],
  [5, 2],
];

/**
 * How common each mistake is: chance that it is there at all, before anything was measured. Common practice, judged
 * from how easily each is made; only their order of size matters, since readings soon outweigh them.
 */
export const ODDS = {
  /** The same figure in the other unit: 8 tpi typed as 8 mm. */
  unit: 0.03,
  edges: 0.03,
  /** Lines mistaken for edges or the other way: × 4 or ÷ 4. */
  linesAsEdges: 0.02,
  /** A usual value close to the one entered (1024 for 1000). */
  close: 0.015,
  /** Any other usual value. */
  usual: 0.004,
  microsteps: 0.02,
  swapped: 0.025,
  beltForgotten: 0.015,
  beltMissing: 0.003,
  /** One tooth miscounted. */
  tooth: 0.003,
  starts: 0.01,
  gearbox: 0.004,
  /** Pitch entered for lead, or starts counted twice. */
  leadStarts: 0.05,
  pi: 0.03,
  standIn: 0.02,
  wheel: 0.01,
  turned: 0.02,
  backlash: 0.06,
  lost: 0.03,
  screw: 0.05,
  /** What isn't on the list. */
  other: 0.02,
  none: 0.3,
} as const;

/** A slip in the controller beside one in the profile: the profile is copied once more, by hand. */
export const CONTROLLER = 0.5;
