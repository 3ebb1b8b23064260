import type { GrooveId } from '../core/figures/chart';

/** Words of the wall chart, on the screen and on paper. */
export const chartText = {
  title: 'Wall chart',
  working: 'Reckoning …',
  print: 'Print',
  printHelp: 'First the page to hang up, then the drawing, then the whole table.',
  back: 'Back to Speed',
  none: 'Choose a thread, or add favourites: the chart takes them first.',
  driveWords: 'Heavy and thin lines: what the drive follows. NOT a threading speed to a shoulder.',
  stopWords: (time: string, factor: string): string =>
    `Dashed lines: to a shoulder, by the room a groove leaves to stop in (half the tool, the slide’s creep at 29.5° and 0.5 mm taken off; ${time} × ${factor} to stop).`,
  stopNone: 'What a groove leaves to stop in is not known: the stopping time is not entered.',
  unknown: (names: string): string => `Not known, and so not drawn: ${names}.`,
  byRecord: (names: string): string => `Answered by your ramp test: ${names}.`,
  axis: { lead: 'lead, mm', tpi: 'tpi', rpm: 'rpm', own: 'spindle' },
  plot: 'Highest spindle speed over lead. The table below has the figures.',
  table: 'The whole table',
  thread: 'Thread',
  lead: 'Lead',
  drive: 'Drive follows',
  driveNote: 'not to a shoulder',
  own: 'Spindle speed',
  room: (room: string): string => `Room of ${room}`,
  notKnown: 'not known',
  nothing: 'nothing left',
  noGroove: '–',
  noGrooveWords:
    '– no such groove: both standards are for ISO metric threads. Widths of DIN 76-1 are from memory of the standard.',
  binds: (name: string): string => `Lowest of the drive’s limits at the finest lead: ${name}.`,
  bindsFrom: (lead: string, name: string): string => ` From ${lead} mm: ${name}.`,
  pitch: (starts: number, mm: string, tpi: string): string => `${starts} starts, pitch ${mm} mm, ${tpi} tpi`,
  more: (n: number): string => `Show ${n} more sizes`,
  noneOfThem: 'none',
  hang: 'Highest spindle speed, rpm',
  hangDrive: 'The drive follows: NOT to a shoulder',
  hangRoom: 'To a shoulder: ISO 4755 groove',
  hangFoot:
    'Calculated from the figures entered, not measured. ? not known · 0 no room is left to stop in · – no such groove.',
} as const;

export const grooveName: Readonly<Record<GrooveId, string>> = {
  'iso-4755': 'ISO 4755 groove',
  'din-76-a': 'DIN 76 A groove',
  'din-76-b': 'DIN 76 B groove',
};
