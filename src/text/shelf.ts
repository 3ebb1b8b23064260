import type { ShelfStanding } from '../core/carry';
import { dayText } from './records';
import { timeOf } from './time';

export const shelfText = {
  heading: 'Shelf',
  link: (n: number): string => `Shelf: ${n} ${n === 1 ? 'machine' : 'machines'}`,
  note: 'Machines that whoever keeps this copy of the app has laid out for all. The shelf is only read; nothing changes here before you have seen what it would do.',
  none: 'Nothing lies on the shelf of this copy of the app.',
  noWorkshop: 'No workshop named',
  asOf: (at: number): string => `As it was ${dayText(at)}, ${timeOf(at)}.`,
  again: 'Look again',
  looking: 'Looking.',
  missing: (n: number): string =>
    `${n === 1 ? 'One file was' : `${n} files were`} named in the list and not to be had. Tell whoever keeps the shelf.`,
  gone: 'This file is no longer kept here. Look again with a network.',
} as const;

export const shelfAnswer = {
  had: '',
  none: 'The shelf can’t be reached now. It is shown as it was kept.',
  strange: 'What the host has is no list this version can read. The shelf is shown as it was kept.',
} as const;

/** How a machine on the shelf stands to the one here. */
export const shelfWords: Record<ShelfStanding, string> = {
  new: 'Not on this phone',
  same: 'The same as here',
  older: 'Older than here',
  other: 'Changed on the shelf',
  unknown: 'Open it to compare',
};
