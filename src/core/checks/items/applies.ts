import type { Inputs } from '../../context';

/** Not when only turning at a feed per rev. */
export const threading = ({ job }: Inputs): boolean => job.thread?.kind !== 'feed';
export const internal = ({ job }: Inputs): boolean => job.side === 'internal';
export const leftHand = ({ job }: Inputs): boolean => job.hand === 'left';
export const multiStart = ({ job }: Inputs): boolean => job.starts > 1;
/** A speed that can be turned up, or of which it isn't known. */
export const rangedSpindle = ({ machine }: Inputs): boolean => machine.spindleDrive !== 'speeds';
export const dialFitted = ({ machine }: Inputs): boolean =>
  machine.halfNut !== 'always-closed' && machine.threadDial !== 'none';
export const openingNut = ({ machine }: Inputs): boolean => machine.halfNut !== 'always-closed';
/** Not where wheels drive the leadscrew: what only a motor, encoder or controller of its own can have. */
export const electronic = ({ machine }: Inputs): boolean => machine.driveKind !== 'change-gears';
/** Once a cut was stopped in the middle. */
export const stoppedInCut = ({ context }: Inputs): boolean =>
  context.events.some((e) => e.kind === 'stopped-in-cut');
