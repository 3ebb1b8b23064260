import { html, nothing, css } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/standing';
import { picture, pictureSheet } from '../../elements/pictures';
import { phaseState, type CheckState, type Phase, type PhaseState } from '../../core/checks';
import type { CheckRecord, EventKind } from '../../core/context';
import { recallNotes } from '../../elements/recall';
import { checksText, checkText, eventText, lapseText, stateText, tierName } from '../../text/checks';
import { appText, enterText, undoText } from '../../text/app';
import { firstRunText } from '../../text/first-run';
import { recallSaid } from '../../text/recall';
import { timeOf } from '../../text/time';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { bounds, finding, shown } from './asked';
import { paper, paperSheet } from './paper';
import { recordAnswer } from '../../state/answer';
import { printPage } from '../../device/print';
import { vibrate } from '../../device/vibrate';

const CHANGES = [
  'power',
  'wiring',
  'firmware',
  'driver',
  'belt',
  'work-moved',
  'stopped-in-cut',
  'crash',
  'long-rest',
] as const satisfies EventKind[];
const SHAPE = {
  done: 'within',
  failed: 'over',
  'not-ok': 'over',
  'not-done': 'unknown',
  unknown: 'unknown',
} as const;

/** How long a new question takes no answer, ms: longer than a double tap. */
const REST = 400;

/** The drawing that goes with a check, where one says more than words. */
const PICTURES: Readonly<Record<string, string>> = {
  'chuck-key': 'chuck-key',
  'work-tight': 'work-tight',
  guard: 'guard',
  clothing: 'clothing',
  'handwheel-nut': 'handwheel-and-nut',
  'speed-set': 'speed-lever',
  'stop-reach': 'estop',
  'stop-latches': 'estop',
};

