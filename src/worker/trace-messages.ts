import type { TraceResult, TraceSpec } from '../core/drive/trace';

/** Asked of the worker: runs of the model one after another; `cancel` ends what is under way. */
export type TraceAsk =
  | { readonly kind: 'run'; readonly id: number; readonly specs: readonly TraceSpec[] }
  | { readonly kind: 'cancel' };

/** Answered. Counts done are of all runs together. */
export type TraceAnswer =
  | { readonly kind: 'progress'; readonly id: number; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly id: number; readonly results: readonly TraceResult[] }
  | { readonly kind: 'refused'; readonly id: number; readonly field: string };
