import { html, nothing, css, type PropertyValues } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { written } from '../../elements/styles';
import { workshopKey } from '../../core/machine';
import { csvText } from '../../core/run/csv';
import { runsFile } from '../../core/run/export';
import { runRecalls } from '../../core/run/recalls';
import type { Run } from '../../core/run/run';
import { storeRun } from '../../core/run/stored';
import { findable, findRuns, type Findable } from '../../core/run/search';
import { shareFile } from '../../device/share';
import { frameText } from '../../text/frame';
import type { App, EndedRun } from '../../state';
import { recordColumns, recordLine, recordName, recordsText as t, recordWords } from '../../text/records';
import { recallText } from '../../text/recall';
import { recordSection, useAgain } from './record';

/** So many stand in the list at once. */
const PART = 30;
/** Records made ready for the look-up in one go, so that no touch waits for it. */
const BATCH = 100;

/** A spreadsheet takes a table for UTF-8 only when it begins so. */
const BYTE_ORDER_MARK = '\ufeff';
/** Finished cuts: the list with its look-up, and one of them. */
@customElement('ls-cut-records')
export class RecordsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    written,
    css`
      .log {
        margin: 0;
        padding-inline-start: 2.2em;
        font-size: var(--t-label);
      }
      ul.log {
        list-style: none;
        padding: 0;
      }
      .log li {
        padding-block: 8px;
        border-block-end: 1px solid var(--hair);
      }
      .log li span + span {
        display: block;
        color: var(--ink-2);
      }
      textarea {
        --written: var(--t-label);
      }
      small {
        font-weight: 400;
      }
    `,
  ];
  @state() private query = '';
  @state() private shown = PART;
  @state() private ready = 0;
  /** The record that could not go on. */
  @state() private refused = '';
  /** What went wrong with marking a record as looked over. */
  @state() private trouble = '';
  /** Words of each run, made once; a changed run is another one. */
  private readonly found = new WeakMap<Run, Findable>();
  private making = false;

  private get ended(): readonly EndedRun[] {
    return this.app.runs.ended;
  }

  private wordsOf({ id, run }: EndedRun): Findable {
    const known = this.found.get(run) ?? findable(id, recordWords(run));
    this.found.set(run, known);
    return known;
  }

  protected override updated(_changed: PropertyValues): void {
    if (this.query !== '' && !this.making) void this.make();
  }

  /** Makes the words of records that have none yet, a part at a time. */
  private async make(): Promise<void> {
    this.making = true;
    for (;;) {
      const next = this.ended.filter(({ run }) => !this.found.has(run)).slice(0, BATCH);
      if (next.length === 0) break;
      for (const entry of next) this.wordsOf(entry);
      this.ready += next.length;
      await new Promise((resolve) => setTimeout(resolve));
    }
    this.making = false;
  }

  /** What was asked for among the records made ready so far. */
  private get list(): readonly EndedRun[] {
    const all = this.ended;
    if (this.query.trim() === '') return all;
    const ready = all.flatMap(({ run }) => this.found.get(run) ?? []);
    const keys = new Set(findRuns(ready, this.query));
    return all.filter(({ id }) => keys.has(id));
  }

  private share(list: readonly EndedRun[], ending: 'csv' | 'json'): void {
    const text =
      ending === 'csv'
        ? BYTE_ORDER_MARK +
          csvText(
            recordColumns.map(([header]) => header),
            list.map(({ run }) => recordColumns.map(([, cell]) => cell(run))),
          )
        : runsFile(list.map(({ id, run }) => ({ id, run: storeRun(run) })));
    const type = ending === 'csv' ? 'text/csv' : 'application/json';
    void shareFile(new File([text], t.fileName(ending), { type }));
  }

  private shareKeys(list: readonly EndedRun[]) {
    return html`<p class="note">${t.exportNote(list.length)}</p>
      <div class="pair">
        <button class="key" @click=${() => this.share(list, 'csv')}>${t.csv}</button>
        <button class="key" @click=${() => this.share(list, 'json')}>${t.json}</button>
      </div>`;
  }

  private async again(run: Run): Promise<void> {
    await useAgain(this.app, run);
    this.go('#/cut');
  }

  private async reopen(id: string): Promise<void> {
    this.refused = (await this.app.runs.reopen(id)) ? '' : id;
    if (this.refused === '') this.go('#/cut/pass');
  }

  private async putAway(id: string): Promise<void> {
    if (await this.app.putRunAway(id)) this.go('#/cut/records');
  }

  private one(id: string) {
    const { runs } = this.app;
    const away = runs.away.find((e) => e.id === id);
    const entry = away ?? this.ended.find((e) => e.id === id);
    const back = html`<a class="key" href="#/cut/records">${t.back}</a>`;
    if (!entry)
      return html`<p>${t.gone}</p>
        ${back}`;
    const { run } = entry;
    return recordSection(
      this.app,
      entry,
      html`<button class="key solid" @click=${() => void this.again(run)}>${t.again}</button>
        ${this.shareKeys([entry])}
        ${
          away ? nothing : html`<button class="key" @click=${() => void this.reopen(id)}>${t.reopen}</button>`
        }
        ${this.trouble ? html`<p class="alert" role="alert">${this.trouble}</p>` : nothing}
        ${this.refused === id ? html`<p class="alert" role="alert">${t.notReopened}</p>` : nothing} ${back}
        ${
          away
            ? html`<button class="key" @click=${() => void runs.bringBack(id)}>
                ${t.bringBack(recordName(run))}
              </button>`
            : html`<button class="key stop apart" @click=${() => void this.putAway(id)}>${t.putAway}</button>`
        }`,
      (trouble) => (this.trouble = trouble),
    );
  }

  /** Whether its machine stands in the workshop at hand, or stood there when it is gone. */
  private isHere({ run }: EndedRun): boolean {
    const now = this.app.machines.find(run.machine)?.value.profile.workshop ?? run.workshop;
    return workshopKey(now) === workshopKey(this.app.profile?.workshop ?? '');
  }

  /** Those of the workshop at hand first, then the others: each by when it ended. */
  private lines(list: readonly EndedRun[]) {
    const here = list.filter((e) => this.isHere(e));
    const parts: [string, readonly EndedRun[]][] = [
      [this.app.profile?.workshop || frameText.noWorkshop, here],
      [t.elsewhere, list.filter((e) => !this.isHere(e))],
    ];
    let left = this.shown;
    return parts.map(([title, all]) => {
      const some = all.slice(0, left);
      left -= some.length;
      return some.length
        ? html`${here.length < list.length ? html`<h2 class="label">${title}</h2>` : nothing}
            <div class="stack">${some.map((e) => this.line(e))}</div>`
        : nothing;
    });
  }

  private isForReview(id: string, run: Run): boolean {
    return runRecalls(id, run, this.app.records.recalls).length > 0;
  }

  private line({ id, run }: EndedRun) {
    return html`<a class="key left" href="#/cut/records/${id}"
      ><span
        >${recordName(run)}<br /><small
          >${recordLine(run)}${this.isForReview(id, run) ? html` · <strong>${recallText.heading}</strong>` : nothing}</small
        ></span
      ></a
    >`;
  }

  private away() {
    const list = this.app.runs.away;
    if (list.length === 0) return nothing;
    return html`<h2 class="label apart">${t.away}</h2>
      <div class="stack">
        ${list.slice(0, PART).map(
          ({ id, run }) =>
            html`<button class="key left" @click=${() => void this.app.runs.bringBack(id)}>
              <span>${t.bringBack(recordName(run))}<br /><small>${recordLine(run)}</small></span>
            </button>`,
        )}
      </div>`;
  }

  private all() {
    const { list, ended } = this;
    const more = list.length - this.shown;
    const unreadable = this.app.runs.unreadable.length;
    return html`<h1>${t.title}</h1>
      ${unreadable ? html`<p class="alert">${t.unreadable(unreadable)}</p>` : nothing}
      ${
        ended.length === 0
          ? html`<p>${t.none}</p>`
          : html`<label class="label" for="query">${t.search}</label>
              <input
                id="query"
                type="search"
                autocomplete="off"
                autocapitalize="off"
                spellcheck="false"
                enterkeyhint="search"
                aria-describedby="hint"
                .value=${this.query}
                @input=${(e: Event) => {
                  this.query = (e.target as HTMLInputElement).value;
                  this.shown = PART;
                }}
              />
              <p class="note" id="hint">${t.searchHint}</p>
              <p role="status">${list.length ? t.count(list.length) : t.nothing}</p>
              ${this.lines(list)}
              ${
                more > 0
                  ? html`<button class="key" @click=${() => (this.shown += PART)}>${t.more(more)}</button>`
                  : nothing
              }
              ${list.length ? this.shareKeys(list) : nothing}`
      }
      ${this.away()}
      <a class="key apart" href="#/cut">${t.toCut}</a>`;
  }

  override render() {
    const [, id] = this.path;
    return id ? this.one(id) : this.all();
  }
}
