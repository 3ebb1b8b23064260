import { html, nothing, css, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/row';
import { SCALE, type Use } from '../../core/drive/formats';
import { errorOver, heldDetail, SHOWN_LENGTHS, type HeldDetail } from '../../core/figures/held-detail';
import type { HeldJudgement } from '../../core/figures/held-judged';
import { inBase, ratioText, toNumber } from '../../core/quantity';
import { heldText as t } from '../../text/held';
import { choiceLabel, choiceNote } from '../../text/machine';
import { mark, significant, statedText, whole } from '../../text/numbers';
import { pathLabel } from '../../text/paths';
import { standingWord } from '../../text/standing';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { heldScale } from './held-scale';
import { scaleStyles } from '../../elements/scale-styles';

const USES: readonly Use[] = ['fastener', 'leadscrew', 'worm'];

/** How the controller holds the ratio of this thread, what its error comes to, and whether that is good enough. */
@customElement('ls-held')
export class HeldScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    scaleStyles,
    css`
      .mine {
        border: 3px solid var(--ink);
        padding-inline: 8px;
      }
    `,
  ];

  private readonly error = (um: number): { value: string; unit: string } => {
    const inch = this.app.settings.units === 'in';
    const large = !inch && Math.abs(um) >= 1000;
    const x = inch ? um / 25_400 : large ? um / 1000 : um;
    const places = inch ? 6 : large ? 2 : Math.abs(um) < 1 ? 3 : Math.abs(um) < 100 ? 1 : 0;
    const text = x.toFixed(places).replace(/^-(?=[0.]*$)/, '');
    return { value: text.replace('-', '−').replace('.', mark()), unit: inch ? 'in' : large ? 'mm' : 'µm' };
  };

  private length(mm: number): string {
    const inch = this.app.settings.units === 'in';
    return inch ? `${significant(mm / 25.4, 3)}\u00a0in` : `${significant(mm, 3)}\u00a0mm`;
  }

  private ratios(d: HeldDetail) {
    const { ratio } = d.chain;
    const standing = this.app.sheet.get('ratioHeld').standing ?? 'unknown';
    const bits = d.format.kind.startsWith('fixed') && 'bits' in d.format ? d.format.bits : null;
    const h = d.holding.ratio;
    const held =
      bits === null
        ? `${h.n}${h.d}`.length > 14
          ? `≈ ${significant(toNumber(h), 10)}`
          : ratioText(h)
        : `${(h.n << BigInt(bits)) / h.d}/2^${bits}`;
    return html`<div>
      <ls-row
        .label=${t.exactRatio}
        .value=${ratio.pi ? `π × ${ratioText(ratio.mm)}` : ratioText(ratio.mm)}
        why="Why"
        figure="stepsPerCount"
      ></ls-row>
      <ls-row
        .label=${t.holds}
        .value=${held}
        .standing=${standing}
        .word=${standingWord[standing]}
        why="Why"
        figure="ratioHeld"
      ></ls-row>
      <ls-row .label=${t.off} .value=${significant(d.holding.ppm, 4)} unit="ppm"></ls-row>
    </div>`;
  }

  private table(d: HeldDetail) {
    const { job } = this.app;
    const row = (label: string, mm: number): TemplateResult => {
      const e = errorOver(d.holding, d.chain, mm);
      const { value, unit } = this.error(e.um);
      const note = e.ppm === null ? t.withinRev : t.ppm(significant(e.ppm, 4));
      return html`<ls-row .label=${label} .value=${value} .unit=${unit} .note=${note}></ls-row>`;
    };
    return html`<h2>${t.comesTo}</h2>
      <div>
        ${SHOWN_LENGTHS.map((mm) => row(t.over(this.length(mm)), mm))}
        ${job.length ? row(t.thisThread(statedText(job.length)), toNumber(inBase(job.length))) : nothing}
      </div>
      <a class="key left" href="#/enter/job/length"
        >${job.length ? t.changeLength(statedText(job.length)) : t.enterLength}</a
      >`;
  }

  private adding(d: HeldDetail) {
    const { rpm } = this.app.job;
    const { ends } = d;
    const said = ends && (d.format.kind === 'float32' ? t.endsProduct : t.ends);
    const speed = rpm && toNumber(rpm);
    return html`<h2>${t.addsUp}</h2>
      <p>${t.grows(d.holding.grows)}</p>
      ${
        ends && said
          ? html`<p>
              ${said(whole(ends.counts), significant(ends.revs, 4))}
              ${speed ? t.minutes(significant(ends.revs / speed, 3), significant(speed, 4)) : nothing}
            </p>`
          : nothing
      }`;
  }

  private useKeys(judged: HeldJudgement) {
    const { job } = this.app;
    return html`<h2>${t.use}</h2>
      <div class="keys" role="group" aria-label=${t.use}>
        ${USES.map(
          (use) =>
            html`<button
              class="key"
              aria-pressed=${job.use === use}
              @click=${() => void this.app.jobs.change({ use: job.use === use ? null : use })}
            >
              ${t.uses[use]}
            </button>`,
        )}
      </div>
      ${job.use === null ? html`<p class="note">${t.useHelp}</p>` : nothing}
      ${job.use === 'fastener' && judged.as !== 'fastener' ? html`<p>${t.noTolerance}</p>` : nothing}`;
  }

  private judged(j: HeldJudgement) {
    const standing = this.app.sheet.get('ratioHeld').standing ?? 'unknown';
    const off = this.error(j.um);
    const allowed = this.error(j.allowed);
    const diameter = j.diameter === null ? null : this.error(j.diameter);
    return html`<div>
      <ls-row
        .label=${t.errorThere(this.length(j.length))}
        .value=${off.value}
        .unit=${off.unit}
        .standing=${standing}
        .word=${standingWord[standing]}
        why="Why"
        figure="ratioHeld"
      ></ls-row>
      <ls-row
        .label=${t.allowed}
        .value=${allowed.value}
        .unit=${allowed.unit}
        .note=${j.as === 'fastener' ? t.allowedFastener(this.length(j.length)) : t.allowedFinest}
      ></ls-row>
      ${
        diameter
          ? html`<ls-row
              .label=${t.diameter(this.app.job.side === 'external')}
              .value=${diameter.value}
              .unit=${diameter.unit}
              .note=${t.diameterNote}
            ></ls-row>`
          : nothing
      }
    </div>`;
  }

  private picking(j: HeldJudgement) {
    if (this.app.profile?.halfNut === 'always-closed') return nothing;
    const shift = this.error(Math.abs(j.shift));
    const over = Math.abs(j.shift) > j.allowed;
    const standing = over ? 'over' : 'within';
    return html`<h2>${t.pickingUp}</h2>
      <div>
        <ls-row
          .label=${t.moved}
          .value=${shift.value}
          .unit=${shift.unit}
          .standing=${standing}
          .word=${standingWord[standing]}
          .note=${t.estimate(whole(j.passes), whole(j.cycle))}
        ></ls-row>
      </div>
      ${over ? html`<p>${t.keepClosed}</p>` : nothing}`;
  }

  private scale(ppm: number) {
    const mine = html`<div class="mine">
      <ls-row .label=${t.thisRatio} .value=${significant(ppm, 3)} unit="ppm"></ls-row>
    </div>`;
    const at = SCALE.findIndex((m) => m.ppm > ppm);
    const place = at < 0 ? SCALE.length : at;
    return html`<h2>${t.compare}</h2>
      ${heldScale(ppm, SCALE, t.scale(significant(ppm, 3)))}
      <div>
        ${SCALE.map(
          (m, i) =>
            html`${i === place ? mine : nothing}<ls-row
                .label=${t.measure(m)}
                .value=${significant(m.ppm, 3)}
                unit="ppm"
                .note=${t.source(m)}
              ></ls-row>`,
        )}
        ${place === SCALE.length ? mine : nothing}
      </div>`;
  }

  /** What has to be entered before anything can be said. */
  private missing() {
    return html`<div class="stack">
      ${this.app.sheet
        .get('ratioHeld')
        .missing.filter((path) => path.startsWith('machine.'))
        .map(
          (path) =>
            html`<a class="key left" href="#/machine/field/${path.slice(8)}">${t.enter(pathLabel(path))}</a>`,
        )}
    </div>`;
  }

  override render() {
    const m = this.app.profile;
    const held = this.app.sheet.get('ratioHeld');
    const d = heldDetail(this.app.sheet);
    const judged = held.value?.judged ?? null;
    const gears = m?.driveKind === 'change-gears';
    return html`
      <h1>${t.title}</h1>
      ${
        m?.ratioHeld && !gears
          ? html`<p class="figure">${choiceLabel('ratioHeld', m.ratioHeld)}</p>
              <p>${choiceNote('ratioHeld', m.ratioHeld)}</p>`
          : nothing
      }
      ${
        d && judged
          ? html`${this.ratios(d)} ${this.table(d)} ${this.adding(d)} ${this.useKeys(judged)}
            ${this.judged(judged)} ${d.holding.exact ? nothing : this.picking(judged)}
            ${this.scale(Math.abs(held.value?.ppm ?? 0))}`
          : html`<p class="alert">
                ${gears ? t.gears : m?.ratioHeld === 'rate' ? t.rate : held.standing === 'over' ? t.nothingHeld : t.entered}
              </p>
              ${this.missing()}`
      }
      ${links(mistakeLinksAt('threads/held'))}
      <a class="key left" href="#/machine/field/ratioHeld">${t.change}</a>
      <a class="key" href="#/threads">${t.back}</a>
    `;
  }
}
