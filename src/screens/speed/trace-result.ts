import { html, nothing } from 'lit';
import '../../elements/row';
import '../../elements/standing';
import '../../elements/trace-plot';
import type { Standing } from '../../core/figures';
import type { TraceVerdict } from '../../core/figures/trace';
import type { TraceResult } from '../../core/drive/trace';
import { standingWord } from '../../text/standing';
import { traceText as t } from '../../text/trace';

/** How errors (mm in, micrometres or thousandths out) and lengths along the thread are written. */
export interface TraceUnits {
  readonly unit: string;
  readonly error: (mm: number) => string;
  readonly errorText: (mm: number) => string;
  readonly length: (mm: number) => string;
}

const STATIONS = 10;

const row = (u: TraceUnits, label: string, mm: number, note: string, standing: Standing | '' = '') =>
  html`<ls-row
    .label=${label}
    .value=${u.error(mm)}
    .unit=${u.unit}
    .note=${note}
    .standing=${standing}
    .word=${standing ? standingWord[standing] : ''}
  ></ls-row>`;

const plot = (r: TraceResult, u: TraceUnits, length: number) => {
  const off = (all: Float64Array): Float64Array => all.map((e) => e - r.zero);
  const shape = { min: off(r.buckets.min), max: off(r.buckets.max), mean: off(r.buckets.mean) };
  const low = shape.min.reduce((a, b) => Math.min(a, b), 0);
  const high = shape.max.reduce((a, b) => Math.max(a, b), 0);
  const room = Math.max(high - low, 1e-6) * 0.05;
  const [top, bottom] = [high + room, low - room];
  return html`<h2 class="label">${t.plotLabel}</h2>
    <ls-trace-plot
      .shape=${shape}
      .high=${top}
      .low=${bottom}
      .top=${`+${u.errorText(top)}`}
      .bottom=${u.errorText(bottom)}
      .end=${u.length(length)}
      .text=${t.plot(u.errorText(low), u.errorText(high), u.length(length))}
    ></ls-trace-plot>
    <p class="note">${t.plotNote}</p>`;
};

/** The drawing in figures: the mean error at ten places. */
const table = (r: TraceResult, u: TraceUnits) => {
  const { count, mean, width } = r.buckets;
  const places = Array.from({ length: Math.min(STATIONS, count) }, (_, i) =>
    Math.floor(((i + 0.5) * count) / Math.min(STATIONS, count)),
  );
  return html`<details>
    <summary>${t.table}</summary>
    ${places.map((at) => row(u, t.at(u.length((at + 0.5) * width * r.sector)), (mean[at] ?? 0) - r.zero, ''))}
  </details>`;
};

const lost = (r: TraceResult, standing: Standing) => {
  const { output, motor, missed, extra } = r.lost;
  const lines = [
    output ? t.lostOutput(`${output}`) : '',
    motor ? t.lostMotor(`${Math.abs(motor)}`) : '',
    missed || extra ? t.lostCounts(`${missed}`, `${extra}`) : '',
  ].filter(Boolean);
  return html`<ls-row
    .label=${t.lost}
    .value=${lines.length ? '' : t.lostNone}
    .note=${lines.join('; ')}
    .standing=${standing}
    .word=${standingWord[standing]}
  ></ls-row>`;
};

/** On figures that nobody measured nothing is fine; what is too much already is said all the same. */
const withAssumed = (v: TraceVerdict, assumed: number): TraceVerdict => {
  const soft = (s: Standing): Standing => (assumed > 0 && s !== 'over' ? 'unknown' : s);
  return { ...v, nut: soft(v.nut), over60: soft(v.over60), over300: soft(v.over300), lost: soft(v.lost) };
};

/** What a run shows: what the nut feels first, then the drawing, then every figure with its limit. */
export const traceResult = (
  r: TraceResult,
  judged: TraceVerdict,
  u: TraceUnits,
  length: number,
  assumed: number,
) => {
  const v = withAssumed(judged, assumed);
  const tolerance = v.tolerance === null ? null : u.errorText(v.tolerance);
  const between = r.between * r.sector * 32;
  const ppm = between > 0 ? Math.round((r.cumulative / between) * 1e6) : 0;
  return html`<div class="hair" role="status">
      <ls-standing
        .standing=${v.nut}
        .word=${v.nut === judged.nut ? standingWord[v.nut] : t.onlyIf(standingWord[judged.nut], assumed)}
      ></ls-standing>
      <p class="label">${v.shift === null ? t.nutAlone : t.shift()}</p>
      <p><span class="deciding">${u.error(v.shift ?? r.nut)}</span> <span class="unit">${u.unit}</span></p>
      ${v.shift === null ? nothing : html`<p class="note">${t.shiftNote(u.errorText(r.nut), tolerance)}</p>`}
    </div>
    ${plot(r, u, length)}
    <div>
      ${lost(r, v.lost)} ${row(u, t.spread, r.spread, t.spreadNote)}
      ${row(u, t.cumulative, r.cumulative, t.cumulativeNote(`${ppm}`.replace('-', '−'), u.length(between)))}
      ${
        r.drunkenness === null
          ? html`<ls-row .label=${t.drunken} .value=${t.singleTurn}></ls-row>`
          : row(u, t.drunken, r.drunkenness, t.drunkenNote)
      }
      ${row(u, t.over60, r.over60, t.over60Note, v.over60)}
      ${length > 60 ? row(u, t.over300, r.over300, t.over300Note, v.over300) : nothing}
      ${row(u, t.lag, r.lag, t.lagNote(u.errorText(r.lag / 10)))}
    </div>
    ${table(r, u)}`;
};
