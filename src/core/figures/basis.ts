import type { ContextPath, InputAt, InputPath } from '../context';
import { inBase, leadHigh, toNumber, type Lead, type Ratio, type Stated } from '../quantity';
import type { Course } from './course';
import type { Ask } from './define';
import type { RAMP_RULE } from './evidence';
import type { FigureValues } from './ids';
import { ROOM_READS } from './room-from';
import type { LimitBasis, LimitId, Need } from './limit';
import { MARGIN_ELECTRONIC } from './standing';
import { exact, type ShownUnit, type Term } from './why';

/** What the limits look at. */
export const READS = [
  'machine.driveKind',
  'machine.encoderLines',
  'machine.spindlePulley',
  'machine.encoderPulley',
  'machine.encoderMaxRpm',
  'machine.encoderMaxChannel',
  'machine.edgesPerLine',
  'machine.encoderPhaseError',
  'machine.directionSetup',
  'machine.directionWait',
  'machine.motorKind',
  'machine.fullSteps',
  'machine.motorTorque',
  'machine.motorPeak',
  'machine.torqueCurve',
  'machine.motorSupply',
  'machine.motorCurrent',
  'machine.motorInductance',
  'machine.rotorInertia',
  'machine.rampTime',
  'machine.cuttingForce',
  'machine.carriageMass',
  'machine.slideFriction',
  'machine.screwEfficiency',
  'machine.screwDiameter',
  'machine.screwLength',
  'machine.screwEnds',
  'machine.counterMaxEdges',
  'machine.motorMaxRpm',
  'machine.pulseHigh',
  'machine.pulseLow',
  'machine.stepInputMax',
  'machine.controllerMaxSteps',
  'machine.pulseTiming',
  'machine.carriageMax',
  'machine.chuckMaxRpm',
  'machine.spindleDrive',
  'machine.spindleSpeeds',
  'machine.spindleMax',
  'machine.wholeStopTime',
  'machine.safetyFactor',
  'job.room',
  'job.roomFrom',
  ...ROOM_READS,
  'context.records',
  'context.tests',
  'context.now',
  'context.day',
  'context.events',
  'context.hours',
  'context.cuttingSince',
  'context.cuttingDay',
] as const satisfies readonly InputPath[];
export type Reads = (typeof READS)[number] | (typeof RAMP_RULE)['reads'][number];
export const USES = [
  'lead',
  'screwLead',
  'countsPerRev',
  'motorPerScrew',
  'stepsPerScrewRev',
  'stepsPerCount',
] as const;
export type Uses = (typeof USES)[number];
export type LimitAsk = Ask<Reads, Uses>;

type StatedPath = { [P in Reads]: P extends ContextPath ? never : P }[Reads];

/** Collects terms and missing paths while a limit is put together. */
export class Basis {
  readonly terms: Record<string, Term> = {};
  readonly missing: InputPath[] = [];
  constructor(private readonly ask: LimitAsk) {}

  stated(name: string, path: StatedPath): Ratio | null {
    const s = this.ask.input(path) as Stated | null;
    this.terms[name] = { amount: s && exact(s.value, s.unit), from: path };
    if (!s) this.missing.push(path);
    return s && inBase(s);
  }

  /** A figure that was entered and holds no longer: as missing as one that never was. */
  lapsed(name: string, path: StatedPath): null {
    this.terms[name] = { amount: null, from: path };
    this.missing.push(path);
    return null;
  }

  /** A stated figure in base units as physics needs it; null is noted as missing. */
  number(name: string, path: StatedPath): number | null {
    const value = this.stated(name, path);
    return value && toNumber(value);
  }

  /** Something chosen or written; null is noted as missing. */
  chosen<P extends 'machine.screwEnds' | 'machine.torqueCurve' | 'machine.motorKind'>(path: P): InputAt<P> {
    const value = this.ask.input(path);
    if (value === null) this.missing.push(path);
    return value;
  }

  /** A figure's own value; `as` writes it as the term of the line. */
  figure<F extends Uses>(
    name: string,
    id: F,
    unit: ShownUnit,
    as: (value: FigureValues[F]) => Ratio,
  ): FigureValues[F] | null {
    const f = this.ask.figure(id);
    this.terms[name] = { amount: f.value === null ? null : exact(as(f.value), unit), from: id };
    this.missing.push(...f.missing);
    return f.value;
  }

  ratio(name: string, id: Exclude<Uses, 'lead' | 'stepsPerCount'>, unit: ShownUnit): Ratio | null {
    return this.figure(name, id, unit, (value) => value);
  }

  /** For limits a lead that carries π is taken a hair too large. */
  lead(): Lead | null {
    return this.figure('lead', 'lead', 'mm', leadHigh);
  }

  make(
    id: LimitId,
    need: Need,
    side: 'drive' | 'work',
    unit: ShownUnit,
    perRpm: Ratio | null,
    limit: Ratio | null,
    margin = MARGIN_ELECTRONIC,
    source = 'rates',
  ): LimitBasis {
    const missing = [...new Set(this.missing)];
    return { id, need, side, unit, margin, source, terms: this.terms, missing, perRpm, limit, course: null };
  }

  /** A supporting limit of the drive that is no straight line over speed; null: something is missing. */
  along(id: LimitId, unit: ShownUnit, course: Course | null, margin: Ratio, source: string): LimitBasis {
    return { ...this.make(id, 'supporting', 'drive', unit, null, null, margin, source), course };
  }
}
