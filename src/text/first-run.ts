import type { FirstStep } from '../core/checks/first-run';

interface StepText {
  readonly title: string;
  /** What to press, where it is to be pressed. */
  readonly how: string;
  /** The key that leads there. */
  readonly go: string;
  readonly href: string;
}

export const stepText: Readonly<Record<FirstStep, StepText>> = {
  machine: {
    title: 'A machine',
    how: 'Press an example, such as Heron.',
    go: 'To the machines',
    href: '#/machine/list',
  },
  thread: {
    title: 'A thread',
    how: 'Choose a family and a size, such as ISO metric coarse, M10.',
    go: 'To the threads',
    href: '#/threads/find',
  },
  tool: {
    title: 'The tool nose',
    how: 'Go down to Tool and work. Press Round and enter 0.2 mm: the depth follows.',
    go: 'To the tool',
    href: '#/threads',
  },
  room: {
    title: 'Room to stop in',
    how: 'Go down to the stopping room and enter 4 mm: what the carriage may travel after the stop.',
    go: 'To the room',
    href: '#/speed',
  },
  speed: {
    title: 'The spindle speed',
    how: 'Press a speed of the spindle that says OK. Why tells what binds.',
    go: 'To the speeds',
    href: '#/speed',
  },
  stops: {
    title: 'Stop tests',
    how: 'Press One after another. Read each, and record it as if you had seen it. One asks how far it went: enter 1 mm.',
    go: 'To the stop tests',
    href: '#/machine/stops',
  },
  checks: {
    title: 'Pre-start checks',
    how: 'One question after another. Where a figure has limits they stand beside it.',
    go: 'To the checks',
    href: '#/checks',
  },
};

export const firstRunText = {
  title: 'First run',
  about: 'ten minutes, step by step',
  intro:
    'From nothing to all checks recorded, in about ten minutes, away from the lathe. What you enter and record is practice.',
  notYours: (machine: string): string =>
    `${machine} is an invented machine. What is recorded on it says nothing of your lathe, and no thread may be cut by it.`,
  own: 'This is a machine of your own. Record only what you have done and seen at it.',
  done: 'Done',
  next: 'Next',
  begin: 'Begin',
  goOn: 'Go on',
  away: 'Put away',
  /** In the line above each screen. */
  line: (n: number, of: number): string => `First run, ${n} of ${of}.`,
  all: 'First run: all done.',
  allNote: 'Now enter your own lathe, and record what you see there.',
  enterMine: 'Enter my lathe',
  practiceShort: 'practice',
  practice: 'Practice: an invented machine. It says nothing of your lathe.',
} as const;
