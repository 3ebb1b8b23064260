import type { Registry } from './define';
import * as gearing from './gearing';
import { limits } from './limits';
import { speed } from './verdict';

/** The figures that Speed shows, so that the app can start with these alone. */
export const FIRST = {
  chosen: gearing.chosen,
  pitch: gearing.pitch,
  lead: gearing.leadFigure,
  screwLead: gearing.screwLead,
  countsPerRev: gearing.countsPerRev,
  stepsPerMotorRev: gearing.stepsPerMotorRev,
  motorPerScrew: gearing.motorPerScrew,
  stepsPerScrewRev: gearing.stepsPerScrewRev,
  stepsPerCount: gearing.stepsPerCount,
  stepOnCarriage: gearing.stepOnCarriage,
  countOnCarriage: gearing.countOnCarriage,
  limits,
  speed,
} as const satisfies Partial<Registry>;
