/** Words of the page on what limits the drive, and what would raise it. */
export const raiseText = {
  title: 'What would raise it',
  now: 'The drive keeps up to',
  nowKnown: 'By what is known, the drive keeps up to',
  binds: (name: string): string => `${name} is the lowest.`,
  next: (name: string, rpm: string, times: string): string =>
    `Next comes ${name.toLowerCase()} at ${rpm} rpm, ${times} times as fast.`,
  unknown: (names: string): string => `Not known, and so not counted: ${names}.`,
  help: 'One change of the machine at a time, tried on your own figures. A faster drive is no faster threading speed: the stopping room stays what it is.',
  none: 'No single change of the usual ones raises it.',
  to: (name: string, to: string, from: string): string => `${name}: ${to} instead of ${from}`,
  spread: 'A controller that spreads its steps evenly',
  pulses: (to: string, from: string): string => `Pulses of ${to} instead of ${from}, on and off`,
  then: (name: string): string => `then ${name.toLowerCase()} is the lowest`,
  step: (mm: string): string => `one step ${mm}`,
  noThread: 'Choose a thread first.',
  back: 'Back to Speed',
  gears: 'Change gears have no drive to raise: carriage, chuck, spindle and stopping room set the speed.',
} as const;
