import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { recallNotes } from '../../elements/recall';
import { standingMark, standingSheet } from '../../elements/standing';
import { testSheet } from '../../elements/test-sheet';
import { newestTest, type TestRecord } from '../../core/context';
import { roomOf } from '../../core/figures/room-from';
import {
  appliesTo,
  cautionsOf,
  stopNow,
  stopsNow,
  stopTestById,
  type Seen,
  type StopTest,
} from '../../core/prove/stops';
import { recordStop, stopReading } from '../../state/stops';
import { appText, enterText } from '../../text/app';
import { fieldText } from '../../text/machine';
import { statedText } from '../../text/numbers';
import { trade } from '../../text/prove';
import { recallSaid, recallText } from '../../text/recall';
import { refusalText, stopCautionText, stopsText as t, stopTestText } from '../../text/stops';
import type { App } from '../../state';
import { vibrate } from '../../device/vibrate';
import { arrangementPage } from './arrangement';
import { nowText, recordText } from './now';

/** How long the keys take no answer after a record, ms: longer than a double tap. */
const REST = 400;
/** In the address of a test: the next that is due follows by itself. */
const WALK = 'on';

/** Stop tests: how the stop is arranged and what that can do, the protocol with its records, each test on a page. */
@customElement('ls-stops')
export class StopsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    standingSheet,
    testSheet,
    css`
      .entry {
        display: grid;
        align-content: center;
        color: inherit;
        text-decoration: none;
        min-block-size: 64px;
        margin-block-start: 8px;
        border-block-end: 1px solid var(--hair);
        font-size: var(--t-label);
      }
      .entry strong {
        font-size: 1.375rem;
      }
      li small {
        display: block;
        font-size: 1rem;
        color: var(--ink-2);
      }
      .answers {
        display: grid;
        gap: 24px;
      }
      .answers .key {
        min-block-size: 88px;
      }
      .answers .solid,
      .answers .stop {
        font-size: var(--t-figure);
      }
      /* A second tap meant for the answer must not record it twice. */
      .resting {
        pointer-events: none;
      }
    `,
  ];

  @state() private trouble = '';
  @state() private resting = false;
  private shown = '';

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const here = this.path.join('/');
    if (here !== this.shown) this.trouble = '';
    this.shown = here;
  }

  private list() {
    const stops = stopsNow(this.app.inputs);
    const { arrangement, due } = stops;
    return html`<h1>${t.title}</h1>
      <p>${t.intro}</p>
      <p class="over"><strong>${t.faultFirst}</strong></p>
      <a class="line" href="#/machine/stops/how">
        <strong aria-hidden="true">${standingMark(arrangement)}</strong><strong>${t.arrangement}</strong>
        <small class=${arrangement}>${t[arrangement]}</small>
      </a>
      <h2>${due.length > 0 ? t.due(due.length) : t.noneDue}</h2>
      ${due[0] ? html`<a class="key" href="#/machine/stops/${due[0].id}/${WALK}">${t.walk}</a>` : nothing}
      <div>
        ${stops.tests.map(({ test, now }) => {
          const { word, standing } = nowText(now);
          return html`<a class="line" href="#/machine/stops/${test.id}">
            <strong>${test.number}</strong><strong>${stopTestText[test.id].title}</strong>
            <small class=${standing ?? 'note'}>${standing ? standingMark(standing) : nothing} ${word}</small>
          </a>`;
        })}
      </div>
      <p class="note">${t.defer}</p>
      <a class="key" href="#/machine">${t.back}</a>`;
  }

  private async record(test: StopTest, seen: Seen): Promise<void> {
    this.resting = true;
    try {
      const refusal = await recordStop(this.app, test, seen);
      this.trouble = refusal ? refusalText[refusal] : '';
      if (!refusal) vibrate(20);
      // One after another: what is as it must be leads on; what isn't stays to be read.
      if (!refusal && seen !== 'not-as-said' && this.path[2] === WALK) {
        const next = this.nextDue(test);
        this.go(`#/machine/stops${next ? `/${next.id}/${WALK}` : ''}`);
      }
    } catch {
      this.trouble = enterText.notSaved;
    }
    setTimeout(() => (this.resting = false), REST);
  }

  /** The distance as typed, and the room that it is held against. */
  private distance(test: StopTest) {
    if (!test.distance) return nothing;
    const value = stopReading(this.app, test);
    const room = roomOf(this.app.inputs);
    return html`<div class="stack">
      <a class="key reading" href="#/enter/reading/stops.${test.id}"
        >${t.distance}<span>${value ? statedText(value) : t.enter}</span></a
      >
      ${
        room
          ? html`<p>${t.room}: <strong>${statedText(room)}</strong></p>`
          : html`<a class="key left" href="#/enter/job/room">${appText.enter(t.enterRoom)}</a>`
      }
    </div>`;
  }

  private answers(test: StopTest) {
    const key = (seen: Seen, word: string, look: string) =>
      html`<button class="key ${look}" @click=${() => void this.record(test, seen)}>${word}</button>`;
    return html`${this.trouble ? html`<p class="over" role="alert"><strong>${this.trouble}</strong></p>` : nothing}
      <div class="answers ${this.resting ? 'resting' : ''}">
        ${key('as-said', t.asSaid, 'solid')} ${key('not-as-said', t.notAsSaid, 'stop')}
        ${test.mayLack ? key('none-here', t.noneHere, '') : nothing}
      </div>`;
  }

  private earlier(test: StopTest) {
    const all = this.app.records.tests.filter((r) => r.test === test.id).reverse();
    if (all.length === 0) return nothing;
    return html`<h2>${t.earlier}</h2>
      ${all.map((r) => html`<p class="hair">${recordText(r)}. ${this.app.recalls(r).length ? recallText.heading : ''}</p>`)}`;
  }

  private nextDue(test: StopTest): StopTest | undefined {
    const { due } = stopsNow(this.app.inputs);
    const others = due.filter((d) => d.id !== test.id);
    return others.find((d) => d.number > test.number) ?? others[0];
  }

  private next(test: StopTest) {
    const next = this.nextDue(test);
    return next
      ? html`<a class="key" href="#/machine/stops/${next.id}">${t.next(stopTestText[next.id].title)}</a>`
      : nothing;
  }

  private page(test: StopTest) {
    const { inputs } = this.app;
    const say = stopTestText[test.id];
    const { word, standing } = nowText(stopNow(inputs, test));
    const newest = newestTest(inputs, test.id);
    const applies = appliesTo(test, inputs.machine);
    return html`<h1>${say.title}</h1>
      <p class=${standing ?? 'note'}>
        ${standing ? standingMark(standing) : nothing}
        <strong>${word}.</strong> ${standing && standing !== 'unknown' ? t.notSeen : ''}
      </p>
      ${this.forReview(newest)}
      ${
        applies.code === 'not-known'
          ? html`<a class="key left" href="#/machine/field/${applies.field}"
              >${appText.enter(fieldText[applies.field].label)}</a
            >`
          : nothing
      }
      <div class="alert over">
        ${cautionsOf(test, inputs.machine).map((c) => html`<div>${trade(stopCautionText[c])}</div>`)}
      </div>
      <h2>${t.steps}</h2>
      <ol>
        ${say.steps.map((s) => html`<li>${trade(s)}</li>`)}
      </ol>
      <h2>${t.must}</h2>
      <p>${say.must}</p>
      <h2 class="over">${t.fault}</h2>
      <p>${say.fault}</p>
      <h2>${t.why}</h2>
      <p>${say.why}</p>
      ${applies.code === 'yes' ? html`${this.distance(test)} ${this.answers(test)}` : nothing}
      <p class="note">${test.daily ? t.daily : t.interval} ${inputs.context.hours === null ? '' : t.hours}</p>
      ${this.next(test)} ${this.earlier(test)}
      <a class="key" href="#/machine/stops">${t.list}</a>`;
  }

  private forReview(record: TestRecord | null) {
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
    const [, id] = this.path;
    if (!id) return this.list();
    if (id === 'how') return arrangementPage(this.app, stopsNow(this.app.inputs));
    const test = stopTestById(id);
    return test
      ? this.page(test)
      : html`<h1>${t.title}</h1>
          <p>${t.none}</p>
          <a class="key" href="#/machine/stops">${t.list}</a>`;
  }
}
