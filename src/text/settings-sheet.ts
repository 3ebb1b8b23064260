import { fieldText } from './machine-fields';

export const sheetText = {
  title: 'Settings sheet',
  intro: 'What to enter in controller and drive, from your figures. Check each before it is relied on.',
  print: 'Print, one page',
  threads: 'Threads on the sheet',
  threadsHelp:
    'Touch one to leave it out. They are the thread chosen now, your favourites and those last used.',
  noThreads: 'No thread on the sheet. Choose one, or add favourites.',
  notKnown: 'not known',
  controller: 'Controller',
  drive: 'Motor drive',
  edges: fieldText.edgesPerLine.label,
  edgesCheck: (counts: string): string =>
    `Turn the spindle ten revs by hand to a mark: the counter moves by ${counts}.`,
  counts: 'Counts per spindle rev',
  direction: 'Direction',
  directionValue: 'Carriage to headstock for a right-hand thread',
  directionCheck:
    'Spindle forward, nut closed in air, far from the chuck: a right-hand thread draws the carriage towards the headstock, a left-hand one away. Then in reverse: the carriage must go back.',
  form: 'Ratio',
  ratioOf: 'Ratio for each thread',
  ratioCheck:
    'After entering, leave the page and look again: it must read as here. Then a scratch pass, and measure ten pitches.',
  top: 'top',
  bottom: 'bottom',
  stepsPerRev: 'steps/rev',
  exact: 'exact',
  ppm: (ppm: string): string => `${ppm} ppm off: keep the nut closed`,
  cannot: 'can’t be held',
  stepper: 'Microsteps',
  stepperCheck: (steps: string): string =>
    `Pulses per motor rev ${steps}. Mark the motor’s shaft: so many pulses are one turn.`,
  pulseOn: fieldText.pulseHigh.label,
  pulseOff: fieldText.pulseLow.label,
  setup: fieldText.directionSetup.label,
  pulseCheck: 'At least. Check with a scope or the controller’s settings, at the highest step rate.',
  pulses: 'Pulses per motor rev',
  gear: 'Electronic gear, top and bottom',
  gearNotKnown: 'Enter the servo’s encoder counts and the gear’s largest number to see it.',
  gearCheck: 'Encoder counts ÷ pulses. Send so many pulses: the motor’s shaft turns once, to the mark.',
  gearNear: 'Not exact: the drive can’t take the true gear. Choose another number of pulses.',
  rate: (rate: string, bears: string): string => `At the motor’s highest speed ${rate} of ${bears} borne.`,
  tooFast: 'More than 80 % of what the input bears.',
  step: 'One step on the carriage',
  stepCheck: 'Indicator on the carriage: a thousand steps move it a thousand times this.',
  coarse: 'Coarser than 5 µm, a hundredth of a 0.5 mm pitch.',
  better: (pulses: string, top: string, bottom: string): string =>
    `${pulses} pulses with a gear of ${top} to ${bottom} are the most that stay within the input, with a fine step. They change the ratio: enter them as pulses per rev too.`,
  asEntered: 'As entered; the app does not see the lathe.',
  changeGears: 'This machine has change gears: there is no controller to set.',
  back: 'All of this machine',
} as const;