/** Checks: one question at a time, walked from headstock to tailstock; what is left; and the list of all. */
@customElement('ls-checks')
export class ChecksScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    pictureSheet,
    paperSheet,
    css`
      :host {
        padding-block-end: 0;
      }
      /* A second tap meant for the question before must not answer this one. */
      .resting {
        pointer-events: none;
      }
      .question {
        font-size: var(--t-deciding);
        line-height: 1.08;
        overflow-wrap: anywhere;
      }
      .question.long {
        font-size: max(40px, min(2.5rem, 11vw));
      }
      .picture {
        max-inline-size: 220px;
        margin-inline: auto;
        inline-size: 100%;
      }
      .done {
        min-block-size: 112px;
        font-size: var(--t-figure);
        inline-size: 100%;
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 4px 12px;
        align-items: center;
        min-block-size: 64px;
        margin-block-start: 8px;
        padding-block-end: 6px;
        border-block-end: 1px solid var(--hair);
        color: inherit;
        text-decoration: none;
        font-size: var(--t-label);
      }
      .line small {
        flex-basis: 100%;
        font-size: 1rem;
        color: var(--ink-2);
      }
      .foot {
        position: sticky;
        inset-block-end: 0;
        background: var(--paper);
        border-block-start: 1px solid var(--hair);
        padding-block: 8px;
        display: flex;
        flex-wrap: wrap;
        gap: 24px;
      }
      .foot > * {
        flex: 1 0 100%;
      }
      /* The question must never lie under the answers, however large the letters are. */
      @container (height < 24em) {
        .foot {
          position: static;
        }
      }
      .asked {
        display: contents;
      }
      /* On a short phone the question needs the height: the two answers stand side by side, as far apart. */
      @media (max-height: 780px) {
        .foot > .key {
          flex: 1 1 5.2rem;
          order: -1;
        }
        .foot > .stack,
        .foot > .big {
          flex: 2 1 8rem;
          order: 0;
        }
        .done {
          min-block-size: 88px;
        }
      }
      /* A phone on its side: question left, answers right. */
      @media (orientation: landscape) and (max-height: 500px) {
        :host(.asking) {
          display: grid;
          grid-template-columns: minmax(0, 1fr) min(15rem, 45%);
          align-items: start;
          gap: 12px 20px;
          direction: var(--hand);
        }
        :host(.asking) > * {
          direction: ltr;
        }
        :host(.asking) .asked {
          display: flex;
          flex-direction: column;
          gap: 12px;
        }
        :host(.asking) .grow {
          display: none;
        }
        :host(.asking) .foot {
          position: sticky;
          inset-block: 0 auto;
          grid-column: 2;
          grid-row: 1;
          border: 0;
          padding-block: 0 8px;
        }
        :host(.asking) .foot > * {
          flex: 1 0 100%;
          order: 0;
        }
      }
      summary {
        font-size: var(--t-label);
        min-block-size: 64px;
        display: flex;
        align-items: center;
        text-decoration: underline;
      }
    `,
  ];
  @state() private skipped: readonly string[] = [];
  private asked = '';
  @state() private trouble = '';
  @state() private resting = false;
  @state() private changes = false;

  private get cutting(): boolean {
    return this.app.jobs.cuttingSince !== null;
  }

  private get phase(): Phase {
    const [sub, name] = this.path;
    if (sub === 'phase' && (name === 'service' || name === 'before')) return name;
    if (!this.cutting) return 'before';
    const scratch = phaseState('scratch', this.app.sheet);
    return scratch.left > 0 ? 'scratch' : 'pass';
  }

  private async answer(s: CheckState, answer: 'done' | 'not-ok'): Promise<void> {
    this.trouble = '';
    try {
      await recordAnswer(this.app, s.item, answer, null);
      this.rest();
      vibrate(20);
    } catch {
      this.trouble = enterText.notSaved;
      return;
    }
    if (this.path[0] === 'item') this.go(answer === 'done' ? '#/checks' : `#/checks/item/${s.item.id}`);
  }

  private question(s: CheckState, p: PhaseState | null) {
    const text = checkText(s.item.id);
    const at = p ? checksText.left(p.left, tierName[s.item.tier]) : tierName[s.item.tier];
    const { reading, kind } = s.item;
    const canAnswer = s.answerable;
    return html`<div class="asked">
        <p class="label">${at}${this.practice ? ` · ${firstRunText.practiceShort}` : ''}</p>
        <h1 class="question ${text.question.length > 24 ? 'long' : ''}">${text.question}</h1>
        ${s.state === 'not-ok' ? html`<p class="alert over"><strong>${checksText.wasNotOk}</strong> ${text.notOk ?? ''}</p>` : nothing}
        ${s.lapse && s.record ? html`<p class="note">${lapseText(s.lapse)}</p>` : nothing}
        ${this.forReview(s.record)} ${finding(s)} ${shown(this.app, s)} ${bounds(this.app, s)}
        <p>${text.look}</p>
        ${PICTURES[s.item.id] ? html`<div class="picture">${picture(PICTURES[s.item.id] ?? '')}</div>` : nothing}
        <details>
          <summary>${checksText.why}</summary>
          <p>${text.why}</p>
        </details>
        ${links(mistakeLinksAt(`checks/item/${s.item.id}`))}
      </div>
      <div class="grow"></div>
      ${this.trouble ? html`<p class="over" role="alert">${this.trouble}</p>` : nothing}
      <div class="foot by-hand ${this.resting ? 'resting' : ''}">
        ${
          canAnswer
            ? html`<div class="stack">
                  ${
                    reading
                      ? html`<a class="key solid done" href="#/enter/check/${s.item.id}"
                          >${checksText.enterReading}</a
                        >`
                      : nothing
                  }
                  ${
                    kind === 'physical'
                      ? html`<button
                          class="key ${reading ? '' : 'solid done'}"
                          @click=${() => void this.answer(s, 'done')}
                        >
                          ${reading ? checksText.doneWithout : checksText.done}
                        </button>`
                      : nothing
                  }
                </div>
                <button class="key stop" @click=${() => void this.answer(s, 'not-ok')}>
                  ${checksText.notOk}
                </button>`
            : nothing
        }
        <div class="keys">
          <a class="key" href="#/checks/list">${checksText.list}</a>
          ${
            p && p.left > 1
              ? html`<button class="key" @click=${() => (this.skipped = [...this.skipped, s.item.id])}>
                  ${checksText.later}
                </button>`
              : nothing
          }
          ${p ? nothing : html`<a class="key" href="#/checks">${checksText.toNext}</a>`} ${this.undoKey()}
        </div>
      </div> `;
  }

  /** On an invented machine nothing is recorded of a lathe. */
  private get practice(): boolean {
    return this.app.machine?.value.example === true;
  }

  private practiceNote() {
    return this.practice ? html`<p class="alert"><strong>${firstRunText.practice}</strong></p>` : nothing;
  }

  private rest(): void {
    this.resting = true;
    setTimeout(() => (this.resting = false), REST);
  }

  private undoKey() {
    const entry = this.app.undo.newest;
    if (entry?.code !== 'check' && entry?.code !== 'event' && entry?.code !== 'review') return nothing;
    return html`<button
      class="key"
      aria-label="${appText.undo}: ${undoText(entry)}"
      @click=${() => void this.app.takeBack()}
    >
      ${appText.undo}
    </button>`;
  }

  private all(p: PhaseState) {
    return html`${paper(this.app, p)}
      <h1>${this.cutting ? checksText.cutting : checksText.allChecks}</h1>
      <p>
        ${p.allRecordedAt === null ? checksText.leftCount(p.left) : checksText.allRecorded(timeOf(p.allRecordedAt))}
      </p>
      ${p.failed.length ? html`<p class="over"><strong>${checksText.failedCount(p.failed.length)}</strong></p>` : nothing}
      ${p.unknown.length ? html`<p class="unknown">${checksText.unknownCount(p.unknown.length)}</p>` : nothing}
      ${this.practiceNote()}
      <a class="key solid" href="#/checks">${p.left > 0 ? checksText.toNext : checksText.back}</a>
      <div>
        ${p.items.map((s, i) => {
          const before = p.items[i - 1];
          return html`${before?.item.tier === s.item.tier ? nothing : html`<h2>${tierName[s.item.tier]}</h2>`}
            <a class="line" href="#/checks/item/${s.item.id}">
              <span>${checkText(s.item.id).question}</span>
              <ls-standing .standing=${SHAPE[s.state]} .word=${stateText(s)}></ls-standing>
              ${s.lapse && s.record ? html`<small>${lapseText(s.lapse)}</small>` : nothing}
            </a>`;
        })}
      </div>
      <button class="key" @click=${printPage}>${checksText.print}</button>
      ${this.changeKeys()}
      <a class="key" href="#/checks/phase/service">${checksText.service}</a>
      <p class="note">${checksText.caution}</p> `;
  }

  private changeKeys() {
    return html`<h2>${checksText.changedTitle}</h2>
      <p class="note">${checksText.changedHelp}</p>
      ${
        this.changes
          ? html`<div class="stack">
              ${CHANGES.map(
                (kind) =>
                  html`<button
                    class="key left"
                    @click=${() => {
                      this.changes = false;
                      void this.app.logEvent(kind).catch(() => (this.trouble = enterText.notSaved));
                    }}
                  >
                    ${eventText[kind]}
                  </button>`,
              )}
            </div>`
          : html`<button class="key" @click=${() => (this.changes = true)}>${checksText.changed}</button>`
      }`;
  }

  private finished(p: PhaseState) {
    return html`
      <p class="label">${checksText.phaseName[p.phase]}</p>
      <h1 class="question long">${checksText.allRecorded(timeOf(p.allRecordedAt ?? 0))}</h1>
      ${this.practiceNote()}
      <p>${checksText.afterAll}</p>
      <p class="note">${checksText.caution}</p>
      <div class="grow"></div>
      <div class="foot by-hand">
        ${
          this.app.runs.current
            ? html`<a class="key solid big" href="#/cut/pass">${checksText.toRun}</a>`
            : this.cutting
              ? html`<button class="key solid big" @click=${() => void this.app.endCut()}>
                  ${checksText.endCut}
                </button>`
              : html`<a class="key solid big" href="#/cut">${checksText.toCut}</a>
                  <button class="key" @click=${() => void this.app.startCut()}>
                    ${checksText.startCut}
                  </button>`
        }
        <div class="keys"><a class="key" href="#/checks/list">${checksText.list}</a>${this.undoKey()}</div>
      </div>
    `;
  }

  override updated(): void {
    const asked = this.renderRoot.querySelector('.question')?.textContent ?? '';
    this.classList.toggle('asking', this.renderRoot.querySelector('.asked') !== null);
    // Each question is read from its first line.
    if (asked !== this.asked) this.scrollIntoView({ block: 'start' });
    this.asked = asked;
  }

  private forReview(record: CheckRecord | null) {
    return (
      record &&
      recallNotes(
        recallSaid(this.app.recalls(record), record),
        (id) => this.app.review(id, record.id),
        (trouble) => (this.trouble = trouble),
      )
    );
  }

  override render() {
    if (!this.app.sheet.get('chosen').value)
      return html`<h1>${checksText.noThread}</h1>
        <div class="grow"></div>
        <a class="key solid big" href="#/threads/find">${checksText.chooseThread}</a>`;
    const p = phaseState(this.phase, this.app.sheet);
    const [sub, id] = this.path;
    if (sub === 'list') return this.all(p);
    if (sub === 'item' && id) {
      const s = p.items.find((x) => x.item.id === id) ?? null;
      if (s) return this.question(s, null);
    }
    const open = p.items.filter((s) => s.state !== 'done');
    const next =
      open.find((s) => !this.skipped.includes(s.item.id) && (s === p.next || s.answerable)) ?? p.next;
    if (!next) return this.finished(p);
    return this.question(next, p);
  }
}
