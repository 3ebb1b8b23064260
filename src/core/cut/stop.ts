import { highestRpm, stoppingPerRpm } from '../drive';
import type { Ending } from '../job';
import {
  add,
  ceil,
  compare,
  div,
  isPositive,
  leadHigh,
  leadLow,
  max,
  mul,
  ONE,
  ratio,
  toNumber,
  type Lead,
  type Ratio,
} from '../quantity';
import { threadRunOut } from '../thread/ends';
import { anglesUsable, bothAngles, radians, type HalfAngles } from '../thread/groove';
import { ROOM_MARGIN } from './room';

/**
 * From something unforeseen to the stop button, a hand at half a metre: 1 s, of 0.7 to 1 s; and the contactor's
 * drop-out, 0.05 s. From memory of ISO 13855 and of data sheets.
 */
export const EMERGENCY_TIME = ratio(105, 100);

/** Where the carriage has to be stopped. Lengths in mm; null: not known. */
export interface StopPlace {
  readonly ending: Ending;
  /** Cut from the shoulder outwards: the shoulder lies behind, and what counts is the next thing in the way. */
  readonly outwards: boolean;
  /** Width of the groove's floor. */
  readonly groove: Ratio | null;
  /** From where the thread ends to what the carriage must not reach. */
  readonly gap: Ratio | null;
  /** How far the shoulder stands above the crests. */
  readonly shoulder: Ratio | null;
  /** Radial depth of the finished thread from the blank's surface. */
  readonly depth: number;
  readonly half: HalfAngles;
  /** Angle of the top slide from square to the axis while it feeds, degrees; 0: it doesn't. */
  readonly infeed: number;
  readonly pitch: Lead;
}

/** What there is, what comes off it, what is left to stop in. Lengths in mm. */
export interface StopRoom {
  /** What sets it: the groove, what a fading thread may take, or the gap. */
  readonly from: 'groove' | 'run-out' | 'gap';
  readonly whole: Ratio;
  /** How far the tool's leading side stands before its tip, at the height of what it would meet. */
  readonly tool: number;
  readonly creep: number;
  readonly margin: number;
  /** Cut down to whole micrometres; null: nothing is left. */
  readonly usable: Ratio | null;
  /** Travel of the tip at full depth until the tool touches what is in the way. */
  readonly contact: number;
}

export type StopAsks = 'groove' | 'gap' | 'shoulder';
export type StopAnswer =
  | { readonly ok: true; readonly room: StopRoom }
  | { readonly ok: false; readonly missing: readonly StopAsks[] }
  | { readonly ok: false; readonly refusal: 'depth' | 'angle' };

/** Whole micrometres not above so many mm; what a float puts a hair below a whole one counts as that. */
const cutDown = (mm: number): Ratio | null => {
  const um = Math.floor(mm * 1000 + 1e-6);
  return um > 0 ? ratio(BigInt(um), 1000n) : null;
};

/** How far a tool's leading side stands before its tip at a height above it, mm: height × tan of that flank. */
export const leadingSide = (height: number, half: HalfAngles): number =>
  height * Math.tan(radians(bothAngles(half).leading));

const asks = ({ ending, outwards, groove, gap, shoulder }: StopPlace): readonly StopAsks[] => {
  if (outwards || ending === 'through') return gap ? [] : ['gap'];
  const end: readonly StopAsks[] = ending === 'groove' ? (groove ? [] : ['groove']) : gap ? [] : ['gap'];
  return shoulder ? end : [...end, 'shoulder'];
};

/**
 * The usable stopping room. The thread is full up to the tool's tip, so that the tip has the groove (or gap) less the
 * tool's leading side at the height of the shoulder, less the top slide's creep by full depth, less a margin. A thread
 * that fades out on the work may besides mark it over no more than 2.5 P (GB/T 3, equivalent to ISO 3508), its tool's side
 * and creep included: no margin, since nothing is met there. Own derivation; margin by common practice.
 */
export const stopRoom = (x: StopPlace): StopAnswer => {
  if (!(x.depth > 0) || (x.shoulder && x.shoulder.n < 0n)) return { ok: false, refusal: 'depth' };
  if (!anglesUsable(x.half) || !(x.infeed >= 0 && x.infeed < 80)) return { ok: false, refusal: 'angle' };
  const missing = asks(x);
  const groove = !x.outwards && x.ending === 'groove';
  const whole = groove ? x.groove : x.gap;
  if (missing.length > 0 || !whole) return { ok: false, missing };
  const tool = leadingSide(x.depth + (x.shoulder ? toNumber(x.shoulder) : 0), x.half);
  const creep = x.depth * Math.tan(radians(x.infeed));
  const contact = toNumber(whole) - tool - creep;
  const before = contact - ROOM_MARGIN;
  if (!x.outwards && x.ending === 'run-out') {
    const fades = threadRunOut(leadLow(x.pitch), 'normal');
    const side = leadingSide(x.depth, x.half);
    const left = toNumber(fades) - side - creep;
    if (left < before) {
      const room = { from: 'run-out', whole: fades, tool: side, creep, margin: 0, contact } as const;
      return { ok: true, room: { ...room, usable: cutDown(left) } };
    }
  }
  const room = { from: groove ? 'groove' : 'gap', whole, tool, creep, margin: ROOM_MARGIN, contact } as const;
  return { ok: true, room: { ...room, usable: cutDown(before) } };
};

/** Travel from the mark until the nut is clear, mm: L·n/60 × whole time × factor. Exact; a lead with π a hair too long. */
export const travelAt = (lead: Lead, rpm: Ratio, time: Ratio, factor: Ratio = ONE): Ratio =>
  mul(stoppingPerRpm(lead, time, factor), rpm);

/** Highest whole rpm at which that travel stays in the room; rounded down, 0: none does. */
export const highestIn = (room: Ratio | null, lead: Lead, time: Ratio, factor: Ratio): bigint =>
  room ? highestRpm(stoppingPerRpm(lead, time, factor), room, ONE) : 0n;

/** How far a drive that follows takes the carriage while the spindle coasts, mm: turns × lead. Own derivation. */
export const coastTravel = (lead: Lead, turns: Ratio): Ratio => mul(leadHigh(lead), turns);

/** Travel when a stop cuts the spindle alone, or by the stop button, with nut closed and drive alive: time and coasting. */
export const followedTravel = (lead: Lead, rpm: Ratio, time: Ratio, turns: Ratio): Ratio =>
  add(travelAt(lead, rpm, time), coastTravel(lead, turns));

/** Overruns that a whole time is taken from. Common practice. */
export const DUMMY_RUNS = 10;

/**
 * Whole time from mark to nut clear, s, by overruns past a mark, mm: 60·s ÷ (L·n) of the longest, rounded up to 0.01 s.
 * Null without an overrun, a lead or a speed above 0. Own derivation from uniform motion.
 */
export const wholeTime = (overruns: readonly Ratio[], lead: Lead, rpm: Ratio): Ratio | null => {
  const [first, ...rest] = overruns;
  const perSecond = div(mul(leadLow(lead), rpm), 60);
  if (!first || !isPositive(perSecond)) return null;
  const longest = max(first, ...rest);
  return isPositive(longest) ? ratio(ceil(mul(div(longest, perSecond), 100)), 100) : null;
};

/** Whether a whole time from so many runs may stand for the machine's: from ten, or fewer where it is the longer one. */
export const mayReplace = (time: Ratio, runs: number, now: Ratio | null): boolean =>
  runs >= DUMMY_RUNS || (now !== null && compare(time, now) > 0);
