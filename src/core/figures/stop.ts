import { topAngle } from '../cut/handwheels';
import { coastTravel, highestIn, stopRoom as roomAt, type StopAsks } from '../cut/stop';
import type { InputPath } from '../context';
import type { Job } from '../job';
import { inBase, leadHigh, mul, ratio, sub, toNumber, type Ratio } from '../quantity';
import { basicSizes, type Thread } from '../thread';
import { bothAngles } from '../thread/groove';
import { toolForm } from '../thread/tool';
import { threadRunOut } from '../thread/ends';
import { define, withheld } from './define';
import { ROOM_READS } from './room-from';
import { inMm } from './thread';
import { approx, exact, type Term } from './why';

const ASKED: Readonly<Record<StopAsks, InputPath>> = {
  groove: 'job.groove',
  gap: 'job.gap',
  shoulder: 'job.shoulder',
};

/** How much deeper the tool goes than from the nominal crest, since the blank is as it was measured; mm. */
const blankExcess = (thread: Thread, side: Job['side'], blank: Ratio | null): number => {
  const sizes = basicSizes(thread);
  if (!sizes || !blank) return 0;
  const crest = inMm(side === 'external' ? sizes.major : sizes.minor, sizes.unit);
  return toNumber(side === 'external' ? sub(blank, crest) : sub(crest, blank)) / 2;
};

/**
 * The usable stopping room for this tool, infeed and ending: null while something it needs isn't known. By turns along
 * both flanks the tip never stands further along than the finished groove's own flank, so that infeed has no creep.
 */
export const stopRoom = define({
  reads: ROOM_READS,
  uses: ['chosen', 'pitch', 'depth'],
  rule: 1,
  compute: (ask) => {
    const chosen = ask.figure('chosen');
    const pitch = ask.figure('pitch');
    const depth = ask.figure('depth');
    const thread = chosen.value?.thread;
    const infeed = ask.input('job.infeed');
    const topSlide = ask.input('job.topSlide');
    const topScale = ask.input('machine.topScale');
    const byTop = infeed === 'flank' || infeed === 'modified-flank';
    const outwards = ask.input('job.outwards');
    const ending = ask.input('job.ending') ?? (outwards ? 'through' : null);
    const missing: InputPath[] = [
      ...depth.missing,
      ...(ending ? [] : (['job.ending'] as const)),
      ...(infeed ? [] : (['job.infeed'] as const)),
      ...(byTop && !topSlide ? (['job.topSlide'] as const) : []),
      ...(byTop && !topScale ? (['machine.topScale'] as const) : []),
    ];
    const no = (more: readonly InputPath[], notes: readonly string[] = []) =>
      withheld('stopRoom', 'stop-room', [...missing, ...more], {}, notes);
    if (!thread || !pitch.value) return no(chosen.missing, chosen.value ? ['no-diameter'] : []);
    if (depth.value === null && depth.missing.length === 0) return no([], depth.why.notes);
    const { groove, gap, shoulder, blank } = {
      groove: ask.input('job.groove'),
      gap: ask.input('job.gap'),
      shoulder: ask.input('job.shoulder'),
      blank: ask.input('job.blank'),
    };
    const side = ask.input('job.side');
    const place = {
      ending: ending ?? 'groove',
      outwards,
      groove: groove && inBase(groove),
      gap: gap && inBase(gap),
      shoulder: shoulder && inBase(shoulder),
      depth: (depth.value ?? 1) + blankExcess(thread, side, blank && inBase(blank)),
      half: toolForm(thread, side).half,
      infeed: byTop ? (topAngle({ topScale }, { topSlide }) ?? 0) : 0,
      pitch: pitch.value,
    };
    // Steeper than the flank behind it the tool would cut that flank away: the scale was read the other way.
    if (place.infeed > bothAngles(place.half).trailing + 0.01) return no([], ['stop-angle']);
    const answer = roomAt(place);
    if (!answer.ok && 'refusal' in answer) return no([], [`stop-${answer.refusal}`]);
    // Before the ending is known it isn't known either what of the rest would be asked.
    const asked = answer.ok || !ending ? [] : answer.missing.map((x) => ASKED[x]);
    if (!answer.ok || missing.length > 0) return no(asked);
    const { room } = answer;
    const whole = room.from === 'groove' ? groove : gap;
    const terms: Record<string, Term> = {
      whole:
        room.from === 'run-out' || !whole
          ? { amount: exact(threadRunOut(leadHigh(pitch.value), 'normal'), 'mm'), from: 'table' }
          : {
              amount: exact(whole.value, whole.unit),
              from: ASKED[room.from === 'groove' ? 'groove' : 'gap'],
            },
      tool: { amount: approx(room.tool, 'mm'), from: 'depth' },
      creep: { amount: approx(room.creep, 'mm'), from: 'job.infeed' },
      margin: { amount: approx(room.margin, 'mm'), from: 'constant' },
    };
    return {
      value: { place, room },
      standing: room.usable ? null : 'over',
      missing: [],
      why: {
        formula: 'stopRoom',
        terms,
        result: exact(room.usable ?? ratio(0), 'mm'),
        source: room.from === 'run-out' ? 'stop-fades' : 'stop-room',
        notes: [
          ...(room.usable ? [] : ['stop-nothing']),
          ...(side === 'internal' ? ['stop-inside'] : []),
          'stop-full-depth',
        ],
      },
    };
  },
});

