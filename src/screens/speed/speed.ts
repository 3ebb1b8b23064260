import { html, nothing, css } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/gauge';
import { WhyEvent } from '../../elements/row';
import '../../elements/standing';
import {
  isOfNoSpeed,
  type Ceiling,
  type LimitReading,
  type SpeedVerdict,
  type Standing,
  roomOf,
} from '../../core/figures';
import { add, compare, mul, ratio, stated, sub, toNumber, type Ratio } from '../../core/quantity';
import { JOB_FIELDS } from '../../core/job';
import { checkNumber } from '../../core/machine';
import { TICK, vibrate } from '../../device/vibrate';
import { decimal, statedText } from '../../text/numbers';
import {
  bindsText,
  fastestText,
  gaugeText,
  nextText,
  roomHelp,
  speedText,
  atMostText,
} from '../../text/speed';
import { standingWord } from '../../text/standing';
import { chartKey, raiseKey, feedKey, traceKey } from '../../text/pages';
import { limitText } from '../../text/why';
import { fieldText } from '../../text/machine';
import { threadsText } from '../../text/threads';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';

const PLUS_STEP = ratio(10);
const SCALE_STEPS = [100, 200, 400, 600, 800, 1000, 1500, 2000, 3000, 4000, 6000, 8000, 12000, 20000];

