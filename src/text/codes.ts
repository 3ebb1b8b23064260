import type { CodesKind } from '../core/carry';
import type { FrameRefusal } from '../core/carry/codes';

/** Keys to the pages of codes. */
export const codesKeys = { show: 'Show as codes', read: 'Read codes' } as const;

export const codesText = {
  showTitle: (machine: string): string => `${machine} as codes`,
  none: 'No machine yet',
  making: 'Drawing the codes',
  holdOther: 'On the other phone open Machine, Share, Read codes. Hold it square, a hand’s width away.',
  flicker: 'The codes flicker. Pause them if that troubles anyone.',
  goes: {
    most: 'Its profile, wiring and job, and the newest record of each test. Checks, hours and older records go by file.',
    some: 'Its profile and the newest record of each test. Wiring, job, checks and older records go by file.',
    least:
      'Its profile as it is now, and the newest record of each test. Where both phones changed it, each difference is asked for. All else goes by file.',
  } satisfies Record<CodesKind, string>,
  tooLarge: 'Too large for codes. Send it as a file.',
  failed: 'The codes could not be drawn. Close the app, open it again, or send a file.',
  holdSteady: 'The codes follow one another by themselves; they may be read in any order.',
  readTitle: 'Read codes',
  ask: 'On the other phone the codes are shown. This phone reads them with its camera; no picture is kept or sent.',
  start: 'Switch the camera on',
  starting: 'Waiting for the camera',
  aim: 'Hold the whole code in the square, straight, and keep still.',
  camera: 'What the camera sees',
  have: (have: number, need: number): string => `${have} of ${need}`,
  haveLabel: 'Codes read',
  stop: 'Switch the camera off',
} as const;

export const cameraText = {
  denied:
    'The camera was not allowed. Allow it for this site in the browser’s settings, then try again. A file works without it.',
  none: 'This device has no camera the browser can use. Let the other phone send a file.',
  busy: 'The camera could not be started. Another app may have it: close that one and try again.',
  unsupported: 'This browser gives the app no camera. Let the other phone send a file.',
  ended: 'The camera was switched off by the phone.',
  worker: 'Codes can’t be read now. Close the app, open it again, or let the other phone send a file.',
} as const;
export type CameraState = keyof typeof cameraText;

export const refusedText: Record<FrameRefusal | 'contradiction' | 'unknown', string> = {
  foreign: 'That code is none of this app’s.',
  newer: 'That code comes from a newer version of this app. Load the newer version here first.',
  damaged: 'One code was not read rightly. It comes round again.',
  contradiction: 'The codes did not fit together. They are read from the start.',
  unknown:
    'All codes were read, and this version can’t make out what they hold. Load the newest version here.',
};

/** Words of the loop of codes. */
export const loopText = {
  at: (n: number, of: number): string => `Code ${n} of ${of}`,
  pause: 'Pause',
  go: 'Let it run',
  next: 'Next code',
} as const;
export type LoopText = typeof loopText;
