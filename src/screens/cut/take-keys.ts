import { html, nothing } from 'lit';
import { countedBy, type Handwheel } from '../../core/cut/handwheels';
import type { Left } from '../../core/cut/finish';
import type { PlannedPass } from '../../core/cut/pass';
import { midRound, turnOf } from '../../core/run/progress';
import type { Run } from '../../core/run/run';
import type { App } from '../../state';
import { finishText as t } from '../../text/finish';
import * as f from './finishing';

type Take = (passes: readonly PlannedPass[]) => void;

const cuts = (passes: readonly PlannedPass[]): number => passes.filter(({ kind }) => kind === 'cut').length;

/** Which tool it is, where the least pass follows from that. */
const askTool = (app: App) =>
  html`<p>${t.noLeast}</p>
    <div class="keys">
      ${(['hss', 'carbide'] as const).map(
        (tool) =>
          html`<button class="key" @click=${() => void app.jobs.change({ toolMaterial: tool })}>
            ${t.tools[tool]}
          </button>`,
      )}
    </div>`;

const askDial = (slide: 'cross' | 'top') =>
  html`<p>${t.noDial(t.slides()[slide])}</p>
    <a class="key" href="#/machine">${t.enterDial}</a>`;

/** The last setting was counted in other divisions than the machine's now: no plan goes on from it. */
const otherDial = (
  { run }: f.Piece,
  { slide, wheel }: { slide: 'cross' | 'top'; wheel: Handwheel },
): boolean => {
  const setting = f.standsAt(run).at?.[slide];
  return !!setting && !countedBy(wheel, setting);
};

/** Starts that are not cut to this setting yet: no plan goes on from here. */
const finishRound = (run: Run) => html`<p class="alert">${t.midRound(turnOf(run).start, run.job.starts)}</p>`;

/** What may be taken: a part and then measured, or all of it. Without a run it is only said. */
export const takeKeys = (app: App, piece: f.Piece, left: Left, take: Take) => {
  const feeding = f.feedingOf(app, piece);
  const [first] = f.slidesLeft(app, piece, left);
  if (!(left.radial > 0)) return nothing;
  if (piece.run && midRound(piece.run)) return finishRound(piece.run);
  if (first?.slide !== feeding) return askDial(feeding);
  if (first.divisions === 0) return html`<p class="alert">${t.tooCoarse}</p>`;
  const all = f.passesFor(app, piece, first, first.divisions, false);
  const part = f.passesFor(app, piece, first, first.part, true);
  if (!all || !part) return askTool(app);
  const least = f.leastOf(app, piece) ?? 0;
  const parted = first.part < first.divisions && first.part * first.wheel.radial >= least;
  const said = parted
    ? html`<p>${t.stepsOf}: ${t.steps(f.stepsOf(part, first))}</p>
        <p>${t.stepsRest}: ${t.steps(f.stepsOf(all, first))}</p>`
    : html`<p>${t.steps(f.stepsOf(all, first))}</p>`;
  const advice = html`<p class="note">${t.partAdvice} ${t.spring(f.springOf(app, piece))}</p>`;
  if (!piece.run) return html`${said} ${advice}`;
  if (!f.standsAt(piece.run).at) return html`<p>${t.noPass}</p>`;
  if (otherDial(piece, first)) return html`<p class="alert">${t.otherDial}</p>`;
  return html`<div class="stack">
      ${
        parted
          ? html`<button class="key solid left" @click=${() => take(part)}>
              ${t.part(first.part, cuts(part))}
            </button>`
          : nothing
      }
      <button class="key left ${parted ? '' : 'solid'}" @click=${() => take(all)}>
        ${t.rest(first.divisions, cuts(all))}
      </button>
    </div>
    ${advice}`;
};

/** One least pass on the slide that feeds, for a gauge that doesn't go yet. */
export const leastKey = (app: App, piece: f.Piece, take: Take) => {
  if (!piece.run || !f.standsAt(piece.run).at) return nothing;
  if (midRound(piece.run)) return finishRound(piece.run);
  const least = f.leastOf(app, piece);
  if (least === null) return askTool(app);
  const feeding = f.feedingOf(app, piece);
  const wheel = f.wheelsOf(app, piece)?.[feeding];
  if (!wheel) return askDial(feeding);
  if (otherDial(piece, { slide: feeding, wheel })) return html`<p class="alert">${t.otherDial}</p>`;
  const divisions = Math.max(1, Math.ceil(least / wheel.radial - 1e-9));
  const passes = f.passesFor(app, piece, { slide: feeding, wheel }, divisions, true);
  return passes
    ? html`<button class="key solid left" @click=${() => take(passes)}>${t.leastPass(divisions)}</button>`
    : nothing;
};
