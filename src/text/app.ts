import { capital, words } from './words';
import { fieldText } from './machine-fields';
import type { FieldName } from '../core/machine';

export interface Trouble {
  readonly what: string;
  readonly todo: string;
}

/** Codes of storage/backing; the app's entry checks that none is missing. */
export type StorageTrouble =
  'full' | 'newer-database' | 'closed-for-update' | 'unavailable' | 'broken' | 'failed';

const KEPT = 'What you typed is still on screen.';

export const storageText: Record<StorageTrouble, Trouble> = {
  full: {
    what: 'Not saved: this phone’s storage is full.',
    todo: `${KEPT} Free some space, then save again.`,
  },
  'newer-database': {
    what: 'What is stored here was written by a newer version of this app.',
    todo: 'Nothing is touched. Go online once and load the newer version.',
  },
  'closed-for-update': {
    what: 'Another tab is bringing the storage up to date.',
    todo: `${KEPT} Load this page again.`,
  },
  unavailable: {
    what: 'This browser keeps nothing: a private window, or its storage is switched off or broken.',
    todo: 'Everything works, but is gone when the page is closed. Share what you want to keep.',
  },
  broken: {
    what: 'The database on this phone can’t be opened.',
    todo: 'Its files are left as they lie. You work with its copy, and what you enter goes into that alone. Close the browser and open it again; share what matters before you clear anything.',
  },
  failed: {
    what: 'Not saved.',
    todo: `${KEPT} Save again. If that fails, share the machine’s figures before closing.`,
  },
};

/** The way to a file of everything, from where nothing else may keep it. */
export const shareAllText = 'Share what is here as a file';

/** What came back from the copy of a database that was lost. */
export const restoredText = {
  what: (day: string, time: string): string =>
    `The database on this phone was lost. Its copy of ${day}, ${time}, was put back.`,
  todo: 'Look whether your newest entries are there.',
  torn: (n: number): string => `${n} ${n === 1 ? 'part' : 'parts'} of the copy could not be read.`,
} as const;

export const saveText = {
  again: 'Save again',
  conflict: 'Changed in two tabs at once',
  seen: 'Seen',
  conflictNote: 'The newer value is kept. Look at these:',
  /** Parts of a run, beside the fields of a machine or job. */
  ofRun: {
    taken: 'passes taken',
    plans: 'plan of passes',
    readings: 'readings of the run',
    paused: 'pause',
    ended: 'end of the run',
    outcome: 'how it ended',
    notes: 'notes',
  } as Readonly<Record<string, string>>,
} as const;

/** Codes of device/updates. */
export type OfflineTrouble =
  | 'no-service-worker'
  | 'registration-refused'
  | 'install-failed'
  | 'no-answer'
  | 'cache-incomplete'
  | 'update-failed'
  | 'withdrawn';

export const offlineText: Record<OfflineTrouble, Trouble> = {
  'no-service-worker': {
    what: 'This browser can’t start the app offline.',
    todo: 'It works while the page stays open. A newer browser, outside a private window, can.',
  },
  'registration-refused': {
    what: 'The browser refused to keep the app offline.',
    todo: 'It works while the page stays open. Open it by its https address, outside a private window.',
  },
  'install-failed': {
    what: 'Not everything arrived.',
    todo: 'The app won’t start offline yet. Go online and load the page again.',
  },
  'no-answer': {
    what: 'Not certain that the app starts offline.',
    todo: 'Load the page again while online.',
  },
  'cache-incomplete': {
    what: 'Parts of the app are missing from this phone.',
    todo: 'Go online and load the page again.',
  },
  'update-failed': {
    what: 'A newer version did not arrive whole.',
    todo: 'This version stays and works. It is tried again by itself.',
  },
  withdrawn: {
    what: 'This version no longer works offline.',
    todo: 'Your records are untouched. Load the page again while online.',
  },
};

export const offlineState = {
  checking: 'Looking whether it starts offline',
  'ready-offline': 'Ready offline',
  failed: 'Not ready offline',
} as const;

export const updateText = {
  'update-waiting': 'A newer version is here',
  'update-needs-reload': 'Load this page again when you can. Another tab has changed to a newer version',
  version: (update: string, version: string): string => (version ? `${update}: ${version}` : update),
  changes: 'What changes',
  changed: 'What changed',
  accept: 'Change to it now',
  check: 'Look for a newer version',
} as const;

/** What became of a yes to the newer version. */
export const acceptedText = {
  reloading: 'Loading the newer version',
  'refused-cutting': 'Not while cutting',
  'update-failed': 'The newer version did not start. This one stays and works.',
  'save-failed': 'Not changed: something is not saved yet.',
} as const;

export const errorText = {
  reload: 'Load the page again',
} as const;

type Undoable =
  | { readonly code: 'field'; readonly field: FieldName }
  | { readonly code: 'fields'; readonly before: Readonly<Partial<Record<FieldName, unknown>>> }
  | { readonly code: 'machine' | 'workshop' | 'machine-put-away'; readonly name: string }
  | { readonly code: 'own-thread'; readonly name: string; readonly away: boolean }
  | { readonly code: 'run'; readonly name: string; readonly away: boolean }
  | { readonly code: 'wiring'; readonly name: string }
  | {
      readonly code:
        'wire' | 'readings' | 'import' | 'thread' | 'check' | 'event' | 'hours' | 'test' | 'review';
    };

