import type { Inputs } from '../context';
import { blank } from './blank';
import { sheetOf, type Registry, type Sheet } from './define';
import { depth } from './depth';
import * as gearing from './gearing';
import { ratioHeld } from './held';
import { limits } from './limits';
import { nutRule } from './nut';
import { drill } from './thread';
import { train } from './train';
import { speed } from './verdict';

/**
 * Every figure there is. To add one: give it a type in ids.ts, define it, and name it here; the compiler asks
 * for whatever is forgotten.
 */
export const REGISTRY = {
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
  train,
  ratioHeld,
  nutRule,
  depth,
  blank,
  drill,
  limits,
  speed,
} as const satisfies Registry;

/** The figures for one machine, job and context; each is reckoned when first asked. */
export const figuresFor = (inputs: Inputs): Sheet => sheetOf(REGISTRY, inputs);
