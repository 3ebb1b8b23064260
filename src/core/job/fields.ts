import { number } from '../machine';

/** The numbers a person enters for a job: units, plausible range (common practice), usual values. */
export const JOB_FIELDS = {
  rpm: number('spindle', ['rpm'], '1', '20000'),
  room: number('carriage', ['mm', 'in'], '0.01', '5000'),
  length: number('carriage', ['mm', 'in'], '0.1', '5000'),
  noseSize: number('carriage', ['mm', 'in'], '0.01', '6', { suggest: ['0.1', '0.15', '0.2', '0.4'] }),
  blank: number('carriage', ['mm', 'in'], '0.3', '2000'),
  groove: number('carriage', ['mm', 'in'], '0.05', '200'),
  shoulder: number('carriage', ['mm', 'in'], '0', '500', { suggest: ['0', '1', '2', '5'] }),
  gap: number('carriage', ['mm', 'in'], '0', '5000'),
  topSlide: number('carriage', ['deg'], '0', '90', { suggest: ['0', '29', '29.5', '30', '60.5'] }),
  firstPass: number('carriage', ['mm', 'in'], '0.005', '2', { suggest: ['0.1', '0.15', '0.2'] }),
  leastPass: number('carriage', ['mm', 'in'], '0.001', '1', { suggest: ['0.02', '0.03', '0.05'] }),
  passCount: number('carriage', ['count'], '1', '200', { whole: true, suggest: ['8', '10', '12', '16'] }),
  chipArea: number('carriage', ['mm2'], '0.001', '5', { suggest: ['0.02', '0.04', '0.08'] }),
  springPasses: number('carriage', ['count'], '0', '10', { whole: true, suggest: ['0', '1', '2', '3'] }),
  starts: number('screw', ['count'], '1', '60', { whole: true, suggest: ['1', '2', '3', '4'] }),
} as const;
export type JobFieldName = keyof typeof JOB_FIELDS;

/** Those of them that are kept as they were stated. */
export const STATED_FIELDS = [
  'noseSize',
  'room',
  'length',
  'blank',
  'groove',
  'shoulder',
  'gap',
  'topSlide',
  'firstPass',
  'leastPass',
  'passCount',
  'chipArea',
  'springPasses',
] as const satisfies readonly JobFieldName[];
export type StatedJobField = (typeof STATED_FIELDS)[number];

/** Units in which a bare pitch may be typed, and the range of a feed per rev, mm. */
export const PITCH_FIELD = number('screw', ['mm', 'tpi', 'in', 'module', 'dp'], '0.02', '200');
export const FEED_FIELD = number('screw', ['mm', 'in'], '0.005', '10', { suggest: ['0.05', '0.1', '0.2'] });
