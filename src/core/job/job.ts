import type { Ratio, Stated } from '../quantity';
import type { OwnThread } from '../thread/own';

/**
 * What is to be cut: a catalogued thread by its id, one of a person's own with its figures as they were when it was
 * chosen, a bare pitch typed by hand, or a turning feed per rev.
 */
export type ThreadChoice =
  | { readonly kind: 'catalogue'; readonly id: string }
  | { readonly kind: 'own'; readonly id: string; readonly own: OwnThread }
  | { readonly kind: 'pitch'; readonly pitch: Stated }
  | { readonly kind: 'feed'; readonly perRev: Stated };

/** What the thread is for, which decides how true its lead must be. */
export type Use = 'fastener' | 'leadscrew' | 'worm';

/** Shape of the tool's point; `full-form` is an insert that finishes root and crest to the standard's form. */
export const NOSE_KINDS = ['radius', 'flat', 'sharp', 'full-form'] as const;
export type NoseKind = (typeof NOSE_KINDS)[number];

/**
 * What a person chose for this piece of work on this machine. null is "not known" or "not chosen yet".
 * `room` is the usable stopping room: what is left of the groove or gap after the tool's half-width, the
 * compound's creep and a margin are taken off.
 */
export interface Job {
  readonly thread: ThreadChoice | null;
  readonly starts: number;
  readonly hand: 'right' | 'left';
  readonly side: 'external' | 'internal';
  readonly classId: string | null;
  readonly noseKind: NoseKind | null;
  readonly noseSize: Stated | null;
  readonly rpm: Ratio | null;
  readonly room: Stated | null;
  /** What the room was worked out from, as text (figures/room-from); null where a person typed it. */
  readonly roomFrom: string | null;
  readonly use: Use | null;
  /** Length of the thread to be cut. */
  readonly length: Stated | null;
  readonly material: MaterialId | null;
  /** The blank's diameter, or the bore's, as measured. */
  readonly blank: Stated | null;
  /** What the thread ends in: a groove, threads that fade out on the work, or nothing. */
  readonly ending: Ending | null;
  /** Width of the groove's floor. */
  readonly groove: Stated | null;
  /** How far a shoulder behind the groove stands above the crests; 0: not at all. */
  readonly shoulder: Stated | null;
  /** From where the thread ends to what the carriage must not reach: shoulder, jaws, steady, centre. */
  readonly gap: Stated | null;
  readonly holding: Holding | null;
  readonly toolMaterial: ToolMaterial | null;
  readonly infeed: Infeed | null;
  /** What the top slide's scale is set to, degrees; which way it counts is the machine's. */
  readonly topSlide: Stated | null;
  readonly passRule: PassRule | null;
  readonly passHold: PassHold | null;
  /** Radial depth of the first pass, and the least a pass may take. */
  readonly firstPass: Stated | null;
  readonly leastPass: Stated | null;
  readonly passCount: Stated | null;
  readonly chipArea: Stated | null;
  /** Passes at the last setting; null: as tool and material suggest. */
  readonly springPasses: Stated | null;
  /** Cut from the shoulder outwards, with the spindle reversed and the tool the other way up. */
  readonly outwards: boolean;
}

/** Kinds of stock with cutting speeds of their own (core/cut/materials). */
export const MATERIALS = [
  'free-cutting-steel',
  'mild-steel',
  'carbon-steel',
  'alloy-steel',
  'stainless',
  'tool-steel',
  'grey-iron',
  'brass',
  'bronze',
  'aluminium',
  'plastic',
] as const;
export type MaterialId = (typeof MATERIALS)[number];

export const ENDINGS = ['groove', 'run-out', 'through'] as const;
export type Ending = (typeof ENDINGS)[number];
export const HOLDINGS = ['chuck', 'collet', 'chuck-and-centre', 'between-centres', 'faceplate'] as const;
export type Holding = (typeof HOLDINGS)[number];
export const TOOL_MATERIALS = ['hss', 'carbide'] as const;
export type ToolMaterial = (typeof TOOL_MATERIALS)[number];
/** Straight in, along one flank, a little steeper than it, or by turns along both. */
export const INFEEDS = ['radial', 'flank', 'modified-flank', 'alternate-flank'] as const;
export type Infeed = (typeof INFEEDS)[number];
/** Chips of one area by the insert makers' rule, of one area from the first, or steps all alike. */
export const PASS_RULES = ['constant-chip', 'equal-area', 'fixed-step'] as const;
export type PassRule = (typeof PASS_RULES)[number];
/** What is held while the others follow: the first pass, their number, or the chip's area. */
export const PASS_HOLDS = ['first', 'count', 'chip'] as const;
export type PassHold = (typeof PASS_HOLDS)[number];

export const blankJob = (): Job =>
  Object.freeze({
    thread: null,
    starts: 1,
    hand: 'right',
    side: 'external',
    classId: null,
    noseKind: null,
    noseSize: null,
    rpm: null,
    room: null,
    roomFrom: null,
    use: null,
    length: null,
    material: null,
    blank: null,
    ending: null,
    groove: null,
    shoulder: null,
    gap: null,
    holding: null,
    toolMaterial: null,
    infeed: null,
    topSlide: null,
    passRule: null,
    passHold: null,
    firstPass: null,
    leastPass: null,
    passCount: null,
    chipArea: null,
    springPasses: null,
    outwards: false,
  });
