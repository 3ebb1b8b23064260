import type { Context, InputPath } from '../core/context';
import type { FigureId, Origin } from '../core/figures';
import type { Job } from '../core/job';
import type { FieldName } from '../core/machine';
import { fieldText } from './machine-fields';

export const jobText: Record<keyof Job, string> = {
  thread: 'Thread',
  starts: 'Starts',
  hand: 'Hand',
  side: 'External or internal',
  classId: 'Class',
  noseKind: 'Tool nose',
  noseSize: 'Size of the tool nose',
  rpm: 'Speed set',
  room: 'Usable stopping room',
  roomFrom: 'What the room was worked out from',
  use: 'What the thread is for',
  length: 'Length of the thread',
  material: 'Material',
  blank: 'Blank as measured',
  ending: 'What the thread ends in',
  groove: 'Width of the groove',
  shoulder: 'Height of the shoulder',
  gap: 'Gap to what is in the way',
  holding: 'How the work is held',
  toolMaterial: 'What the tool is made of',
  infeed: 'Infeed',
  topSlide: 'Angle of the top slide',
  passRule: 'How the passes are shared out',
  passHold: 'What the passes follow from',
  firstPass: 'First pass',
  leastPass: 'Least a pass may take',
  passCount: 'Number of passes',
  chipArea: 'Area of the chip',
  springPasses: 'Spring passes',
  outwards: 'Cutting away from the shoulder',
};

const contextText: Record<keyof Context, string> = {
  now: 'Time by this phone',
  day: 'Day by this phone',
  hours: 'Running hours',
  records: 'Test records',
  tests: 'Tests of drive and stop',
  recalls: 'Corrected formulas',
  events: 'What happened to the machine',
  cuttingSince: 'Cut now running',
  cuttingDay: 'Day of the cut now running',
};

export const figureName: Record<FigureId, string> = {
  chosen: 'What is cut',
  pitch: 'Pitch',
  lead: 'Lead',
  screwLead: 'Leadscrew lead',
  countsPerRev: 'Counts per spindle rev',
  stepsPerMotorRev: 'Steps per motor rev',
  motorPerScrew: 'Motor revs per leadscrew rev',
  stepsPerScrewRev: 'Steps per leadscrew rev',
  stepsPerCount: 'Steps per count',
  stepOnCarriage: 'One step on the carriage',
  countOnCarriage: 'One count along the thread',
  train: 'Train mounted now',
  ratioHeld: 'Ratio the controller holds',
  nutRule: 'Half-nut rule',
  depth: 'Depth',
  blank: 'Blank',
  drill: 'Tapping drill',
  plan: 'Plan of passes',
  stopRoom: 'Room to stop in',
  stopSpeed: 'Highest for this room',
  coasting: 'Travel while the spindle coasts',
  limits: 'Speed limits',
  speed: 'Highest for this job',
};

/** What a person calls the thing at a path: the name of its field. */
export const pathLabel = (path: InputPath): string => {
  const [room = '', key = ''] = path.split('.');
  if (room === 'machine') return fieldText[key as FieldName].label;
  return room === 'job' ? jobText[key as keyof Job] : contextText[key as keyof Context];
};

const ROOMS: Readonly<Record<string, string>> = { machine: 'Machine', job: 'This job', context: 'Records' };

/** Where a term of a reckoning came from. */
export const originText = (from: Origin): string => {
  if (from === 'constant') return 'Constant';
  if (from === 'table') return 'From the table';
  if (!from.includes('.')) return `Calculated: ${figureName[from as FigureId]}`;
  const path = from as InputPath;
  return `${ROOMS[path.split('.')[0] ?? ''] ?? ''}: ${pathLabel(path)}`;
};
