import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { pictureSheet } from '../../elements/pictures';
import { ScreenElement } from '../../elements/screen';
import { recallNotes } from '../../elements/recall';
import { written } from '../../elements/styles';
import { standingMark, standingSheet } from '../../elements/standing';
import { testSheet } from '../../elements/test-sheet';
import { TEST_BOUNDS, type InputPath, type TestRecord } from '../../core/context';
import { FIELDS } from '../../core/machine';
import {
  choicesOf,
  chose,
  leadOf,
  newestTest,
  testById,
  testNow,
  testsOf,
  USUAL,
  type Choice,
  type Given,
  type Instrument,
  type InstrumentId,
  type ProveTest,
} from '../../core/prove';
import { stated, type Stated } from '../../core/quantity';
import { chooseIn, clearTest, givenOf, keepNote, noteOf, recordTest } from '../../state/prove';
import { appText, enterText } from '../../text/app';
import { fieldText } from '../../text/machine';
import { decimal, plain, statedText } from '../../text/numbers';
import {
  cautionText,
  choiceLabel,
  optionName,
  proveText as t,
  readingLabel,
  testText,
} from '../../text/prove';
import { recallSaid, recallText } from '../../text/recall';
import { dayText } from '../../text/records';
import { threadsText } from '../../text/threads';
import type { App } from '../../state';
import { codeOf, figures, setText } from './figures';
import { testPicture } from './pictures';
import { nowText } from './standing';

const STANDING = { passed: 'within', failed: 'over', undecided: 'unknown' } as const;

/** A reading beside its name, which says already that it counts turns. */
const valueText = (s: Stated): string => (s.unit === 'turns' ? plain(s.value) : statedText(s));

/** Where something that a test needs is entered or chosen. */
const entry = (path: InputPath) => {
  const name = path.slice(path.indexOf('.') + 1);
  if (Object.hasOwn(FIELDS, name))
    return html`<a class="key left" href="#/machine/field/${name}"
      >${appText.enter(fieldText[name as keyof typeof fieldText].label)}</a
    >`;
  return html`<a class="key left" href="#/threads/find">${threadsText.choose}</a>`;
};

