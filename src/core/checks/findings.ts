import type { InputPath } from '../context';
import { rampCovers, worst, type FigureId, type LimitId, type Sheet, type Standing } from '../figures';
import { compare, leadHigh, type Ratio } from '../quantity';
import { stopsNow } from '../prove/stops';
import type { Finding, FindingCode } from './item';

export const finding = (
  standing: Standing,
  why: FindingCode,
  more: { figure?: FigureId; limit?: LimitId | null; missing?: readonly InputPath[] } = {},
): Finding => ({
  standing,
  why,
  figure: more.figure ?? null,
  limit: more.limit ?? null,
  missing: [...new Set(more.missing ?? [])],
});

const unknown = (figure: FigureId, missing: readonly InputPath[]): Finding =>
  finding('unknown', missing.length > 0 ? 'inputs-missing' : 'not-reckoned', { figure, missing });

/** The controller holds the ratio exactly, closely, or not closely enough. */
export const ratioIsHeld = (sheet: Sheet): Finding => {
  const f = sheet.get('ratioHeld');
  if (f.standing === 'over') return finding('over', 'ratio-off', { figure: 'ratioHeld' });
  if (!f.value || !f.standing) return unknown('ratioHeld', f.missing);
  return finding(f.standing, f.value.exact ? 'ratio-exact' : 'ratio-close', { figure: 'ratioHeld' });
};

/** Travel per spindle rev is known: starts × pitch. */
export const leadIsKnown = (sheet: Sheet): Finding => {
  const f = sheet.get('lead');
  return f.value ? finding('within', 'lead-known', { figure: 'lead' }) : unknown('lead', f.missing);
};

/** Where the half-nut may be closed again is known, and can be shown; as close as what an inexact ratio leaves to it. */
export const nutRuleIsKnown = (sheet: Sheet): Finding => {
  const f = sheet.get('nutRule');
  return f.value
    ? finding(f.standing ?? 'within', 'nut-rule-known', { figure: 'nutRule' })
    : unknown('nutRule', f.missing);
};

export const speedIsChosen = (sheet: Sheet): Finding =>
  sheet.inputs.job.rpm
    ? finding('within', 'speed-chosen', { figure: 'speed' })
    : finding('unknown', 'inputs-missing', { figure: 'speed', missing: ['job.rpm'] });

const WHY: Record<Standing, FindingCode> = {
  within: 'limits-kept',
  near: 'limits-close',
  over: 'limits-broken',
  unknown: 'limits-not-known',
};

/** How some of the limits on speed stand at the speed set. */
export const limitsAtSpeed =
  (which: 'drive' | readonly LimitId[]) =>
  (sheet: Sheet): Finding => {
    const verdict = sheet.get('speed').value;
    const all = (verdict?.atSet ?? []).filter((x) =>
      which === 'drive' ? x.limit.side === 'drive' : which.includes(x.limit.id),
    );
    if (!sheet.inputs.job.rpm)
      return finding('unknown', 'inputs-missing', { figure: 'speed', missing: ['job.rpm'] });
    const standing = worst(all.map((x) => x.standing));
    const limit = all.find((x) => x.standing === standing)?.limit.id ?? null;
    const missing = all.flatMap((x) => (x.standing === 'unknown' ? x.limit.missing : []));
    return finding(standing, WHY[standing], { figure: 'speed', limit, missing });
  };

/**
 * How the machine's stop is arranged has to be known, and there has to be one that takes power away: an emergency stop
 * is of category 0 or 1 (IEC 60204-1, 9.2). One that only asks the controller is none; one that only takes the enable
 * away is close at best, since many drives are enabled by an open input.
 */
export const stopIsFitted = ({ inputs: { machine } }: Sheet): Finding => {
  switch (machine.stopCuts) {
    case null:
      return finding('unknown', 'inputs-missing', { missing: ['machine.stopCuts'] });
    case 'none':
      return finding('over', 'no-stop-fitted');
    case 'input':
      return finding('over', 'stop-by-software');
    case 'enable':
      return finding('near', 'stop-by-enable');
    case 'power-drive':
    case 'power-both':
    case 'drive-sto':
      return finding('within', 'stop-fitted');
  }
};

const STOP_WHY: Readonly<Record<Standing, FindingCode>> = {
  within: 'stop-tests-recorded',
  near: 'stop-tests-close',
  over: 'stop-tests-failed',
  unknown: 'stop-tests-due',
};

/**
 * The stop's own tests, by their records, and what the stop can do as it is described: one that can't stop by itself is
 * over whatever was recorded, and what isn't known or was not tested since leaves it unknown.
 */
export const stopIsTested = ({ inputs }: Sheet): Finding => {
  const { standing, arrangement } = stopsNow(inputs);
  if (arrangement === 'over') return finding('over', 'stop-inadequate');
  if (standing === 'unknown' && arrangement === 'unknown') return finding('unknown', 'stop-not-described');
  return finding(standing, STOP_WHY[standing]);
};

/** With nothing that gives between motor and screw the item can be recorded, but never stands better than close. */
export const overloadIsKnown = ({ inputs: { machine } }: Sheet): Finding => {
  if (!machine.overload) return finding('unknown', 'inputs-missing', { missing: ['machine.overload'] });
  return machine.overload === 'none'
    ? finding('near', 'no-overload-fitted')
    : finding('within', 'overload-fitted');
};

/** What the ramp test has to cover: this lead, at the speed set. */
const wanted = (sheet: Sheet): { rpm: Ratio; lead: Ratio } | readonly InputPath[] => {
  const lead = sheet.get('lead');
  const rpm = sheet.inputs.job.rpm;
  if (lead.value && rpm) return { rpm, lead: leadHigh(lead.value) };
  return [...lead.missing, ...(rpm ? [] : (['job.rpm'] as const))];
};

/** Judges a speed the ramp test reached. Before it is recorded, the lead it is made at is the job's own. */
export const judgeRamp = (reading: Ratio, sheet: Sheet, recorded: boolean): Finding => {
  const want = wanted(sheet);
  if (!('rpm' in want)) return finding('unknown', 'inputs-missing', { figure: 'lead', missing: want });
  if (recorded && !rampCovers(sheet.inputs, want.lead))
    return finding('unknown', 'ramp-lead-larger', { figure: 'lead' });
  return compare(want.rpm, reading) > 0
    ? finding('over', 'ramp-below-speed', { figure: 'speed' })
    : finding('within', 'ramp-covers', { figure: 'speed' });
};

/** A current ramp test at this lead and speed answers for what it has shown to hold. */
export const rampAnswers = (sheet: Sheet): Finding | null => {
  const want = wanted(sheet);
  const reached = 'rpm' in want ? rampCovers(sheet.inputs, want.lead) : null;
  return reached && 'rpm' in want && compare(want.rpm, reached) <= 0
    ? finding('within', 'ramp-covers', { figure: 'speed' })
    : null;
};
