/** The few words that the first paint needs. The rest of the app's own words are in text/app. */
export const barLabel = {
  threads: 'Threads',
  speed: 'Speed',
  checks: 'Checks',
  cut: 'Cut',
  machine: 'Machine',
} as const;

/** A machine's colour in a word, for paper and for whoever can't see it. */
export const colourName = {
  teal: 'Teal',
  amber: 'Amber',
  plum: 'Plum',
  moss: 'Moss',
  brick: 'Brick',
  slate: 'Slate',
} as const;

export const frameText = {
  places: 'Places',
  noMachine: 'No machine yet',
  noWorkshop: 'No workshop named',
  change: 'change the machine',
  failed: 'Something went wrong on this screen',
  failedNote: 'What was saved is still there. Do not go by any figure seen just before.',
  reload: 'Load the page again',
  details: 'Details',
  waiting: 'Another tab of this app still uses the storage as it was before.',
  waitingNote: 'Close that tab: this one goes on by itself, and nothing is lost.',
} as const;
