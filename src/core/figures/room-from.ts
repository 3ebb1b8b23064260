import { fingerprint, type InputAt, type InputPath, type Inputs } from '../context';
import { inputAt } from '../context';
import type { Stated } from '../quantity';

/** What a stopping room is worked out from. */
export const ROOM_READS = [
  'job.thread',
  'job.side',
  'job.noseKind',
  'job.noseSize',
  'job.blank',
  'job.ending',
  'job.groove',
  'job.shoulder',
  'job.gap',
  'job.infeed',
  'job.topSlide',
  'job.outwards',
  'machine.topScale',
] as const satisfies readonly InputPath[];
export type RoomRead = (typeof ROOM_READS)[number];

/** Raised when the reckoning is corrected: a room worked out before must then be worked out again. */
const ROOM_RULE = 1;

/** Those inputs as text: what a job keeps beside a room that was worked out. */
export const roomFrom = (input: (path: RoomRead) => InputAt<RoomRead>): string =>
  fingerprint([ROOM_RULE, ...ROOM_READS.map((path) => input(path))]);

/** Whether the job's room was typed by a person, or worked out from the figures as they are now. */
export const roomHolds = (kept: string | null, input: (path: RoomRead) => InputAt<RoomRead>): boolean =>
  kept === null || kept === roomFrom(input);

/** The stopping room, unless it was worked out for other figures: then it is as unknown as one that never was. */
export const roomOf = (inputs: Inputs): Stated | null =>
  roomHolds(inputs.job.roomFrom, (path) => inputAt(inputs, path)) ? inputs.job.room : null;
