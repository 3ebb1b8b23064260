import type { Job } from '../job';
import type { Ratio } from '../quantity';
import { toNumber } from '../quantity';
import { opening } from '../thread/groove';
import { sideClearance } from '../thread/helix';
import { setOverPpm } from '../thread/taper';
import type { ToolForm } from '../thread/tool';
import { barFor, HOLD_RULES, type BarQuestion } from './hold';
import { ROOM_MARGIN } from './room';

/** Work that isn't cut as an outside right-hand thread of one start, or asks for more care than one. */
export const WAY_IDS = [
  'left-hand',
  'internal',
  'multi-start',
  'taper',
  'worm',
  'coarse',
  'relief-plunge',
  'from-the-chuck',
] as const;
export type WayId = (typeof WAY_IDS)[number];

/** A lead from which a thread counts as coarse where the leadscrew's isn't known, mm. Own choice. */
export const COARSE_LEAD = 5;
/** Length between centres that the tailstock's set-over is given for, mm. */
export const SET_OVER_LENGTH = 100;

export type FigureCode =
  | 'start-groove'
  | 'leading'
  | 'trailing'
  | 'helix'
  | 'reach'
  | 'hole'
  | 'widest'
  | 'bar'
  | 'bar-times'
  | 'lead'
  | 'shift'
  | 'side-angle'
  | 'set-over'
  | 'axial-pitch'
  | 'depth'
  | 'root-width'
  | 'top-width'
  | 'carriage'
  | 'seconds'
  | 'screw-turns'
  | 'groove-floor'
  | 'groove-diameter';

/** One figure of a way. null: something it needs isn't known. */
export interface WayFigure {
  readonly code: FigureCode;
  readonly value: number | null;
  readonly unit: 'mm' | 'deg' | 'mm/s' | 's' | 'times' | 'ppm' | 'turns';
}

/** Whether cutting from the chuck with the spindle reversed can be thought of at all. */
export type FromChuck = 'never' | 'unknown' | 'locked';

/** What is said of a way only where the job or machine is so; what holds of every such work stands with its words. */
export type NoteCode =
  | 'in-shallow'
  | 'in-slender'
  | 'in-too-slender'
  | 'wm-pi'
  | 'co-time'
  | 'co-too-short'
  | 'co-time-unknown'
  | 'co-up'
  | 'fc-never'
  | 'fc-unknown'
  | 'fc-locked';

export interface Way {
  readonly id: WayId;
  /** The job at hand is such work. */
  readonly applies: boolean;
  readonly figures: readonly WayFigure[];
  /** What warns, said first. */
  readonly cautions: readonly NoteCode[];
  readonly notes: readonly NoteCode[];
  /** Not to be done on this machine: nothing else is said of it. */
  readonly never?: true;
}

/** What the ways are reckoned from; lengths in mm, null where not known. */
export interface WayQuestion {
  readonly job: Pick<Job, 'hand' | 'side' | 'starts' | 'ending' | 'outwards'>;
  readonly lead: number | null;
  readonly pitch: number | null;
  /** The pitch carries π: a worm by module or diametral pitch. */
  readonly pi: boolean;
  readonly form: ToolForm | null;
  readonly formId: string | null;
  readonly taper: Ratio | null;
  /** Lead angle where it is steepest, at the root, degrees. */
  readonly steepest: number | null;
  readonly depth: number | null;
  readonly bar: Omit<BarQuestion, 'depth' | 'ending'>;
  /** Room to stop in, rpm, and the whole time to stop with its factor, s. */
  readonly room: number | null;
  readonly rpm: number | null;
  readonly stopTime: number | null;
  readonly screwLead: number | null;
  readonly chuck: 'screw-on' | 'locked' | null;
  /** The undercut of the thread's standard, where it has one. */
  readonly undercut: { readonly floor: number; readonly diameter: number } | null;
}

type Body = Omit<Way, 'id'>;

const figure = (code: FigureCode, value: number | null, unit: WayFigure['unit'] = 'mm'): WayFigure => ({
  code,
  value,
  unit,
});

/**
 * Width of the groove at the surface of the work, mm: P/2 at the pitch line and the opening of the flanks above it.
 * Whatever the nose, the finished groove is that wide. Own geometry.
 */
export const topWidth = (form: ToolForm): number => form.pitch / 2 + form.addendum * opening(form.half);

/** Width of the groove's flat bottom, mm: what a tool that roughs it out must be narrower than. Null for a round root. */
export const rootWidth = (form: ToolForm): number | null => {
  const flat = form.radius > 0 ? 0 : form.pitch / 2 - form.tip * opening(form.half);
  return flat > 0 ? flat : null;
};

/** A groove that the tool can be set in to full depth before the cut begins: its width and a margin, mm. */
const startGroove = (q: WayQuestion): WayFigure =>
  figure('start-groove', q.form && topWidth(q.form) + ROOM_MARGIN);

const sides = (q: WayQuestion): readonly WayFigure[] => {
  const clear = q.steepest === null ? null : sideClearance(q.steepest);
  return [
    figure('helix', q.steepest, 'deg'),
    figure('leading', clear && clear.leading, 'deg'),
    figure('trailing', clear && clear.trailing, 'deg'),
  ];
};

