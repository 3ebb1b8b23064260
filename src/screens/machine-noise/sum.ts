import { html, nothing } from 'lit';
import '../../elements/row';
import { standingMark } from '../../elements/standing';
import { FIELDS, type FieldName } from '../../core/machine';
import { toNumber, type Stated } from '../../core/quantity';
import { EDGE_FIELDS } from '../../core/wiring';
import {
  CALCULATIONS,
  OUTPUTS,
  type Line,
  type Missing,
  type NoiseGiven,
  type NoiseName,
  type SumId,
  type Worked,
} from '../../core/wiring/noise';
import { chooseOutput, noiseEntered } from '../../state/noise';
import { appText } from '../../text/app';
import { fieldText } from '../../text/machine';
import { significant, statedText } from '../../text/numbers';
import {
  lineText,
  noiseCautions,
  noiseLabel,
  noteText,
  noiseText as t,
  outputText,
  sumText,
} from '../../text/noise';
import { amountOf, amountText } from '../../text/noise-amount';
import { standingWord } from '../../text/standing';
import type { App } from '../../state';
import { bodePlot } from './bode';

/** Lines of what arrives of something: said as a share too. */
const SHARES = /^(carrier|multiple)/;

const noteOf = ({ at, value, code }: Line): string =>
  [
    at ? t.at(amountText(at, 'Hz')) : '',
    value !== null && SHARES.test(code) ? t.passes(`${significant(100 * 10 ** (value / 20), 2)}\u00a0%`) : '',
  ]
    .filter(Boolean)
    .join(' · ');

const row = (line: Line) => {
  const { code, value, unit, standing, round } = line;
  // What is neither known nor judged is named among what is missing.
  if (value === null && !standing) return nothing;
  const said = value === null ? null : amountOf(value, unit, round);
  return html`<ls-row
    .label=${lineText(code)[0]}
    .value=${said?.value ?? appText.notKnown}
    .unit=${said?.unit ?? ''}
    .note=${noteOf(line)}
    .standing=${standing ?? ''}
    .word=${standing ? standingWord[standing] : ''}
  ></ls-row>`;
};

/** The standing in one line, or that there is none. */
export const standingLine = ({ standing }: Worked) =>
  standing
    ? html`<strong class=${standing}>${standingMark(standing)} ${standingWord[standing]}</strong>`
    : nothing;

const isField = (m: Missing): m is FieldName => Object.hasOwn(FIELDS, m);
const missingName = (m: Missing): string => {
  if (m === 'output') return t.output;
  return isField(m) ? fieldText[m].label : noiseLabel(m);
};

const reading = (href: string, label: string, value: Stated | null, other: string = t.enter) =>
  html`<a class="key left reading" href=${href}
    >${label} <span>${value ? statedText(value) : other}</span></a
  >`;

const entry = (app: App, name: NoiseName) => {
  const { rpm } = app.job;
  const job = name === 'rpm' && rpm ? `${significant(toNumber(rpm))} rpm, ${t.fromJob}` : t.enter;
  return reading(`#/enter/reading/noise.${name}`, noiseLabel(name), noiseEntered(app, name), job);
};

const outputs = (app: App, given: NoiseGiven) =>
  html`<h2 class="label" id="output">${t.output}</h2>
    <div class="pair" role="group" aria-labelledby="output">
      ${OUTPUTS.map(
        (o) =>
          html`<button
            class="key"
            aria-pressed=${given.output === o}
            @click=${() => void chooseOutput(app, o)}
          >
            ${outputText[o]}
          </button>`,
      )}
    </div>`;

/** The machine's fields that say how fast edges come, with the way to change them. */
const ofMachine = ({ profile }: NoiseGiven) =>
  html`<h2>${t.machine}</h2>
    <div class="stack">
      ${EDGE_FIELDS.map((f) => reading(`#/machine/field/${f}`, fieldText[f].label, profile[f]))}
    </div>`;

const why = (id: SumId, lines: readonly Line[]) =>
  html`<details>
    <summary>${t.why}</summary>
    <ul>
      ${lines.map(({ code, value, unit, round }) => {
        const [label, formula] = lineText(code);
        const is = value === null ? appText.notKnown : amountText(value, unit, round);
        return html`<li>${label}: ${formula} = <strong>${is}</strong></li>`;
      })}
    </ul>
    ${sumText(id).sources.map((s) => html`<p class="note">${s}</p>`)}
  </details>`;

/** One calculation: how it stands, what was entered, what follows, and where that comes from. */
export const sumPage = (app: App, given: NoiseGiven, id: SumId) => {
  const { asks, work } = CALCULATIONS[id];
  const words = sumText(id);
  const worked = work(given);
  const { lines, missing, notes, standing, shape } = worked;
  return html`<h1>${words.title}</h1>
    <p>${words.intro}</p>
    ${id === 'low-pass' ? html`<p class="over"><strong>${noiseCautions()[2]}</strong></p>` : nothing}
    <p role="status" class=${standing ? 'stands' : 'note'}>${standing ? standingLine(worked) : t.noLimit}</p>
    ${missing.length > 0 ? html`<p class="unknown">${t.missing} ${missing.map(missingName).join(', ')}.</p>` : nothing}
    ${notes.map((n) => html`<p><strong>${noteText(n)}</strong></p>`)} ${shape ? bodePlot(shape) : nothing}
    <div>${lines.map(row)}</div>
    ${id === 'reach' ? outputs(app, given) : nothing}
    <h2>${t.entered}</h2>
    <div class="stack">${asks.map((name) => entry(app, name))}</div>
    ${asks.includes('rpm') ? ofMachine(given) : nothing} ${why(id, lines)}
    <a class="key" href="#/machine/noise">${t.list}</a>`;
};
