import { div, mul, ratio, roundTo, type Ratio } from '../quantity';
import { pitchLength } from './forms';
import { figure } from './number';
import { effectiveLength, handEngagement, nptSizes, smallEndPitch } from './npt';
import type { Thread } from './thread';

/** What a taper thread asks besides its profile. Lengths in the thread's own unit, along the axis. */
export interface TaperFigures {
  readonly unit: 'mm' | 'in';
  /** Rise on diameter over length: 1/16. */
  readonly taper: Ratio;
  /** Angle of one side to the axis, degrees: what a taper attachment or a second axis is set to. */
  readonly sideDegrees: number;
  /** From the small end to the gauge plane. */
  readonly gaugeLength: Ratio;
  /** How far the gauge plane of the external thread may lie to either side. */
  readonly gaugeTolerance: Ratio;
  /** The same in turns of the gauge, as it is counted at the lathe. */
  readonly gaugeTurns: Ratio;
  /** How far that of the internal thread may. */
  readonly internalTolerance: Ratio;
  readonly internalTurns: Ratio;
  /** Thread of full or useful depth. */
  readonly usefulLength: Ratio;
  /** Pitch diameter at the small end; null where the standard states the gauge plane only. */
  readonly smallEndPitch: Ratio | null;
  readonly source: 'iso7-table' | 'asmeB1.20.1';
}

/**
 * Size : gauge length, its tolerance, useful thread at basic gauge length, mm. ISO 7-1 Table 1 (from memory).
 */
const R = `1/16:4.0,0.9,6.5 1/8:4.0,0.9,6.5 1/4:6.0,1.3,9.7 3/8:6.4,1.3,10.1 1/2:8.2,1.8,13.2 3/4:9.5,1.8,14.5
1:10.4,2.3,16.8 1-1/4:12.7,2.3,19.1 1-1/2:12.7,2.3,19.1 2:15.9,2.3,23.4 2-1/2:17.5,3.5,26.7 3:20.6,3.5,29.8
4:25.4,3.5,35.8 5:28.6,3.5,40.1 6:28.6,3.5,40.1`;

/** Sizes whose gauge plane may lie 1½ turns to either side; smaller ones have 1 turn, and 1¼ inside. ISO 7-1 Table 1. */
const LARGE = /^R (2 1\/2|[3-6])$/;
const isoTurns = (size: string): { gaugeTurns: Ratio; internalTurns: Ratio } =>
  LARGE.test(size)
    ? { gaugeTurns: ratio(3, 2), internalTurns: ratio(3, 2) }
    : { gaugeTurns: ratio(1), internalTurns: ratio(5, 4) };

const iso7 = new Map(
  R.split(/\s+/).map((row) => {
    const [size = '', cells = ''] = row.split(':');
    return [`R ${size.replace('-', ' ')}`, cells.split(',')];
  }),
);

/** Figures of a taper thread; null for a thread without taper or outside its standard's table. */
export const taperFigures = (thread: Thread): TaperFigures | null => {
  const taper = thread.taper?.value;
  const P = pitchLength(thread);
  if (!taper || !P || !thread.major) return null;
  const sideDegrees = (Math.atan(Number(taper.n) / Number(taper.d) / 2) * 180) / Math.PI;
  if (thread.form === 'npt60') {
    const pipe = thread.major.value;
    const gaugeLength = handEngagement(thread.size);
    if (!gaugeLength || !nptSizes(thread.size, pipe, P)) return null;
    return {
      unit: 'in',
      taper,
      sideDegrees,
      gaugeLength,
      // One turn either way from the gauge's face.
      gaugeTolerance: P,
      gaugeTurns: ratio(1),
      internalTolerance: P,
      internalTurns: ratio(1),
      usefulLength: effectiveLength(pipe, P),
      smallEndPitch: smallEndPitch(pipe, P),
      source: 'asmeB1.20.1',
    };
  }
  const cells = iso7.get(thread.size);
  if (!cells) return null;
  const [gauge = '', tolerance = '', useful = ''] = cells;
  const turns = isoTurns(thread.size);
  return {
    unit: 'mm',
    taper,
    sideDegrees,
    gaugeLength: figure(gauge),
    gaugeTolerance: figure(tolerance),
    ...turns,
    // The table's own millimetres are its turns, to a tenth.
    internalTolerance: roundTo(mul(turns.internalTurns, P), 1),
    usefulLength: figure(useful),
    smallEndPitch: null,
    source: 'iso7-table',
  };
};

/**
 * Error of axial pitch in ppm when the taper is turned by setting the tailstock over: the pitch is then measured along
 * the side and its axial part is shorter by the cosine (1:16 gives −488 ppm).
 */
export const setOverPpm = (taper: Ratio): number => {
  const half = div(taper, ratio(2));
  return (Math.cos(Math.atan(Number(half.n) / Number(half.d))) - 1) * 1e6;
};