/** Speed: does the drive keep up, what binds, and is the speed set a speed for this job? */
@customElement('ls-speed')
export class SpeedScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      .set {
        display: grid;
        grid-template-columns: minmax(0, 1.4fr) minmax(168px, 2fr);
        gap: var(--gap);
        align-items: stretch;
      }
      /* Both under the thumb, and slower left of faster for either hand. */
      .steps {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: var(--gap);
      }
      /* Where the page is too long for the screen they stand at its foot until one comes to them. */
      @container (height > 26em) {
        .set {
          position: sticky;
          inset-block-end: 0;
          padding-block: 4px;
          background: var(--paper);
        }
      }
      @media (max-height: 700px) {
        ls-gauge {
          max-inline-size: 12rem;
          margin-block: -12px -8px;
        }
      }
      /* A phone on its side: what is known, and beside it what is set. */
      @media (orientation: landscape) and (max-height: 500px) {
        :host {
          display: grid;
          grid-template: auto auto 1fr / minmax(0, 1fr) minmax(0, 19.5rem);
          align-content: start;
          direction: var(--hand);
        }
        :host > * {
          grid-column: 1 / -1;
          direction: ltr;
        }
        .head,
        :host > ls-gauge {
          grid-area: 1 / 1 / 3;
        }
        :host > ls-gauge,
        .set + .note {
          grid-row: 3;
        }
        .verdict,
        .set,
        .set + .note {
          grid-column: 2;
        }
        .verdict {
          grid-row: 1;
        }
        .set {
          grid-row: 2;
          align-self: start;
        }
      }
      .set .key {
        min-block-size: 88px;
        font-size: 2.25rem;
        padding: 0;
      }
      .set .number {
        flex-direction: column;
        font-size: var(--t-figure);
        border-color: transparent;
      }
      .number .value {
        font-size: max(48px, min(3rem, 15vw));
        line-height: 1;
      }
      .head .deciding {
        margin-inline-end: 0.3em;
      }
      .verdict {
        display: flex;
        align-items: flex-start;
        justify-content: space-between;
        gap: var(--gap);
      }
      .verdict .key {
        flex: none;
      }
      .own .key {
        font-size: 1.375rem;
      }
      .own .key small {
        display: block;
        font-size: 0.8rem;
        font-weight: 400;
      }
      .own .key {
        flex-direction: column;
      }
      summary {
        font-size: var(--t-label);
        min-block-size: 64px;
        padding-block: 20px;
        box-sizing: border-box;
      }
      ul {
        margin: 0;
        padding-inline-start: 1.2em;
      }
    `,
  ];

  private setRpm(rpm: Ratio): void {
    if (!checkNumber(JOB_FIELDS.rpm, stated(rpm, 'rpm')).ok) return;
    vibrate(TICK);
    void this.app.jobs.change({ rpm });
  }

  private step(by: 1 | -1): void {
    const now = this.app.job.rpm ?? ratio(0);
    const tens = mul(BigInt(Math.floor(toNumber(now) / 10)), PLUS_STEP);
    const next = by > 0 ? add(tens, PLUS_STEP) : compare(tens, now) < 0 ? tens : sub(tens, PLUS_STEP);
    this.setRpm(next);
  }

  private scaleEnd(v: SpeedVerdict): number {
    const shown = [v.job.atMost, v.drive.highest].map((x) => (x === null ? 0 : Number(x)));
    const fastest = v.own.at(-1);
    const want = Math.max(
      200,
      toNumber(this.app.job.rpm ?? ratio(0)),
      Math.min(...shown.filter((x) => x > 0), 4000) * 1.3,
    );
    const held = fastest ? Math.max(want, toNumber(fastest.rpm)) : want;
    return SCALE_STEPS.find((s) => s >= held) ?? 20000;
  }

  /** With the stopping room known: the highest for this job. Without: what the drive follows, and no more than that. */
  private headline(v: SpeedVerdict, roomKnown: boolean) {
    const c: Ceiling = roomKnown ? v.job : v.drive;
    const label = roomKnown ? speedText.highest : speedText.driveLabel;
    const unknown = c.unknown.map((l) => limitText[l.id].name).join(', ');
    return html`<div class="head">
      <h1 class="label">${label}</h1>
      ${
        c.highest === null
          ? html`<p class="figure">${speedText.notKnown}</p>
              <p>${speedText.notKnownList(unknown)}</p>
              <p class="note">${atMostText(c)}</p>`
          : html`<p><span class="deciding">${c.highest}</span><span class="unit">rpm</span></p>
              ${c.binds ? html`<p>${bindsText(c.binds)}${c.next ? `; ${nextText(c.next)}` : ''}.</p>` : nothing}`
      }
      ${roomKnown ? nothing : html`<p><strong>${speedText.notAThreadingSpeed}</strong></p>`}
    </div>`;
  }

  private gauge(v: SpeedVerdict, roomKnown: boolean) {
    const c = roomKnown ? v.job : v.drive;
    const bearable = c.unknown.length > 0 ? null : (c.binds?.bearable ?? c.highest);
    const rpm = this.app.job.rpm;
    return html`<ls-gauge
      .max=${this.scaleEnd(v)}
      .within=${c.highest === null ? null : Number(c.highest)}
      .limit=${bearable === null ? null : Number(bearable)}
      .set=${rpm && toNumber(rpm)}
      .speeds=${v.own.map((s) => toNumber(s.rpm))}
      .text=${gaugeText(c.highest, rpm, v.standing)}
    ></ls-gauge>`;
  }

  private verdict(v: SpeedVerdict, roomKnown: boolean) {
    const rpm = this.app.job.rpm;
    if (!rpm || !v.atSet) return html`<p class="verdict label">${speedText.noneSet}</p>`;
    const shown = roomKnown ? v.standing : v.driveStanding;
    const named = (standing: Standing) =>
      (v.atSet ?? []).filter((x) => x.standing === standing).map((x) => x.limit);
    const names = (limits: readonly LimitReading[]) => limits.map((l) => limitText[l.id].name).join(', ');
    const [over, unknown, near] = [named('over'), named('unknown'), named('near')];
    const first = over[0] ?? unknown[0] ?? near[0] ?? v.job.binds;
    return html`<div class="verdict by-hand">
      <div class="stack" role="status">
        <ls-standing .standing=${v.standing ?? 'unknown'} .word=${standingWord[v.standing ?? 'unknown']}
          >${speedText.at(decimal(rpm, 1))}</ls-standing
        >
        ${over.length ? html`<p class="over"><strong>${speedText.tooMuch(names(over))}</strong></p>` : nothing}
        ${unknown.length ? html`<p class="unknown">${speedText.notKnownList(names(unknown))}</p>` : nothing}
        ${near.length && !over.length ? html`<p class="near">${speedText.close(names(near))}</p>` : nothing}
        ${
          !roomKnown && shown && shown !== v.standing
            ? html`<p>${speedText.driveAlone(standingWord[shown])}</p>`
            : nothing
        }
      </div>
      ${
        first
          ? html`<button
              class="key quiet"
              @click=${() => this.dispatchEvent(new WhyEvent(`limit:${first.id}`))}
            >
              ${speedText.why}
            </button>`
          : nothing
      }
    </div>`;
  }

  private fastestLine(fastest: Ratio | null, roomKnown: boolean): string {
    if (fastest)
      return roomKnown ? fastestText(fastest) : `${speedText.fastestDrive}: ${decimal(fastest, 1)} rpm`;
    return roomKnown ? speedText.fastestNone : speedText.fastestDriveNone;
  }

  private ownSpeeds(v: SpeedVerdict, roomKnown: boolean) {
    if (v.own.length === 0) return nothing;
    const rpm = this.app.job.rpm;
    const fastest = roomKnown ? v.fastest : v.fastestDrive;
    return html`<h2 class="label">${speedText.has}</h2>
      <div class="grid3 own">
        ${v.own.map((s) => {
          const standing: Standing = roomKnown ? s.standing : s.drive;
          const chosen = rpm !== null && compare(rpm, s.rpm) === 0;
          const shape = standing === 'over' ? 'dashed' : '';
          return html`<button class="key ${shape}" aria-pressed=${chosen} @click=${() => this.setRpm(s.rpm)}>
            <span>${decimal(s.rpm, 1)}</span><small>${standingWord[standing]}</small>
          </button>`;
        })}
      </div>
      <p class="note">${this.fastestLine(fastest, roomKnown)}</p>`;
  }

  override render() {
    const chosen = this.app.sheet.get('chosen').value;
    if (!chosen)
      return html`<h1>${speedText.noThread}</h1>
        <div class="grow"></div>
        <a class="key solid big" href="#/threads/find">${threadsText.choose}</a>`;
    const v = this.app.sheet.get('speed').value;
    if (!v) return nothing;
    const { rpm, room } = this.app.job;
    const limits = this.app.sheet.get('limits').value ?? [];
    const lapsed = room !== null && roomOf(this.app.sheet.inputs) === null;
    const roomKnown = limits.find((l) => l.id === 'stopping-room')?.within != null;
    return html`
      ${this.headline(v, roomKnown)} ${this.gauge(v, roomKnown)} ${this.verdict(v, roomKnown)}
      <div class="set by-hand">
        <a class="key number" href="#/enter/job/rpm"
          ><span class="unit">${speedText.setKey}</span
          ><span class="value">${rpm ? decimal(rpm, 1) : '–'}</span><span class="unit">rpm</span></a
        >
        <div class="steps">
          <button class="key" aria-label=${speedText.slower} @click=${() => this.step(-1)}>−</button>
          <button class="key" aria-label=${speedText.faster} @click=${() => this.step(1)}>+</button>
        </div>
      </div>
      <p class="note">${speedText.set}. ${speedText.sameSpeed}</p>
      ${this.ownSpeeds(v, roomKnown)} ${links(mistakeLinksAt('speed'))}
      <h2 class="label">${speedText.room}</h2>
      <div class="pair">
        <a class="key left" href=${lapsed ? '#/cut/stop' : '#/enter/job/room'}
          >${room ? (lapsed ? speedText.roomLapsed(statedText(room)) : statedText(room)) : speedText.roomKey}</a
        >
        <a class="key left" href="#/machine/field/wholeStopTime"
          >${
            this.app.profile?.wholeStopTime
              ? `${fieldText.wholeStopTime.label}: ${statedText(this.app.profile.wholeStopTime)}`
              : speedText.enterTime
          }</a
        >
      </div>
      ${lapsed ? nothing : html`<a class="key left" href="#/cut/stop">${speedText.workOut}</a>`}
      <details>
        <summary>${roomHelp.what}</summary>
        <p>${roomHelp.measure}</p>
        <ul>
          ${roomHelp.takeOff.map((t) => html`<li><p>${t}</p></li>`)}
        </ul>
        ${[roomHelp.rest, roomHelp.also, roomHelp.openEnd, roomHelp.reverse].map((t) => html`<p>${t}</p>`)}
      </details>
      <a class="key left" href="#/speed/chart">${chartKey}</a>
      <a class="key left" href="#/speed/raise">${raiseKey}</a>
      <a class="key left" href="#/speed/feed">${feedKey}</a>
      <a class="key left" href="#/speed/trace">${traceKey}</a>
      <h2 class="label">${speedText.limits}</h2>
      <div>
        ${limits.map((l) => {
          const standing =
            v.atSet?.find((x) => x.limit === l)?.standing ?? (l.within === null ? 'unknown' : '');
          const shownRpm =
            l.within !== null
              ? isOfNoSpeed(l)
                ? ''
                : `${l.within}`
              : l.answeredTo
                ? decimal(l.answeredTo, 0, 'down')
                : '';
          return html`<ls-row
            .label=${limitText[l.id].name}
            .value=${shownRpm || (isOfNoSpeed(l) ? speedText.anySpeed : standingWord.unknown)}
            .unit=${shownRpm ? 'rpm' : ''}
            .note=${l.answeredTo ? speedText.byRecord : ''}
            .standing=${standing}
            .word=${standing ? standingWord[standing] : ''}
            why="Why"
            figure="limit:${l.id}"
          ></ls-row>`;
        })}
      </div>
    `;
  }
}