/** What the undo key will do. */
export const undoText = (entry: Undoable): string => {
  switch (entry.code) {
    case 'field':
      return `Undo ${fieldText[entry.field].label.toLowerCase()}`;
    case 'fields':
      return `Undo ${Object.keys(entry.before)
        .map((f) => fieldText[f as FieldName].label.toLowerCase())
        .join(' and ')}`;
    case 'machine':
      return `Back to ${entry.name || 'the machine before'}`;
    case 'workshop':
      return entry.name ? `The workshop was called ${entry.name}` : 'The workshop had no name';
    case 'machine-put-away':
      return `Bring back ${entry.name || 'machine'}`;
    case 'own-thread':
      return entry.away
        ? `Bring back ${entry.name || 'the thread'}`
        : `Undo the change of ${entry.name || 'the new thread'}`;
    case 'run':
      return entry.away ? `Bring back the record of ${entry.name}` : `Not ended: go on with ${entry.name}`;
    case 'readings':
      return 'Bring the readings back';
    case 'import':
      return 'Take back what the file brought';
    case 'wiring':
      return entry.name ? `Bring back ${entry.name}` : 'Undo the change of wiring';
    case 'wire':
      return 'Put the wire back';
    case 'thread':
      return 'Back to the thread before';
    case 'check':
      return 'Take back the answer';
    case 'event':
      return 'Take back the entry';
    case 'hours':
      return 'Take back the hours';
    case 'test':
      return 'Take back the test record';
    case 'review':
      return 'Not looked over after all';
  }
};

/** The words around a number that is entered on the pad. */
export const enterText = {
  done: 'Done',
  cancel: 'Cancel',
  notKnown: 'Not known',
  nothingToEnter: 'Nothing is asked here',
  notSaved: 'Not saved. Nothing was recorded; try again.',
  spindleSpeed: 'One spindle speed',
  hours: 'Running hours now',
  hoursBack: (last: string): string => `Less than the entry before it (${last} h).`,
  job: {
    rpm: 'Spindle speed to set',
    room: 'Usable stopping room',
    length: 'Length of the thread',
    noseSize: 'Size of the tool nose',
    starts: 'Number of starts',
    blank: 'Diameter of blank or bore, measured',
    groove: 'Width of the groove’s floor',
    shoulder: 'Height of the shoulder above the crests',
    gap: 'Gap from the thread’s end to what is in the way',
    topSlide: 'Angle on the top slide’s scale',
    firstPass: 'Depth of the first pass, radial',
    leastPass: 'Least depth of a pass, radial',
    passCount: 'Number of passes',
    chipArea: 'Area of the chip in a pass',
    springPasses: 'Spring passes at the end',
  },
} as const;

export const persistText = {
  granted: 'The browser keeps what is saved until you clear it.',
  denied: 'The browser did not promise to keep what is saved. Put the app on the home screen, and back up.',
  unsupported: 'This browser does not say whether it keeps what is saved.',
  ask: 'Ask the browser to keep it',
  clearing:
    'On an iPhone or iPad the browser clears what a site has kept when that was not opened for seven days of use; other browsers clear the sites used least when space runs short. An app on the home screen is spared the first and seldom meets the second. A back-up kept elsewhere outlives both, and a lost phone.',
} as const;

/** Shown before the first use, and in the settings ever after. */
export const cautions = {
  heading: 'Before you begin',
  get points(): readonly string[] {
    return [
      'A turning chuck takes hold of sleeves, gloves and hair. Hands off the phone while it turns and the tool is in.',
      'The app sees nothing of the lathe. It reckons from what you enter, and can’t know whether that is so.',
      'No program is a stop. The stop button must cut power by itself, and be tested by you.',
      `${capital(words().mains)} wiring and stop circuits are for trained people, under your local rules.`,
      'Where this app and your lathe’s manual differ, the manual and those who know the machine decide.',
    ];
  },
} as const;

export const logText = {
  heading: 'Log',
  note: 'What the app noted about its own faults. It stays on this phone unless you share it.',
  share: 'Share the log',
  fileName: 'latheside-log.txt',
} as const;

export const settingsText = {
  offline: 'Starting with no network',
  keeping: 'Keeping what is saved',
  log: (n: number): string => (n === 0 ? 'Nothing noted' : n === 1 ? '1 entry' : `${n} entries`),
  showLog: 'Show the log',
  clearLog: 'Empty the log',
  bringLogBack: 'Bring the log back',
  versionLine: (version: string): string => `Latheside ${version}`,
  heading: 'Settings',
  units: 'Units offered first',
  unitsOptions: { mm: 'Millimetres', in: 'Inches' },
  theme: 'Screen',
  themeOptions: { auto: 'As the phone', bright: 'Bright', dark: 'Dark' },
  hand: 'Hand on the phone',
  handOptions: { right: 'Right', left: 'Left' },
  words: 'Trade words',
  wordsOptions: { uk: 'British', us: 'American' },
} as const;

export const appText = {
  cutOn: (machine: string, time: string): string =>
    `${machine}: you recorded at ${time} that a cut began. It is not ended.`,
  toMachine: (machine: string): string => `To ${machine}`,
  cutRunning: (time: string): string => `You recorded at ${time} that a cut began.`,
  enter: (label: string): string => `Enter: ${label}`,
  welcome: 'Your lathe, its drive, and every thread',
  welcomeLine: 'Enter your lathe once. After that everything works with no network.',
  enterMine: 'Enter my lathe',
  tryExample: 'Try an example first',
  usedBefore:
    'Used it here before? Then the browser has cleared what it kept. Open your back-up, or have the machine’s file sent again.',
  undo: 'Undo',
  close: 'Close',
  notKnown: 'Not known',
  missing: 'Not known yet',
} as const;
