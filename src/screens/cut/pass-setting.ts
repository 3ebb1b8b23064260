import { html, nothing } from 'lit';
import type { DialSetting, PlannedPass } from '../../core/cut/pass';
import { fromBase, inBase, ratio } from '../../core/quantity';
import type { Run } from '../../core/run';
import { decimal, statedText } from '../../text/numbers';
import { runText as t } from '../../text/run';
import type { App } from '../../state';

const MINUS = '−';

/** Whole turns and the divisions past them: "2 turns 36 divisions". */
export const turnsText = (d: DialSetting): string => {
  const sign = d.divisions < 0 ? MINUS : '';
  const [turns, past] = [Math.abs(d.turns ?? 0), Math.abs(d.turns ? d.past : d.divisions)];
  const rest = `${past} ${t.divisions(past)}`;
  return sign + (turns > 0 ? `${turns} ${t.turns(turns)} ${rest}` : rest);
};

/** Both slides of a pass in words, for a question about it. */
export const settingText = (pass: PlannedPass): string =>
  [
    pass.cross ? `${t.cross} ${turnsText(pass.cross)}, ${statedText(pass.cross.reading)}` : '',
    pass.top ? `${t.top()} ${turnsText(pass.top)}, ${statedText(pass.top.reading)}` : '',
  ]
    .filter(Boolean)
    .join('; ');

/** A depth in the unit of the dials, as fine as they are read. @param mm a reckoned depth, shown and nothing else */
export const depthText = (mm: number, pass: PlannedPass | null): string => {
  const unit = (pass?.cross ?? pass?.top)?.reading.unit === 'in' ? 'in' : 'mm';
  const um = ratio(BigInt(Math.round(mm * 1000)), 1000n);
  return `${decimal(fromBase(inBase({ value: um, unit: 'mm' }), unit), unit === 'in' ? 4 : 2)}\u00a0${unit}`;
};

const big = (d: DialSetting, size: string) => {
  const sign = d.divisions < 0 ? MINUS : '';
  const turns = Math.abs(d.turns ?? 0);
  const past = Math.abs(d.turns ? d.past : d.divisions);
  return html`<p class="set">
    ${
      turns > 0
        ? html`<span
            ><span class=${size}>${sign}${turns}</span> <span class="unit">${t.turns(turns)}</span></span
          > `
        : nothing
    }<span
      ><span class=${size}>${turns > 0 ? '' : sign}${past}</span>
      <span class="unit">${t.divisions(past)}</span></span
    >
  </p>`;
};

const dial = (d: DialSetting, name: string, reads: string, size: string) => html`
  <section class="dial" aria-label=${name}>
    <p class="label">${name}</p>
    ${big(d, size)}
    <p><span class="figure">${statedText(d.reading)}</span> <strong class="reads">${reads}</strong></p>
  </section>
`;

/** Which handwheel and what setting, large. With both slides to set they share the page's height. */
export const setting = (app: App, run: Run, pass: PlannedPass) => {
  const { cross, top } = pass;
  const reads = app.profile?.crossReads;
  const size = cross && top ? 'deciding' : 'huge';
  const internal = run.job.side === 'internal';
  return html`
    ${pass.kind === 'spring' ? html`<p class="spring"><strong>${t.spring}</strong></p>` : nothing}
    ${cross ? dial(cross, internal ? `${t.cross} · ${t.outward}` : t.cross, reads ? t.reads[reads] : t.readsUnknown, size) : nothing}
    ${top ? dial(top, t.top(), t.along, size) : nothing}
    ${top && !cross ? html`<p class="figure">${t.crossBack}</p>` : nothing}
    ${!cross && !top ? html`<p class="unknown">${t.notMoved}</p>` : nothing}
  `;
};
