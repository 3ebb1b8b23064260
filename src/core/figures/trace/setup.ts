import type { InputPath } from '../../context';
import type { Sheet } from '../define';
import type { Job } from '../../job';
import type { MachineProfile } from '../../machine';
import {
  add,
  div,
  inBase,
  leadNumber,
  mul,
  PI_HIGH,
  PI_LOW,
  ratio,
  read,
  stated,
  toNumber,
  type Lead,
  type Stated,
} from '../../quantity';
import { basicSizes } from '../../thread/forms';
import { bestFraction } from '../../drive';
import type { Format } from '../../drive/formats';
import { TRACE_FIGURES, type TraceKey } from './figures';
import { formatSpec, fractionSpec } from '../../drive/trace/held';
import {
  NOTHING,
  type FormatSpec,
  type IngredientName,
  type Ingredients,
  type MotorSpec,
  type TraceSpec,
} from '../../drive/trace';

/** Where a figure was had. `rule`: reckoned by a customary rule from the thread; `assumed`: nobody's figure. */
export type Origin = 'entered' | 'machine' | 'job' | 'rule' | 'assumed';
export interface Had {
  readonly value: Stated;
  readonly from: Origin;
}

/** Number formats offered where the machine's own isn't recorded, or to try another. */
export const FORMATS = ['own', 'exact', 'decimal', 'fixed', 'float32', 'float32-sum', 'rev-count'] as const;
export type FormatChoice = (typeof FORMATS)[number];
const FORMAT: Readonly<Record<Exclude<FormatChoice, 'own' | 'exact'>, Format>> = {
  decimal: { kind: 'decimal', digits: 3 },
  fixed: { kind: 'fixed-truncated', bits: 16 },
  float32: { kind: 'float32' },
  'float32-sum': { kind: 'float32-sum' },
  'rev-count': { kind: 'rev-count' },
};

export interface TraceSource {
  readonly sheet: Sheet;
  readonly profile: MachineProfile;
  readonly job: Job;
  readonly entered: (key: TraceKey) => Stated | null;
  readonly format: FormatChoice;
  readonly afterReversal: boolean;
}

const mm = (x: number): Stated => stated(ratio(BigInt(Math.round(x * 1000)), 1000n), 'mm');

/** Run-in of three leads (shop minimum, common practice); a nut 0.8 d high (near ISO 4032), else six pitches. */
const byRule = (key: TraceKey, s: TraceSource): Stated | null => {
  const lead = s.sheet.get('lead').value;
  if (!lead) return null;
  if (key === 'trace.runIn') return mm(3 * leadNumber(lead));
  if (key !== 'trace.engagement') return null;
  const thread = s.sheet.get('chosen').value?.thread;
  const sizes = thread && basicSizes(thread);
  if (!sizes) return mm((6 * leadNumber(lead)) / s.job.starts);
  return mm(0.8 * toNumber(inBase(stated(sizes.major, sizes.unit))));
};

const ofMachine = (key: TraceKey, m: MachineProfile): Stated | null =>
  key === 'trace.rate' ? m.controllerMaxSteps : key === 'trace.play' ? m.backlash : null;

/** A figure of the model: entered, else the machine's, else by rule, else assumed; null where there is none. */
export const figureOf = (key: TraceKey, s: TraceSource): Had | null => {
  const entered = s.entered(key);
  if (entered) return { value: entered, from: 'entered' };
  const machine = ofMachine(key, s.profile);
  if (machine) return { value: machine, from: 'machine' };
  const rule = byRule(key, s);
  if (rule) return { value: rule, from: 'rule' };
  const { assumed, field } = TRACE_FIGURES[key];
  const value = assumed === null ? null : read(assumed);
  const [unit] = field.units;
  return value?.ok && unit ? { value: stated(value.value, unit), from: 'assumed' } : null;
};

const rational = (r: Lead) => (r.pi ? mul(r.mm, div(add(PI_LOW, PI_HIGH), 2)) : r.mm);
/** π is taken as the nearest fraction with parts below this: better than 1e-9 of a ppm. */
const PARTS = 1n << 40n;

/** The ratio without error, for the model. null where no whole numbers that it can add up are near enough. */
const exactOf = (r: Lead): { top: number; bottom: number } | null => {
  const own = r.pi ? null : fractionSpec(r.mm);
  if (own?.kind === 'fraction') return own;
  const best = bestFraction(rational(r), PARTS, PARTS);
  return best && { top: Number(best.top), bottom: Number(best.bottom) };
};

const formatOf = (s: TraceSource): FormatSpec | null => {
  const r = s.sheet.get('stepsPerCount').value;
  const counts = s.sheet.get('countsPerRev').value;
  if (!r || !counts || s.format === 'exact') return null;
  if (s.format !== 'own') return formatSpec(FORMAT[s.format], r, counts);
  const held = s.sheet.get('ratioHeld').value?.held;
  return held ? fractionSpec(ratio(held.top, held.bottom)) : null;
};