/** Highest whole rpm at which the travel of the whole time, with its factor, stays in that room. */
export const stopSpeed = define({
  reads: ['machine.wholeStopTime', 'machine.safetyFactor'],
  uses: ['stopRoom', 'lead'],
  rule: 1,
  compute: (ask) => {
    const room = ask.figure('stopRoom');
    const lead = ask.figure('lead');
    const time = ask.input('machine.wholeStopTime');
    const factor = ask.input('machine.safetyFactor');
    const usable = room.value && (room.value.room.usable ?? ratio(0));
    const terms: Record<string, Term> = {
      room: { amount: usable && exact(usable, 'mm'), from: 'stopRoom' },
      lead: { amount: lead.value && exact(lead.value.mm, 'mm', lead.value.pi), from: 'lead' },
      time: { amount: time && exact(time.value, time.unit), from: 'machine.wholeStopTime' },
      factor: { amount: factor && exact(factor.value, factor.unit), from: 'machine.safetyFactor' },
    };
    const missing: InputPath[] = [
      ...room.missing,
      ...lead.missing,
      ...(time ? [] : (['machine.wholeStopTime'] as const)),
      ...(factor ? [] : (['machine.safetyFactor'] as const)),
    ];
    if (!room.value || !lead.value || !time || !factor)
      return withheld('stopSpeed', 'stopping', missing, terms, room.missing.length ? [] : room.why.notes);
    const value = highestIn(room.value.room.usable, lead.value, inBase(time), inBase(factor));
    const result = exact(ratio(value), 'rpm');
    return {
      value,
      standing: value > 0n ? null : 'over',
      missing: [],
      why: { formula: 'stopSpeed', terms, result, source: 'stopping', notes: [] },
    };
  },
});

/** How far a live drive takes the carriage while the spindle coasts, mm. Own derivation. */
export const coasting = define({
  reads: ['machine.coast'],
  uses: ['lead'],
  rule: 1,
  compute: (ask) => {
    const lead = ask.figure('lead');
    const turns = ask.input('machine.coast');
    const terms: Record<string, Term> = {
      turns: { amount: turns && exact(turns.value, turns.unit), from: 'machine.coast' },
      lead: { amount: lead.value && exact(lead.value.mm, 'mm', lead.value.pi), from: 'lead' },
    };
    const missing: InputPath[] = [...lead.missing, ...(turns ? [] : (['machine.coast'] as const))];
    if (!lead.value || !turns) return withheld('coasting', 'coasting', missing, terms);
    const value = coastTravel(lead.value, inBase(turns));
    return {
      value,
      standing: null,
      missing: [],
      why: {
        formula: 'coasting',
        terms,
        result: exact(mul(lead.value.mm, inBase(turns)), 'mm', lead.value.pi),
        source: 'coasting',
        notes: ['coasting'],
      },
    };
  },
});
