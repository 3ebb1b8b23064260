import type { Point } from '../../core/cut/chip';
import { slideOf, slidesOf, type Handwheel, type Slides } from '../../core/cut/handwheels';
import {
  foundBy,
  leftToTake,
  PART,
  targetOf,
  threadOfJob,
  wholeDivisions,
  type FinishFound,
  type FinishReading,
  type Left,
  type Target,
} from '../../core/cut/finish';
import type { PlannedPass } from '../../core/cut/pass';
import { LEAST_PASS } from '../../core/cut/materials';
import { replan } from '../../core/cut/replan';
import { springAllowed } from '../../core/cut/spring';
import { classOf } from '../../core/figures';
import type { Job } from '../../core/job';
import { inBase, toNumber, type Stated } from '../../core/quantity';
import { passesLeft } from '../../core/run/progress';
import type { Run } from '../../core/run/run';
import type { Thread } from '../../core/thread';
import * as wires from '../../core/thread/wires';
import type { App } from '../../state';
import { sheetAsBegun } from './pass-changes';
import { FINISH_WAYS, type FinishKey, type FinishWay } from '../../text/finish';

/** The piece of work that is measured: that of the open run as it stood when it was begun, else the job's. */
export interface Piece {
  readonly job: Job;
  readonly run: Run | null;
  readonly runId: string;
  readonly thread: Thread | null;
  readonly classId: string | null;
  readonly target: Target | null;
}

export const pieceOf = (app: App): Piece => {
  const open = app.runs.current;
  const job = open?.run.job ?? app.job;
  const thread = threadOfJob(job);
  const classId = thread && classOf(thread, job.classId, job.side);
  const target = thread && targetOf(thread, classId, job.side);
  return { job, run: open?.run ?? null, runId: open?.id ?? '', thread, classId, target };
};

/** Wires lie in no internal thread. */
export const waysFor = ({ job, thread }: Piece): readonly FinishWay[] => {
  if (!thread || thread.taper) return ['gauge'];
  if (job.side === 'internal') return ['gauge', 'thread-micrometer'];
  return wires.wireSizes(thread) ? FINISH_WAYS : ['thread-micrometer', 'gauge'];
};

/** What was chosen by a name, or the first that is offered. */
export const chosen = <K extends string>(app: App, name: string, options: readonly K[]): K => {
  const now = app.settings.choices[name];
  return options.find((k) => k === now) ?? (options[0] as K);
};

const INSTRUMENTS = ['coarse', 'fine', 'caliper'] as const satisfies readonly wires.Instrument[];
export const WIRE_KINDS = Object.keys(wires.WIRE_U) as wires.WireKind[];
/** With what it is read; the same choice as on the thread's own page. */
export const instrumentOf = (app: App) => chosen(app, 'measure.instrument', INSTRUMENTS);
export const instruments = INSTRUMENTS;

const read = (app: App, key: FinishKey, u: number): wires.Measured | null => {
  const s = app.readings.get(key);
  return s && { value: toNumber(inBase(s)), u };
};

const readingBy = (app: App, way: FinishWay): FinishReading | null => {
  const u = wires.INSTRUMENT_U[instrumentOf(app)];
  if (way === 'wires') {
    const over = read(app, 'cut.over', u);
    const wire = read(app, 'cut.wire', wires.WIRE_U[chosen(app, 'measure.wires', WIRE_KINDS)]);
    return over && wire && { way, over, wire };
  }
  if (way === 'gauge') return null;
  const [work, actual, shown] = [
    read(app, 'cut.mic', u),
    read(app, 'cut.standard', u),
    read(app, 'cut.shown', u),
  ];
  return work && actual && shown && { way, work, standard: { actual, shown } };
};

/** The pitch diameter as read; null while a figure is missing. */
export const foundNow = (app: App, { thread, job }: Piece, way: FinishWay): FinishFound | null => {
  const reading = thread && readingBy(app, way);
  return reading && thread ? foundBy(thread, job.side, reading) : null;
};

export const leftNow = ({ target, job }: Piece, found: Extract<FinishFound, { ok: true }>): Left | null =>
  target && leftToTake(job.side, found, target);

