import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import { vibrate } from '../../device/vibrate';
import { phaseState } from '../../core/checks';
import type { Sheet } from '../../core/figures';
import type { PlannedPass } from '../../core/cut/pass';
import type { Outcome, Run } from '../../core/run';
import {
  canGoBack,
  cutNumber,
  cutsInAll,
  cutsLeft,
  depthLeft,
  nextPass,
  turnOf,
} from '../../core/run/progress';
import { marked, plain } from '../../text/numbers';
import { runText as t } from '../../text/run';
import { nutText } from '../../text/threads';
import { timeOf } from '../../text/time';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { changedDetails, changedLine, changes, sheetAsBegun } from './pass-changes';
import { end, none, stopped, unsure } from './pass-other';
import { depthText, setting, settingText } from './pass-setting';
import { passSheet } from './pass-styles';
import { runNotes } from './record';

/** How long TAKEN takes no second touch, ms: longer than a double tap. */
const REST = 400;

const below = (page: TemplateResult) => html`<div class="body">${page}</div>`;

/** One pass fills the screen: what to set, what is left, and the key that says it was taken. */
@customElement('ls-cut-pass')
export class PassScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, passSheet];
  @state() private resting = false;
  @state() private trouble = '';
  private stood = '';

  private rest(): void {
    this.resting = true;
    setTimeout(() => (this.resting = false), REST);
  }

  private async take(n: number): Promise<void> {
    if (this.resting) return;
    this.rest();
    if (await this.app.runs.take(n)) vibrate(20);
  }

  private async back(): Promise<void> {
    if (this.resting) return;
    this.rest();
    await this.app.runs.back();
  }

  private answer(run: Run, taken: boolean): void {
    this.rest();
    void this.app.runs.answer(taken, cutNumber(run));
    this.go('#/cut/pass');
  }

  private async stop(): Promise<void> {
    this.trouble = '';
    try {
      await this.app.logEvent('stopped-in-cut');
      this.go('#/cut/pass/stopped');
    } catch {
      this.trouble = t.notLogged;
    }
  }

  private async end(outcome: Outcome): Promise<void> {
    const { runs } = this.app;
    this.trouble = '';
    if (await this.app.endRun(outcome, runs.current?.run.notes ?? '')) this.go('#/cut/pass');
    else this.trouble = t.notEnded;
  }

  private where(run: Run) {
    const [n, of, next] = [cutNumber(run), cutsInAll(run), nextPass(run)];
    return html`<div class="where">
      <h1>${t.cut(n, of)}</h1>
      <p class="label">${t.left(depthText(depthLeft(run), next), cutsLeft(run))}</p>
    </div>`;
  }

  /** Half-nut rule and speed as the run was begun, each in one line. */
  private facts(run: Run, sheet: Sheet) {
    const nut = nutText(sheet.get('nutRule').value, this.app.profile?.threadDial === 'dial').head;
    const { job } = run;
    return html`<p class="facts">
        <span class=${nut.length > 14 ? 'rule' : 'figure'}>${nut}</span>
        <span
          >${
            job.rpm
              ? html`<span class="figure">${plain(job.rpm)}</span> <span class="unit">${t.rpm}</span>`
              : t.rpmUnknown
          }</span
        >
      </p>
      ${job.starts > 1 ? this.start(run) : nothing}
      ${job.hand === 'left' ? html`<p>${t.leftHand}</p>` : nothing}
      ${job.outwards ? html`<p>${t.away}</p>` : nothing}`;
  }

  /** Which start this cut is of, and the way to what brings the tool there. */
  private start(run: Run) {
    const { round, start } = turnOf(run);
    return html`<p class="facts">
        <span class="rule">${t.start(start, run.job.starts)}</span
        ><span class="label">${t.round(round)}</span>
      </p>
      <a class="key" href="#/cut/nut/starts">${t.toStart(start)}</a>`;
  }

  /** What stands between the figures and the keys: who may take passes, what isn't saved, what was recorded. */
  private said(run: Run) {
    const { runs, records } = this.app;
    const since = Math.max(run.begun, run.taken.at(-1)?.at ?? 0);
    const stop = records.events.findLast((e) => e.kind === 'stopped-in-cut' && e.at > since);
    return html`
      ${runs.current ? runNotes(this.app, runs.current, (trouble) => (this.trouble = trouble)) : nothing}
      ${runs.saving.kind === 'failed' ? html`<p class="alert" role="alert">${t.unsaved}</p>` : nothing}
      ${this.trouble ? html`<p class="alert" role="alert">${this.trouble}</p>` : nothing}
      ${runs.holds === 'missing' ? html`<p class="note">${t.noLocks}</p>` : nothing}
      ${
        stop
          ? html`<p class="over"><strong>${t.stoppedAt(timeOf(stop.at))}</strong></p>
              <a class="key" href="#/cut/pass/stopped">${t.recovery}</a>`
          : nothing
      }
    `;
  }

  private elsewhere() {
    return html`<div class="foot" role="status">
      <p>${t.elsewhere}</p>
      <button class="key" @click=${() => this.app.runs.takeOver()}>${t.takeOver}</button>
    </div>`;
  }

  private scratch(run: Run) {
    if (run.taken.length < 1) return nothing;
    const { left } = phaseState('scratch', this.app.sheet);
    return left > 0 ? html`<a class="key" href="#/checks">${t.scratch(left)}</a>` : nothing;
  }

  private lapsed() {
    const { left } = phaseState('before', this.app.sheet);
    return left > 0 ? html`<a class="key" href="#/checks/list">${t.checks(left)}</a>` : nothing;
  }

  /** Where there is nothing to take back its place stays free: TAKEN never moves to where this was, nor this to where TAKEN was. */
  private backRow(run: Run) {
    const key = html`<button class="key" @click=${() => void this.back()}>${t.back}</button>`;
    return html`<div class="keys by-hand ${canGoBack(run) ? '' : 'kept-free'}">${key}</div>`;
  }

  private get mayTake(): boolean {
    return this.app.runs.holds === 'held' || this.app.runs.holds === 'missing';
  }

  /** Keys that are not for each pass. */
  private more(run: Run) {
    return html`<div class="more">
      <div class="pair">
        ${nextPass(run) ? html`<a class="key" href="#/cut/measure">${t.measure}</a>` : nothing}
        ${
          this.mayTake
            ? html`<button class="key" @click=${() => void this.app.runs.pause()}>${t.pause}</button>`
            : nothing
        }
        <a class="key" href="#/cut/plan">${t.plan}</a>
        <a class="key" href="#/checks/list">${t.changedKey}</a>
      </div>
      ${run.taken.length > 1 ? this.scratch(run) : nothing} ${this.lapsed()}
      ${links(mistakeLinksAt('cut/pass'))}
      ${
        this.mayTake
          ? html`<button class="key stop apart" @click=${() => void this.stop()}>${t.stopped}</button>
              <a class="key apart" href="#/cut/pass/end">${t.end}</a>`
          : nothing
      }
    </div>`;
  }

  private pass(run: Run, pass: PlannedPass) {
    const n = cutNumber(run);
    const asBegun = sheetAsBegun(this.app, run);
    const all = changes(this.app, run, asBegun);
    return html`
      <div class="body">
        ${this.where(run)} ${changedLine(all)} ${setting(this.app, run, pass)} ${this.facts(run, asBegun)}
        ${run.taken.length === 1 ? this.scratch(run) : nothing} ${this.said(run)}
        ${changedDetails(this.app, run, all)} ${this.more(run)}
      </div>
      ${
        this.app.runs.holds === 'elsewhere'
          ? this.elsewhere()
          : html`<div class="foot ${this.resting || !this.mayTake ? 'resting' : ''}">
              <button class="key solid big taken" @click=${() => void this.take(n)}>
                ${t.taken}<small>${t.takenNote(n, all.length > 0)}</small>
              </button>
              ${this.backRow(run)}
            </div>`
      }
    `;
  }

  private ask(run: Run, pass: PlannedPass) {
    const n = cutNumber(run);
    return html`
      <div class="body">
        <p class="label">
          ${[marked(run.threadName), t.cut(n, cutsInAll(run)), run.job.starts > 1 ? t.start(turnOf(run).start, run.job.starts) : ''].filter(Boolean).join(' · ')}
        </p>
        <h1 class="question">${t.asked(n)}</h1>
        <p>${t.askedNote}</p>
        <p>${t.askedSetting(settingText(pass))}</p>
        ${this.said(run)}
      </div>
      <div class="foot">
        <button class="key big taken" @click=${() => this.answer(run, true)}>
          ${t.yes}<small>${t.yesNote}</small>
        </button>
        <button class="key big taken" @click=${() => this.answer(run, false)}>
          ${t.no}<small>${t.noNote}</small>
        </button>
        <a class="key big" href="#/cut/pass/unsure">${t.notSure}</a>
      </div>
    `;
  }

  private paused(run: Run) {
    return html`
      <div class="body">
        ${this.where(run)}
        <h2 class="question">${t.paused}</h2>
        <p>${t.pausedNote}</p>
        ${this.said(run)}
      </div>
      ${
        this.app.runs.holds === 'elsewhere'
          ? this.elsewhere()
          : html`<div class="foot">
              <button class="key solid big" @click=${() => void this.app.runs.resume()}>${t.resume}</button>
              <div class="keys">
                <a class="key" href="#/checks">${t.startChecks}</a>
                <a class="key" href="#/cut/measure">${t.measure}</a>
                <a class="key" href="#/cut/pass/end">${t.end}</a>
              </div>
            </div>`
      }
    `;
  }

  private allTaken(run: Run) {
    return html`
      <div class="body">
        <h1 class="question">${t.allTaken(run.taken.length)}</h1>
        <p>${t.allTakenNote}</p>
        ${this.said(run)} ${this.more(run)}
      </div>
      ${this.app.runs.holds === 'elsewhere' ? this.elsewhere() : nothing}
      <div class="foot ${this.resting ? 'resting' : ''}">
        <a class="key solid big" href="#/cut/measure">${t.measure}</a>
        ${this.mayTake ? this.backRow(run) : nothing}
      </div>
    `;
  }

  override updated(): void {
    // Each pass, and each page below, is read from its first line.
    const { runs } = this.app;
    const stands = [
      this.path.join('/'),
      runs.asks,
      runs.current?.run.paused,
      runs.current?.run.taken.length,
    ].join();
    if (stands !== this.stood) this.renderRoot.querySelector('.body')?.scrollTo(0, 0);
    this.stood = stands;
  }

  override render() {
    const { runs } = this.app;
    const run = runs.current?.run;
    if (!run) return below(none(this.app));
    const sub = this.path[1];
    if (sub === 'stopped') return below(stopped());
    if (sub === 'end' && this.mayTake)
      return below(end(run, this.trouble, (outcome) => void this.end(outcome)));
    const next = nextPass(run);
    if (sub === 'unsure' && runs.asks && this.mayTake)
      return below(unsure(run, (taken) => this.answer(run, taken)));
    if (run.paused) return this.paused(run);
    if (!next) return this.allTaken(run);
    return runs.asks && this.mayTake ? this.ask(run, next) : this.pass(run, next);
  }
}
