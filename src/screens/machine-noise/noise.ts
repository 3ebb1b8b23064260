import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import { standingSheet } from '../../elements/standing';
import { CALCULATIONS, SUMS, type NoiseGiven, type SumId } from '../../core/wiring/noise';
import { cautionOf, ladder, SYMPTOMS, type RemedyId, type Symptom } from '../../core/wiring/remedies';
import { anyNoise, clearNoise, noiseGiven } from '../../state/noise';
import {
  askList,
  cautionText,
  noiseCautions,
  noiseText as t,
  remedyText,
  sumText,
  symptomName,
} from '../../text/noise';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { standingLine, sumPage } from './sum';

/** What is worked out about a remedy. */
const WORKED: Partial<Record<RemedyId, SumId>> = {
  'input-filter': 'input',
  measure: 'supply',
  thicker: 'supply',
  'pull-up': 'pull-up',
  'low-pass': 'low-pass',
  differential: 'reach',
  clamp: 'common-mode',
};

/** Electrical noise: what to try for what is seen, and what can be worked out about cables and filters. */
@customElement('ls-noise')
export class NoiseScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    standingSheet,
    css`
      .alert {
        display: grid;
        gap: 8px;
        font-size: 1.375rem;
        font-weight: 700;
      }
      .stands {
        font-size: var(--t-figure);
      }
      ol,
      ul {
        margin: 0;
        padding-inline-start: 1.5em;
        display: grid;
        gap: 12px;
        font-size: var(--t-label);
      }
      li {
        overflow-wrap: anywhere;
      }
      .reading {
        justify-content: space-between;
        flex-wrap: wrap;
        gap: 0 1rem;
      }
      .reading > span {
        font-weight: 400;
      }
      summary {
        font-size: var(--t-label);
        font-weight: 700;
        min-block-size: 64px;
        padding-block: 20px;
        cursor: pointer;
      }
      details .note {
        margin-block-start: 12px;
      }
    `,
  ];

  private get cautions() {
    return html`<div class="alert over">${noiseCautions().map((c) => html`<div>${c}</div>`)}</div>`;
  }

  private symptom(symptom: Symptom) {
    return html`<h1>${symptomName(symptom)}</h1>
      ${this.cautions}
      <h2>${t.try}</h2>
      <p>${t.one}</p>
      <ol>
        ${ladder(symptom).map((id) => this.remedy(id))}
      </ol>
      <a class="key left" href="#/machine/prove">${t.tests}</a>
      <a class="key" href="#/machine/noise">${t.list}</a>`;
  }

  private remedy(id: RemedyId) {
    const { what, why } = remedyText(id);
    const caution = cautionOf(id);
    const to = WORKED[id];
    return html`<li>
      <strong>${what}</strong>
      ${caution ? html`<p class="over"><strong>${cautionText(caution)}</strong></p>` : nothing}
      <p class="note">${why}</p>
      ${to ? html`<a class="key" href="#/machine/noise/${to}">${t.workOut}</a>` : nothing}
    </li>`;
  }

  private list(given: NoiseGiven) {
    return html`<h1>${t.title}</h1>
      <p>${t.intro}</p>
      ${this.cautions}
      <h2>${t.symptoms}</h2>
      <div class="stack">
        ${SYMPTOMS.map((s) => html`<a class="key left" href="#/machine/noise/${s}">${symptomName(s)}</a>`)}
      </div>
      <h2>${t.sums}</h2>
      <div class="stack">
        ${SUMS.filter((id) => id !== 'pull-up' || (given.output ?? 'collector') === 'collector').map(
          (id) =>
            html`<a class="key left reading" href="#/machine/noise/${id}"
              >${sumText(id).title} ${standingLine(CALCULATIONS[id].work(given))}</a
            >`,
        )}
      </div>
      <h2>${t.ask}</h2>
      <ul>
        ${askList().map((a) => html`<li>${a}</li>`)}
      </ul>
      ${links(mistakeLinksAt('machine/noise'))}
      <a class="key" href="#/machine">${t.back}</a>
      ${
        anyNoise(this.app)
          ? html`<div class="apart stack">
              <button class="key stop" @click=${() => void clearNoise(this.app)}>${t.clear}</button>
            </div>`
          : nothing
      }`;
  }

  override render() {
    const given = noiseGiven(this.app);
    if (!given)
      return html`<h1>${t.noMachine}</h1>
        <a class="key" href="#/machine">${t.back}</a>`;
    const [, page] = this.path;
    const sum = SUMS.find((id): id is SumId => id === page);
    if (sum) return sumPage(this.app, given, sum);
    const symptom = SYMPTOMS.find((s) => s === page);
    return symptom ? this.symptom(symptom) : this.list(given);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-noise': NoiseScreen;
  }
}
