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
  readonly use: Use | null;
  /** Length of the thread to be cut. */
  readonly length: Stated | null;
}

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
    use: null,
    length: null,
  });