const leftHand = (q: WayQuestion): Body => ({
  applies: q.job.hand === 'left',
  figures: [startGroove(q), ...sides(q)],
  cautions: [],
  notes: [],
});

const internal = (q: WayQuestion): Body => {
  const b = barFor({ ...q.bar, depth: q.depth, ending: q.job.ending });
  const { steelBar, carbideBar } = HOLD_RULES;
  const slender: readonly NoteCode[] =
    b.times === null || b.times <= steelBar ? [] : [b.times <= carbideBar ? 'in-slender' : 'in-too-slender'];
  return {
    applies: q.job.side === 'internal',
    figures: [
      figure('reach', b.reach),
      ...(q.job.ending === 'through' ? [] : [figure('hole', b.hole)]),
      figure('widest', b.widest),
      figure('bar', b.bar),
      figure('bar-times', b.times, 'times'),
    ],
    cautions: [...(b.tooShallow ? (['in-shallow'] as const) : []), ...slender],
    notes: [],
  };
};

const multiStart = (q: WayQuestion): Body => ({
  applies: q.job.starts > 1,
  figures: [figure('lead', q.lead), figure('shift', q.pitch), ...sides(q)],
  cautions: [],
  notes: [],
});

/** Set-over: half the taper for each unit of length between centres (half angle θ: tan θ = taper ÷ 2). */
const taper = (q: WayQuestion): Body => {
  const half = q.taper && toNumber(q.taper) / 2;
  return {
    applies: q.taper !== null,
    figures: [
      figure('side-angle', half === null ? null : (Math.atan(half) * 180) / Math.PI, 'deg'),
      figure('set-over', half === null ? null : SET_OVER_LENGTH * half),
      figure('axial-pitch', q.taper && setOverPpm(q.taper), 'ppm'),
    ],
    cautions: [],
    notes: [],
  };
};

const DEEP = ['worm29', 'worm40', 'trapezoidal30', 'acme29', 'stubAcme29', 'square'];

const worm = (q: WayQuestion): Body => ({
  applies: q.pi || DEEP.includes(q.formId ?? ''),
  figures: [
    figure('lead', q.lead),
    figure('depth', q.depth),
    figure('top-width', q.form && topWidth(q.form)),
    figure('root-width', q.form && rootWidth(q.form)),
    ...sides(q),
  ],
  cautions: q.pi ? ['wm-pi'] : [],
  notes: [],
});

/** Time that the room gives, s: w·60 ÷ (L·n), to be held against the whole time to stop (own derivation). */
const coarse = (q: WayQuestion): Body => {
  const speed = q.lead !== null && q.rpm !== null ? (q.lead * q.rpm) / 60 : null;
  const seconds = speed !== null && speed > 0 && q.room !== null ? q.room / speed : null;
  const turns = q.lead !== null && q.screwLead ? q.lead / q.screwLead : null;
  const time: NoteCode =
    seconds === null || q.stopTime === null
      ? 'co-time-unknown'
      : seconds < q.stopTime
        ? 'co-too-short'
        : 'co-time';
  const up = turns !== null && turns > 1;
  return {
    applies: up || (q.lead !== null && q.lead >= COARSE_LEAD),
    figures: [
      figure('carriage', speed, 'mm/s'),
      figure('seconds', seconds, 's'),
      figure('screw-turns', turns, 'turns'),
      ...sides(q),
    ],
    cautions: time === 'co-too-short' ? [time] : [],
    notes: [...(time === 'co-too-short' ? [] : [time]), ...(up ? (['co-up'] as const) : [])],
  };
};

const reliefPlunge = (q: WayQuestion): Body => ({
  applies: q.job.ending === 'groove' || q.job.outwards,
  figures: [
    startGroove(q),
    ...(q.undercut
      ? [figure('groove-floor', q.undercut.floor), figure('groove-diameter', q.undercut.diameter)]
      : []),
  ],
  cautions: [],
  notes: [],
});

/** A chuck that is screwed on can unscrew when the spindle is reversed under load. */
export const fromChuck = (chuck: WayQuestion['chuck']): FromChuck =>
  chuck === null ? 'unknown' : chuck === 'locked' ? 'locked' : 'never';

const fromTheChuck = (q: WayQuestion): Body => {
  const verdict = fromChuck(q.chuck);
  const applies = q.job.outwards || q.job.ending === 'groove';
  if (verdict === 'never') return { applies, figures: [], cautions: ['fc-never'], notes: [], never: true };
  return {
    applies,
    figures: [startGroove(q)],
    cautions: verdict === 'unknown' ? ['fc-unknown'] : [],
    notes: verdict === 'locked' ? ['fc-locked'] : [],
  };
};

const BODIES: Readonly<Record<WayId, (q: WayQuestion) => Body>> = {
  'left-hand': leftHand,
  internal,
  'multi-start': multiStart,
  taper,
  worm,
  coarse,
  'relief-plunge': reliefPlunge,
  'from-the-chuck': fromTheChuck,
};

/** Every way, those that the job is come first. */
export const waysFor = (q: WayQuestion): readonly Way[] => {
  const all = WAY_IDS.map((id): Way => ({ id, ...BODIES[id](q) }));
  return [...all.filter((w) => w.applies), ...all.filter((w) => !w.applies)];
};
