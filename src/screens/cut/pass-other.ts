import { html, nothing } from 'lit';
import { cutNumber, cutsInAll, cutsLeft } from '../../core/run/progress';
import { OUTCOMES, type Outcome, type Run } from '../../core/run';
import { outcomeText, runText as t } from '../../text/run';
import type { App } from '../../state';
import { marked } from '../../text/numbers';

/** How long the key that brings back the last run is offered here, ms; the records offer it ever after. */
const LATELY = 3_600_000;

const steps = (more: readonly string[]) =>
  html`<ol class="steps">
    ${[...t.steps(), ...more].map((s) => html`<li>${s}</li>`)}
  </ol>`;

/** After a stop in mid-cut: what to do before anything else. */
export const stopped = () => html`
  <h1>${t.stoppedTitle}</h1>
  ${steps([t.stepPickUp])}
  <div class="stack">
    <a class="key solid" href="#/cut/nut/pick-up">${t.pickUp}</a>
    <a class="key" href="#/cut/pass">${t.toPass}</a>
  </div>
`;

/** Not sure whether the next pass was taken: what tells it. Nothing counts until a person says so. */
export const unsure = (run: Run, answer: (taken: boolean) => void) => {
  const n = cutNumber(run);
  return html`
    <h1>${t.unsureTitle(n)}</h1>
    ${steps([t.stepMeasure, t.stepPickUp])}
    <div class="stack">
      <a class="key" href="#/cut/nut/pick-up">${t.pickUp}</a>
      <button class="key" @click=${() => answer(false)}>${t.samePass(n)}</button>
      <button class="key" @click=${() => answer(true)}>${t.countsTaken(n)}</button>
    </div>
  `;
};

export const end = (run: Run, trouble: string, choose: (outcome: Outcome) => void) => {
  const left = cutsLeft(run);
  return html`
    <h1>${t.endTitle}</h1>
    ${left > 0 ? html`<p>${t.endEarly(left)}</p>` : nothing}
    <p class="note">${t.endNote}</p>
    ${trouble ? html`<p class="alert" role="alert">${trouble}</p>` : nothing}
    <h2>${t.outcomes}</h2>
    <div class="stack">
      ${OUTCOMES.map((o) => html`<button class="key left" @click=${() => choose(o)}>${outcomeText[o]}</button>`)}
    </div>
    <a class="key apart" href="#/cut/pass">${t.toPass}</a>
  `;
};

/** No run is open on the machine in use: whose there are, and the last one ended here. */
export const none = (app: App) => {
  const { runs } = app;
  const [last] = runs.ended;
  const lately =
    last && last.run.machine === app.machine?.id && app.clock.now - (last.run.ended ?? 0) < LATELY
      ? last
      : null;
  return html`
    <h1>${t.none}</h1>
    ${runs.openUnreadable.length ? html`<p class="alert">${t.unreadable(runs.openUnreadable.length)}</p>` : nothing}
    ${runs.others.map(
      ({ run }) =>
        html`<p>${t.other(run.machineName, marked(run.threadName), cutNumber(run), cutsInAll(run))}</p>
          ${
            app.machines.find(run.machine)
              ? html`<button class="key" @click=${() => void app.useMachine(run.machine)}>
                  ${t.use(run.machineName)}
                </button>`
              : nothing
          }`,
    )}
    ${
      lately
        ? html`<p>
              ${t.lastEnded(marked(lately.run.threadName), lately.run.outcome ? outcomeText[lately.run.outcome] : '')}
            </p>
            <button class="key" @click=${() => void runs.reopen(lately.id)}>${t.bringBack}</button>`
        : nothing
    }
    <p>${t.noneNote}</p>
    <a class="key solid" href="#/cut">${t.toCut}</a>
  `;
};
