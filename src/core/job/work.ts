import type { Job } from './job';

/**
 * What belongs to the piece of work in the lathe and to the thread planned on it: gone when another thread is chosen,
 * since a room or a pass left over from the work before would be believed. Material, holding, tool and speed stay: they
 * are as the person left the lathe, and stand as what the next job starts from.
 */
export const NO_WORK = Object.freeze({
  length: null,
  blank: null,
  ending: null,
  groove: null,
  shoulder: null,
  gap: null,
  room: null,
  roomFrom: null,
  topSlide: null,
  passCount: null,
  chipArea: null,
  outwards: false,
} as const) satisfies Partial<Job>;
