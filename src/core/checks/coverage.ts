import type { InputPath, MachinePath } from '../context';
import type { REGISTRY } from '../figures';
import type { AFFECTS_NOTHING } from '../machine';
import type { AnyItem } from './items';

/**
 * Holds, when compiling, that nothing in a machine's profile is entered in vain: each field is read by some
 * figure or some check, or stands in AFFECTS_NOTHING. Otherwise a change of it would make nothing stale.
 */
type ReadsOf<D> = D extends { readonly reads: readonly (infer R)[] } ? R : never;

export type FigureReads = {
  [F in keyof typeof REGISTRY]: ReadsOf<(typeof REGISTRY)[F]>;
}[keyof typeof REGISTRY];
export type CheckReads = ReadsOf<AnyItem['rule']>;
export type DeclaredReads = (FigureReads | CheckReads) & InputPath;
export type NothingPath = `machine.${(typeof AFFECTS_NOTHING)[number]}`;

/** Fields that a change of would go unnoticed. */
export type Uncovered<Fields extends string, Reads> = Exclude<Fields, Reads | NothingPath>;
/** Fields said to affect nothing that something reads all the same. */
export type WronglyIdle<Reads> = Extract<NothingPath, Reads>;

/** Compiles for `never` alone; the error names whatever else it was given. */
export type None<T extends never> = T;

export type EveryFieldCovered = None<Uncovered<MachinePath, DeclaredReads>>;
export type NoFieldWronglyIdle = None<WronglyIdle<DeclaredReads>>;
