/** The commissioning tests in the order in which they are done: each leans on those before it. */
export const COMMISSIONING = [
  'look-over',
  'direction',
  'counts',
  'there-and-back',
  'drift',
  'screw-turns',
  'screw-travel',
  'travel',
  'backlash',
  'repeat',
  'ramp',
  'scratch',
  're-entry',
  'stopping-time',
  'coast',
] as const;
export type CommissioningId = (typeof COMMISSIONING)[number];

/** The tests of the stop, in the order of the protocol. */
export const STOP_TESTS = [
  'stop-press-at-rest',
  'stop-press-moving',
  'stop-stays-in',
  'stop-release',
  'stop-separate-start',
  'stop-start-held',
  'stop-power-returns',
  'stop-brown-out',
  'stop-wire-open',
  'stop-wire-short',
  'stop-channel-bridged',
  'stop-encoder-lost',
  'stop-drive-alarm',
  'stop-controller-frozen',
  'stop-drive-off',
  'stop-plug-reverse',
  'stop-carriage-limit',
  'stop-feedback-open',
  'stop-lock-off',
  'stop-reach',
] as const;
export type StopTestId = (typeof STOP_TESTS)[number];

export type TestId = CommissioningId | StopTestId;
export const TEST_IDS: readonly TestId[] = [...COMMISSIONING, ...STOP_TESTS];
