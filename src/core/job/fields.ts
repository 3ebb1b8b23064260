import { number } from '../machine';

/** The numbers a person enters for a job: units, plausible range (common practice), usual values. */
export const JOB_FIELDS = {
  rpm: number('spindle', ['rpm'], '1', '20000'),
  room: number('carriage', ['mm', 'in'], '0.01', '5000'),
  length: number('carriage', ['mm', 'in'], '0.1', '5000'),
  noseSize: number('carriage', ['mm', 'in'], '0.01', '6', { suggest: ['0.1', '0.15', '0.2', '0.4'] }),
  starts: number('screw', ['count'], '1', '60', { whole: true, suggest: ['1', '2', '3', '4'] }),
} as const;
export type JobFieldName = keyof typeof JOB_FIELDS;

/** Units in which a bare pitch may be typed, and the range of a feed per rev, mm. */
export const PITCH_FIELD = number('screw', ['mm', 'tpi', 'in', 'module', 'dp'], '0.02', '200');
export const FEED_FIELD = number('screw', ['mm', 'in'], '0.005', '10', { suggest: ['0.05', '0.1', '0.2'] });
