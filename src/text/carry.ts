import type { RefusalCode } from '../core/carry';
import type { FieldName } from '../core/machine';
import { fieldText } from './machine-fields';
import { dayText } from './records';
import { timeOf } from './time';

const parts = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** A moment out of a file, by the phone's clock; as it is written there when it is no date. */
const madeText = (iso: string): string => {
  const at = Date.parse(iso);
  return Number.isNaN(at) ? iso : `${dayText(at)}, ${timeOf(at)}`;
};

export const carryText = {
  heading: 'Share, back up, open a file',
  shareHeading: 'One machine',
  shareNote: 'With its test records, checks and wiring, its job, and your own thread where the job cuts one.',
  share: (name: string): string => `Share ${name}`,
  backHeading: 'Everything',
  backNote:
    'Every machine, record, run, own thread and setting on this phone, in one file. Keep it elsewhere.',
  backUp: 'Back up everything',
  openHeading: 'Bring in',
  openNote:
    'A file that this app made, here or on another phone. Nothing changes before you have seen what it would do.',
  open: 'Open a file',
  drop: 'Or drop it here.',
  preparing: 'The file is being made.',
  shared: 'Handed on. Look whether it arrived before you rely on it.',
  downloaded: 'Saved among this phone’s downloads.',
  cancelled: 'Not shared.',
  unreadable: (n: number): string =>
    n > 0 ? `In it, as they stand: ${parts(n, 'record', 'records')} that this version can’t read.` : '',
  left: (n: number): string =>
    n > 0
      ? `Not in it, and kept on this phone alone: ${parts(n, 'record', 'records')} that can’t be read.`
      : '',
  notMade: 'The file could not be made. Load the page again and try once more.',
  reading: 'The file is being read.',
  writing: 'Bringing it in.',
  fileName: (name: string, day: string): string =>
    `${name.replace(/[\\/:*?"<>|\p{Cc}]+/gu, ' ').trim() || 'Machine'} ${day}.latheside.json`,
  everythingName: 'Latheside back-up',
  refused: 'This file was not opened',
  another: 'Open another file',
  title: { machine: 'A machine from elsewhere', everything: 'A back-up' } as const,
  made: (iso: string, app: string): string => `Made ${madeText(iso)}, by version ${app}.`,
  machines: 'Machines in it',
  rest: 'What else is in it',
  more: (n: number): string => `and ${n} more`,
  leftOut: (names: string): string => `Can’t be read by this version, and is left out: ${names}`,
  nothing: 'Everything in it is here already. There is nothing to bring in.',
  toChoose: (n: number): string => `${parts(n, 'thing', 'things')} to choose`,
  chooseNote: 'Changed both here and in the file. Look at the lathe where you are not certain.',
  allOurs: 'Keep all ours',
  allTheirs: 'Take all theirs',
  ours: 'Keep ours',
  theirs: 'Take theirs',
  here: 'this phone',
  file: (iso: string): string => {
    const at = Date.parse(iso);
    return Number.isNaN(at) ? 'the file' : `file of ${dayText(at)}`;
  },
  changedAt: (at: number): string => `changed ${dayText(at)}, ${timeOf(at)}`,
  chooseFirst: (n: number): string => `Choose first: ${n} left`,
  bring: 'Bring it in',
  leave: 'Leave it',
  done: 'Brought in',
  doneNote: 'Nothing of yours was written over unseen; the key below takes all of it back.',
  newChecks:
    'The checks and tests came as another person or phone recorded them. What is due is asked here as ever.',
  use: (name: string): string => `Use ${name}`,
  back: 'Back to the machine',
  changed: 'Something here changed meanwhile. Nothing was brought in; look once more.',
  away: 'Put away',
  inUse: 'In use',
  yes: 'Yes',
  no: 'No',
} as const;

/** How a machine of the file stands to what is here. */
export const outcomeText = {
  new: 'New here',
  same: 'Here already, the same',
  ours: 'Here already, and newer here',
  forward: 'Brought up to date',
  merged: 'Changed here and there: put together',
  back: 'Taken back',
} as const;

/** How many rows of a kind the file changes. */
export const changesText = (fresh: number, changed: number, same: number): string =>
  [
    ...(fresh ? [`${fresh} new`] : []),
    ...(changed ? [`${changed} brought up to date`] : []),
    ...(same ? [`${same} here already`] : []),
  ].join(', ');

/** Kinds of rows: stores, and kinds of what was recorded. */
const kindName: Readonly<Record<string, string>> = {
  jobs: 'Job in hand',
  threads: 'Own threads',
  runs: 'Runs',
  settings: 'Settings',
  wiring: 'Wiring',
  meta: 'Working figures',
  check: 'Check answers',
  test: 'Test records',
  event: 'Things that happened',
  hours: 'Running hours',
  review: 'Looked over',
};
export const kindText = (kind: string): string =>
  Object.hasOwn(kindName, kind) ? (kindName[kind] ?? kind) : kind;

/** A machine's field as a conflict names it. */
export const conflictText = (field: string): string => {
  const name = field.replace(/^profile\./, '');
  if (Object.hasOwn(fieldText, name)) return fieldText[name as FieldName].label;
  return name === 'deleted' ? 'In use or put away' : name === '/example' ? 'Only an example' : name;
};

/** Why a file isn't opened, and what to do. */
export const refusedFile: Record<RefusalCode, string> = {
  large: 'It is too large for a file of this app.',
  empty: 'There is nothing in it.',
  encoding: 'It isn’t text as this app writes it (UTF-8). Send it again as a file, not as pasted text.',
  truncated: 'Its end is missing. Send or copy it once more.',
  'not-json': 'It isn’t a file of this app, or was changed on the way.',
  format: 'It isn’t a file of this app.',
  newer: 'A newer version of this app made it. Go online once, load the newer version, and open it again.',
  shape: 'Parts of it are missing or aren’t what they should be.',
  rows: 'A record in it isn’t one.',
  many: 'There are more records in it than this app takes.',
  checksum: 'It was changed or damaged on the way: its checksum is wrong. Send or copy it once more.',
  deep: 'It is nested deeper than any file of this app.',
  keys: 'There are names in it that no file of this app has.',
  numbers: 'There are numbers in it that no file of this app has.',
  fractions: 'There is a fraction in it that is none: nought below the line, or more digits than are taken.',
  long: 'There is a text in it that is longer than any of this app.',
  unread: 'The browser could not read it. Load the page again and try once more.',
};

/** When everything was last backed up, in a line. */
export const backedUpText = (at: number | null, changes: number): string => {
  const since = parts(changes, 'change', 'changes');
  if (at === null) return changes === 0 ? 'Never backed up.' : `Never backed up. ${since} so far.`;
  return changes === 0
    ? `Last backed up ${dayText(at)}. No change since.`
    : `Last backed up ${dayText(at)}. ${since} since.`;
};
