/** A measure to compare with: its deviation as ppm of the length it is stated for. */
export interface Measure {
  readonly code:
    | 'grade-1'
    | 'grade-3'
    | 'grade-5'
    | 'grade-7'
    | 'grade-10'
    | 'lathe-300'
    | 'lathe-60'
    | 'warm-10K'
    | 'rolled-fine'
    | 'rolled-coarse';
  readonly ppm: number;
  readonly source: 'iso3408' | 'iso3408-memory' | 'iso1708-memory' | 'steel' | 'makers';
}

/**
 * How good is good enough, finest first. ISO 3408-3 grades over 300 mm: 12, 23 and 52 µm as ball-screw makers print
 * them, 6 and 210 from memory. ISO 1708 practical test of a centre lathe, 0.04 mm in 300 and 0.015 in 60, from memory.
 * Steel 11.5 ppm a kelvin: handbook coefficient. Rolled screws 0.05 to 0.2 mm in 300: makers' data.
 */
export const SCALE: readonly Measure[] = [
  { code: 'grade-1', ppm: 6e3 / 300, source: 'iso3408-memory' },
  { code: 'grade-3', ppm: 12e3 / 300, source: 'iso3408' },
  { code: 'grade-5', ppm: 23e3 / 300, source: 'iso3408' },
  { code: 'warm-10K', ppm: 115, source: 'steel' },
  { code: 'lathe-300', ppm: 40e3 / 300, source: 'iso1708-memory' },
  { code: 'rolled-fine', ppm: 50e3 / 300, source: 'makers' },
  { code: 'grade-7', ppm: 52e3 / 300, source: 'iso3408' },
  { code: 'lathe-60', ppm: 15e3 / 60, source: 'iso1708-memory' },
  { code: 'rolled-coarse', ppm: 200e3 / 300, source: 'makers' },
  { code: 'grade-10', ppm: 210e3 / 300, source: 'iso3408-memory' },
];