/** What each ingredient would be with the figures there are; null where one of them, or the machine's, is missing. */
export const ingredientsOf = (s: TraceSource): Ingredients => {
  const get = (key: TraceKey): number | null => {
    const had = figureOf(key, s);
    return had && toNumber(inBase(had.value));
  };
  const some = (key: TraceKey): number => get(key) ?? 0;
  const play = get('trace.play');
  const rampUp = get('trace.rampUp');
  const rate = some('trace.rate');
  const teeth = [s.profile.spindlePulley, s.profile.encoderPulley];
  return {
    ...NOTHING,
    ripple: { amount: some('trace.ripple'), perRev: some('trace.ripplePerRev') },
    ramp: { from: 0, seconds: some('trace.ramp') },
    dip: { drop: some('trace.dip'), seconds: some('trace.dipTime') },
    eccentricity: { offset: some('trace.offset'), radius: some('trace.radius'), perRev: 1 },
    // Only where all four edges of a line are counted does the second channel's place matter.
    phase:
      s.profile.edgesPerLine && toNumber(s.profile.edgesPerLine.value) === 4 && teeth.every(Boolean)
        ? { degrees: some('trace.phase') }
        : null,
    miscounts: { missed: some('trace.missed'), extra: some('trace.extra') },
    format: formatOf(s),
    timing: { period: some('trace.period'), latency: some('trace.latency') },
    output: {
      rate,
      acceleration: rampUp === null ? null : rate / rampUp,
      full: s.profile.pulseTiming === 'spread' ? 'wait' : 'lose',
    },
    motor: motorOf(s, get),
    screw: { cyclic: some('trace.cyclic'), per300: some('trace.per300') },
    backlash: play === null ? null : { play, takenUp: !s.afterReversal },
  };
};

const motorOf = (s: TraceSource, get: (key: TraceKey) => number | null): MotorSpec | null => {
  const perRev = s.sheet.get('stepsPerMotorRev').value;
  if (!perRev || !s.profile.motorKind) return null;
  const rate = (rpm: number): number => (rpm / 60) * toNumber(perRev);
  if (s.profile.motorKind === 'servo') {
    const [torque, top] = [get('trace.torque'), s.profile.motorMaxRpm];
    const acceleration = torque && top ? rate(toNumber(top.value)) / torque : null;
    return { kind: 'servo', gain: 1 / (get('trace.lag') ?? 1), damping: 1, acceleration };
  }
  if (!s.profile.microsteps) return null;
  const corner = get('trace.corner');
  return {
    kind: 'stepper',
    natural: get('trace.natural') ?? 0,
    damping: get('trace.damping') ?? 0,
    fullStep: toNumber(s.profile.microsteps.value),
    corner: corner === null ? null : rate(corner),
    load: get('trace.load') ?? 0,
  };
};

export type Setup =
  | { readonly ok: true; readonly spec: TraceSpec }
  | { readonly ok: false; readonly missing: readonly InputPath[] };

/** The model of this job on this machine with the ingredients named; or what isn't known for it. */
export const setupTrace = (s: TraceSource, on: readonly IngredientName[]): Setup => {
  const figures = (['lead', 'screwLead', 'countsPerRev', 'stepsPerScrewRev', 'stepsPerCount'] as const).map(
    (id) => s.sheet.get(id),
  );
  const [lead, screwLead, counts, steps, r] = [
    s.sheet.get('lead').value,
    s.sheet.get('screwLead').value,
    s.sheet.get('countsPerRev').value,
    s.sheet.get('stepsPerScrewRev').value,
    s.sheet.get('stepsPerCount').value,
  ];
  const { rpm } = s.job;
  const exact = r && exactOf(r);
  if (!lead || !screwLead || !counts || !steps || !exact || !rpm) {
    const missing: InputPath[] = [
      ...figures.flatMap((f) => f.missing),
      ...(rpm ? [] : (['job.rpm'] as const)),
    ];
    return { ok: false, missing: [...new Set(missing)] };
  }
  const get = (key: TraceKey): number => {
    const had = figureOf(key, s);
    return had ? toNumber(inBase(had.value)) : 0;
  };
  const all = ingredientsOf(s);
  const chosen = Object.fromEntries(on.map((name) => [name, all[name]]));
  return {
    ok: true,
    spec: {
      job: {
        lead: leadNumber(lead),
        counts: toNumber(counts),
        steps: toNumber(steps),
        screwLead: toNumber(screwLead),
        rpm: toNumber(rpm),
        length: get('trace.length'),
        runIn: get('trace.runIn'),
        engagement: get('trace.engagement'),
      },
      exact: { top: exact.top, bottom: exact.bottom },
      with: { ...NOTHING, ...chosen },
      seed: 1,
    },
  };
};