/** The figure that is read off each time, whose entry a new reading begins with. */
export const READ_KEY: Readonly<Record<Exclude<FinishWay, 'gauge'>, FinishKey>> = {
  wires: 'cut.over',
  'thread-micrometer': 'cut.mic',
};

/** A slide and its handwheel. */
interface Feeding {
  readonly slide: 'cross' | 'top';
  readonly wheel: Handwheel;
}
export interface SlideLeft extends Feeding {
  readonly divisions: number;
  readonly part: number;
}

/** Both handwheels of the machine in use for this piece. */
export const wheelsOf = (app: App, { job, thread }: Piece): Slides | null =>
  app.profile && thread && slidesOf(app.profile, job, thread);

/** The slide that goes deeper: that of the last pass taken, else by the job's infeed. */
export const feedingOf = (app: App, piece: Piece): 'cross' | 'top' => {
  const { at } = standsAt(piece.run);
  return at ? slideOf(at) : (wheelsOf(app, piece)?.feeds ?? 'cross');
};

/** What is left on each handwheel whose dial is known; the one that feeds first. */
export const slidesLeft = (app: App, piece: Piece, left: Left): readonly SlideLeft[] => {
  const wheels = wheelsOf(app, piece);
  const order = feedingOf(app, piece) === 'cross' ? (['cross', 'top'] as const) : (['top', 'cross'] as const);
  return order.flatMap((slide): SlideLeft[] => {
    const wheel = wheels?.[slide];
    if (!wheel) return [];
    const divisions = wholeDivisions(left.radial, wheel.radial, left);
    // A part is taken to be measured after: nothing has to be within yet.
    const part = wholeDivisions(left.radial * PART, wheel.radial, { least: null, most: null });
    return [{ slide, wheel, divisions, part }];
  });
};

const inMm = (s: Stated): number => toNumber(inBase(s));

/** Least radial depth of a pass, mm; null while neither it nor the tool is known. */
export const leastOf = (app: App, { job }: Piece): number | null => {
  if (job.leastPass) return inMm(job.leastPass);
  const tool = job.toolMaterial ?? app.job.toolMaterial;
  return tool && LEAST_PASS[tool];
};

export const springOf = (app: App, { job }: Piece): boolean | null =>
  springAllowed(job.toolMaterial ?? app.job.toolMaterial, job.material ?? app.job.material);

/** The pass that the dials stand at by the run, and the passes of its plan that are still to come. */
export const standsAt = (run: Run | null): { at: PlannedPass | null; left: readonly PlannedPass[] } => {
  return { at: run?.taken.at(-1)?.pass ?? null, left: run ? passesLeft(run) : [] };
};

/** The tool's point by the plan, where there is one; else a sharp one. */
const pointOf = (app: App, piece: Piece): Point => {
  const sheet = piece.run ? sheetAsBegun(app, piece.run) : app.sheet;
  const half = wheelsOf(app, piece)?.half ?? 0;
  return sheet.get('plan').value?.point ?? { half, flat: 0, radius: 0 };
};

/** The passes that remain for so many divisions of a slide. @param measure they are to be measured after */
export const passesFor = (
  app: App,
  piece: Piece,
  { slide, wheel }: Feeding,
  divisions: number,
  measure: boolean,
): readonly PlannedPass[] | null => {
  const least = leastOf(app, piece);
  if (least === null || !piece.thread) return null;
  const { at, left } = standsAt(piece.run);
  const planned = left.filter((p) => p.kind === 'spring').length;
  const spring = springOf(app, piece) === true ? 1 : 0;
  const wanted = piece.job.springPasses ? toNumber(piece.job.springPasses.value) : spring;
  const springs = measure ? spring : planned || wanted;
  return replan({
    divisions,
    slide,
    wheel,
    at,
    left,
    least,
    point: pointOf(app, piece),
    springs,
  });
};

/** Divisions from one cut to the next. */
export const stepsOf = (passes: readonly PlannedPass[], { wheel }: Feeding): readonly number[] =>
  passes.filter((p) => p.kind === 'cut').map((p) => Math.round(p.step / wheel.radial));