/** Test records: the commissioning tests in order with their standing, and each on a page of its own. */
@customElement('ls-prove')
export class ProveScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, pictureSheet, standingSheet, written, testSheet];

  @state() private trouble = '';

  private list() {
    const { inputs, records } = this.app;
    return html`<h1>${t.title}</h1>
      <p>${t.intro}</p>
      ${records.unreadableTests ? html`<p class="unknown">${t.unreadable(records.unreadableTests)}</p>` : nothing}
      <div>
        ${testsOf(inputs).map((test, i) => {
          const { word, standing } = nowText(testNow(inputs, test.id, test.rule), test.measures);
          return html`<a class="line" href="#/machine/prove/${test.id}">
            <strong>${i + 1}</strong><strong>${testText[test.id].title}</strong>
            <small class=${standing}>${standingMark(standing)} ${word}</small>
          </a>`;
        })}
      </div>
      <p class="note">${t.screwFirst}</p>
      <a class="key" href="#/machine">${t.back}</a>`;
  }

  private choice(test: ProveTest, given: Given, choice: Choice) {
    const now = chose(given, choice);
    const labelled = `choice-${choice.id}`;
    return html`<p id=${labelled}><strong>${choiceLabel(choice.id)}</strong></p>
      <div class="grid2" role="group" aria-labelledby=${labelled}>
        ${choice.options.map(
          (o) =>
            html`<button
              class="key"
              aria-pressed=${now === o}
              @click=${() => void chooseIn(this.app, test, choice.id, o)}
            >
              ${optionName(choice.id, o)}
            </button>`,
        )}
      </div>`;
  }

  /** What counts while something finer or coarser isn't entered. */
  private usual(given: Given, id: string): string {
    const usual = USUAL[given.choices.instrument as InstrumentId] as Instrument | undefined;
    return usual && (id === 'step' || id === 'accuracy')
      ? `${statedText(stated(usual[id], 'mm'))}, ${t.usual}`
      : t.notEntered;
  }

  private readings(test: ProveTest, given: Given) {
    return html`<div class="stack">
      ${test.readings(given).map((r) => {
        const value = given.readings[r.id];
        return html`<a class="key reading" href="#/enter/reading/prove.${test.id}.${r.id}">
          ${readingLabel(test.id, r.id)}
          <span>${value ? valueText(value) : r.optional ? this.usual(given, r.id) : t.enter}</span>
        </a>`;
      })}
    </div>`;
  }

  private note(test: ProveTest) {
    return html`<label class="label" for="note">${t.note}</label>
      <textarea
        id="note"
        rows="2"
        maxlength=${TEST_BOUNDS.note}
        .value=${noteOf(this.app, test)}
        @input=${(e: Event) => void keepNote(this.app, test, (e.target as HTMLTextAreaElement).value)}
      ></textarea>`;
  }

  private async record(test: ProveTest): Promise<void> {
    try {
      await recordTest(this.app, test);
      this.trouble = '';
    } catch {
      this.trouble = enterText.notSaved;
    }
  }

  private earlier(test: ProveTest) {
    const all: TestRecord[] = this.app.records.tests.filter((r) => r.test === test.id).reverse();
    if (all.length === 0) return nothing;
    return html`<h2>${t.earlier}</h2>
      ${all.map(
        (r) =>
          html`<div class="hair">
            <p>
              <strong
                >${dayText(r.at)}:
                ${test.measures && r.result === 'passed' ? t.measured : t.was[r.result]}</strong
              >
            </p>
            ${this.app.recalls(r).length ? html`<p class="unknown">${recallText.heading}</p>` : nothing}
            <p class="note">
              ${[
                ...Object.entries(r.readings).map(([id, s]) =>
                  id === 'lead' ? t.atLead(statedText(s)) : `${readingLabel(test.id, id)} ${valueText(s)}`,
                ),
                ...Object.entries(r.choices).map(([id, o]) => `${choiceLabel(id)}: ${optionName(id, o)}`),
              ].join(' · ')}
            </p>
            ${r.note ? html`<p>${r.note}</p>` : nothing}
          </div>`,
      )}`;
  }

  private page(test: ProveTest) {
    const { app } = this;
    const given = givenOf(app, test);
    const d = test.decide(given);
    const say = testText[test.id];
    const { word, standing } = nowText(testNow(app.inputs, test.id, test.rule), test.measures);
    const newest = newestTest(app.inputs, test.id);
    const lead = test.atLead ? leadOf(given).value : null;
    const ready = d.lacks.length === 0 && d.missing.length === 0;
    const begun =
      noteOf(app, test) !== '' ||
      Object.values(given.readings).some(Boolean) ||
      Object.keys(given.choices).length > 0;
    return html`<h1>${say.title}</h1>
      <p class=${standing}>${standingMark(standing)} <strong>${word}</strong></p>
      ${this.forReview(newest)}
      <div class="alert over">${test.cautions(given).map((c) => html`<div>${cautionText[c]}</div>`)}</div>
      <p>${say.why}</p>
      ${testPicture(test.id)}
      <ol>
        ${say.steps().map((s) => html`<li>${s}</li>`)}
      </ol>
      ${lead ? html`<p class="note">${t.atLead(`${decimal(lead, 4)} mm`)}</p>` : nothing}
      ${choicesOf(test, given).map((c) => this.choice(test, given, c))} ${this.readings(test, given)}
      <h2>${t.decides}</h2>
      ${
        d.missing.length > 0
          ? html`<p class="unknown">${t.needs}</p>
              <div class="stack">${d.missing.map(entry)}</div>`
          : nothing
      }
      <p role="status" class=${ready ? STANDING[d.result] : 'unknown'}>
        ${ready ? html`${standingMark(STANDING[d.result])} <strong>${t.word[d.result]}.</strong>` : nothing}
        ${codeOf(d)}
      </p>
      ${figures(app, test, d)} ${ready ? this.note(test) : nothing}
      ${this.trouble ? html`<p class="alert over" role="alert">${this.trouble}</p>` : nothing}
      ${
        ready
          ? html`<button class="key big solid" @click=${() => void this.record(test)}>${setText(d)}</button>`
          : nothing
      }
      ${ready && d.result === 'failed' ? html`<a class="key" href="#/machine/faults">${t.finder}</a>` : nothing}
      ${this.earlier(test)}
      <a class="key" href="#/machine/prove">${t.list}</a>
      ${
        begun
          ? html`<div class="apart stack">
              <button class="key stop" @click=${() => void clearTest(app, test)}>${t.clear}</button>
            </div>`
          : nothing
      }`;
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
    const test = testById(id);
    return test && testsOf(this.app.inputs).includes(test)
      ? this.page(test)
      : html`<h1>${t.title}</h1>
          <p>${t.none}</p>
          <a class="key" href="#/machine/prove">${t.list}</a>`;
  }
}
