import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import '../elements/row';
import { FAMILIES, threadById, type Thread } from '../core/thread';
import { search } from '../core/thread/search';
import { embedText as t } from '../text/embed';
import { statedText } from '../text/numbers';
import { familyText, startsText, threadsText } from '../text/threads';
import { EmbedElement, listed } from './element';
import { describe, pitchBoth, type EmbedThread } from './thread';

/** A person chose a thread. */
export class EmbedChooseEvent extends Event {
  static readonly type = 'ls-embed-choose';
  constructor(
    /** What was chosen. */
    readonly thread: EmbedThread,
  ) {
    super(EmbedChooseEvent.type, { bubbles: true, composed: true });
  }
}

const UNITS = ['any', 'mm', 'in', 'tpi'] as const;

/**
 * Look-up: a size or a pitch is typed as it comes to mind, and the threads that fit are offered as keys.
 * @element ls-embed-look-up
 * @fires {EmbedChooseEvent} ls-embed-choose - a thread was chosen
 * @csspart input - the line to type in
 * @csspart key - each key
 * @csspart results - the keys of the threads found
 * @csspart chosen - what is said of the chosen thread
 * @cssprop --ls-embed-paper - ground
 * @cssprop --ls-embed-ink - text and lines
 * @cssprop --ls-embed-ink-2 - second text
 * @cssprop --ls-embed-hair - hairlines
 * @cssprop --ls-embed-font - typeface
 * @cssprop --ls-embed-label - size of the text
 */
@customElement('ls-embed-look-up')
export class LsEmbedLookUp extends EmbedElement {
  static override styles = [
    ...EmbedElement.styles,
    css`
      .units {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(max(64px, 3.2em), 1fr));
      }
      .units .key {
        padding-inline: 2px;
      }
    `,
  ];

  /** Only threads of these families, by their ids; all of them where it is empty. */
  @property({ converter: listed }) families: readonly string[] = [];
  /** Most threads to offer at once. */
  @property({ type: Number }) most = 12;
  /** What is typed. */
  @property() query = '';
  /** Id of the chosen thread; empty for none. */
  @property({ reflect: true }) chosen = '';
  @state() private unit: (typeof UNITS)[number] = 'any';
  @query('input') private line!: HTMLInputElement;
  private found: readonly Thread[] = [];

  /** The chosen thread as the events tell of it; null for none. */
  get thread(): EmbedThread | null {
    const thread = threadById(this.chosen);
    return thread ? describe(thread) : null;
  }

  override focus(options?: FocusOptions): void {
    this.line.focus(options);
  }

  private get known(): readonly string[] {
    return this.families.filter((id) => FAMILIES.some((f) => f.id === id));
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { unit, most, families, known } = this;
    this.found = search(this.query, {
      unit: unit === 'any' ? null : unit,
      limit: most,
      ...(families.length ? { families: known } : {}),
    });
  }

  private pick(thread: Thread): void {
    this.chosen = thread.id;
    this.dispatchEvent(new EmbedChooseEvent(describe(thread)));
  }

  /** Arrows go from the line into the keys and among them; Escape goes back to the line. */
  private moved(e: KeyboardEvent): void {
    const keys = [...this.renderRoot.querySelectorAll<HTMLElement>('.results .key')];
    const at = keys.findIndex((key) => key === (this.renderRoot as ShadowRoot).activeElement);
    const step = { ArrowDown: 1, ArrowRight: 1, ArrowUp: -1, ArrowLeft: -1 }[e.key];
    if (e.key === 'Escape') this.line.focus();
    else if (step === undefined || (at < 0 && e.key !== 'ArrowDown')) return;
    else (keys[Math.min(at + step, keys.length - 1)] ?? this.line).focus();
    e.preventDefault();
  }

  private facts(thread: Thread) {
    return html`<div part="chosen">
      <ls-row .label=${t.chosen} .value=${thread.designation} .note=${familyText(thread.family)}></ls-row>
      <ls-row
        .label=${threadsText.pitch}
        .value=${pitchBoth(thread)}
        .note=${thread.starts > 1 ? startsText(thread.starts) : ''}
      ></ls-row>
      ${thread.major ? html`<ls-row .label=${t.major} .value=${statedText(thread.major)}></ls-row>` : nothing}
    </div>`;
  }

  protected override render() {
    const { found, known } = this;
    const unknown = this.families.filter((id) => !known.includes(id));
    const chosen = threadById(this.chosen);
    const said = this.query.trim() !== '';
    return html`<div class="stack" @keydown=${(e: KeyboardEvent) => this.moved(e)}>
      <div class="entry">
        <label class="label" for="line">${threadsText.searchLabel}</label>
        <input
          id="line"
          part="input"
          .value=${this.query}
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          aria-describedby="hint"
          @input=${(e: Event) => (this.query = (e.target as HTMLInputElement).value)}
        />
        <p id="hint" class="note">${threadsText.typeHint}</p>
      </div>
      <div class="keys units" role="group" aria-label=${t.unit}>
        ${UNITS.map(
          (unit) =>
            html`<button
              class="key"
              part="key"
              aria-pressed=${unit === this.unit}
              @click=${() => (this.unit = unit)}
            >
              ${threadsText.ways[unit]}
            </button>`,
        )}
      </div>
      ${unknown.length ? html`<p class="over">${t.noFamily(unknown)}</p>` : nothing}
      <p role="status" class=${said && !found.length ? '' : 'vh'}>
        ${said ? (found.length ? threadsText.foundCount(found.length) : threadsText.nothingFound) : ''}
      </p>
      <div class="results" part="results" role="group" aria-label=${threadsText.foundCount(found.length)}>
        ${found.map(
          (one) =>
            html`<button
              class="key"
              part="key"
              aria-pressed=${one.id === this.chosen}
              @click=${() => this.pick(one)}
            >
              ${one.designation}
            </button>`,
        )}
      </div>
      ${chosen ? this.facts(chosen) : this.chosen ? html`<p>${t.unknownThread(this.chosen)}</p>` : nothing}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-embed-look-up': LsEmbedLookUp;
  }
  interface HTMLElementEventMap {
    'ls-embed-choose': EmbedChooseEvent;
  }
}
