import { html, nothing, css } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/pad';
import type { PadInputEvent } from '../../elements/pad';
import { FEED_FIELD, PITCH_FIELD, type ThreadChoice } from '../../core/job';
import { readNumber } from '../../core/machine';
import type { Thread } from '../../core/thread';
import { search } from '../../core/thread/search';
import { isUnit } from '../../core/quantity';
import { TICK, vibrate } from '../../device/vibrate';
import { mark, marked } from '../../text/numbers';
import { refusalText, understood } from '../../text/typed';
import { padWords } from '../../text/pad';
import { threadsText } from '../../text/threads';
import type { App } from '../../state';

type Way = 'any' | 'mm' | 'tpi' | 'in' | 'module' | 'dp' | 'feed-mm' | 'feed-in';
const WAYS: readonly Way[] = ['any', 'mm', 'tpi', 'in', 'module', 'dp', 'feed-mm', 'feed-in'];
const SHOWN = 24;
/** So many fit beside one another; the others come after them, so that nothing waits for what isn't in sight. */
const AT_ONCE = 4;

const afterPaint = (act: () => void): void => void requestAnimationFrame(() => setTimeout(act));

/**
 * Typing a size or a pitch: the list narrows at each key. With a unit chosen, what was typed can also be used as
 * it stands: a bare pitch, a worm's module or diametral pitch, or a feed per rev.
 */
@customElement('ls-type')
export class TypeScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      :host {
        --widest: none;
        padding: 0;
        block-size: 100%;
        overflow: hidden;
      }
      ls-pad {
        flex: 1;
        min-block-size: 0;
      }
      .results {
        /* Its keys are half as wide as it is, those in the inner box too. */
        container-type: inline-size;
        display: flex;
        gap: var(--gap);
        overflow-x: auto;
      }
      .others {
        display: flex;
        gap: var(--gap);
      }
      .others:empty {
        display: none;
      }
      /* Until the list follows the last sign, a touch would take what stood there before it. */
      :host([aria-busy]) .results {
        pointer-events: none;
      }
      /* Not taken out while they wait: laid out as they are, unseen and out of reach. */
      .others.waiting {
        content-visibility: hidden;
      }
      .results .key {
        flex: 0 0 auto;
        min-inline-size: calc(50cqi - var(--gap) / 2);
      }
    `,
  ];
  @state() private typed = '';
  @state() private way: Way = 'any';
  /** Always the same list: with a new one the pad would draw itself twice at each key. */
  private readonly units = WAYS.map((w) => ({ id: w, label: threadsText.ways[w] }));
  /** What the list stands for in full; until then only its beginning is drawn. */
  @state() private drawn = '';
  private others: unknown[] = [];

  private get found(): readonly Thread[] {
    if (this.way === 'module' || this.way === 'dp' || this.way.startsWith('feed')) return [];
    const { favourites, recent } = this.app.settings;
    const unit = this.way === 'any' ? null : (this.way as 'mm' | 'in' | 'tpi');
    const own = this.app.own.indexes;
    return search(this.typed, { unit, favourites: new Set(favourites), recent, own, limit: SHOWN });
  }

  /** What was typed, taken as a pitch or feed by itself. */
  private get asItStands(): { choice: ThreadChoice; line: string } | { error: string } | null {
    if (this.way === 'any' || this.typed === '') return null;
    const feed = this.way.startsWith('feed');
    const unit = feed ? this.way.slice(5) : this.way;
    if (!isUnit(unit)) return null;
    const read = readNumber(feed ? FEED_FIELD : PITCH_FIELD, this.typed, unit);
    if (!read.ok) return { error: refusalText(read.refusal) };
    const choice: ThreadChoice = feed
      ? { kind: 'feed', perRev: read.value }
      : { kind: 'pitch', pitch: read.value };
    return { choice, line: understood(read.value, PITCH_FIELD.units) };
  }

  /** The pad shows the sign by itself, at once; what it finds follows when that is on the screen. */
  private heard({ value, unit }: PadInputEvent): void {
    vibrate(TICK);
    // Nothing is drawn for it: what stands in the list is still that of the sign before.
    this.ariaBusy = 'true';
    afterPaint(() => {
      this.typed = value;
      this.way = unit as Way;
      this.requestUpdate();
    });
  }

  override updated(): void {
    if (this.drawn !== this.asked) afterPaint(() => (this.drawn = this.asked));
    else this.ariaBusy = null;
  }

  private keyOf(t: Thread) {
    return html`<button class="key" @click=${() => this.pick(t)}>${marked(t.designation)}</button>`;
  }

  private get asked(): string {
    return `${this.way} ${this.typed}`;
  }

  private pick(t: Thread): void {
    void this.app.chooseFound(t);
    this.go('#/threads');
  }

  private use(choice: ThreadChoice): void {
    void this.app.chooseThread(choice, 1);
    this.go('#/threads');
  }

  override render() {
    const bare = this.asItStands;
    const { found } = this;
    // Unseen rather than taken out meanwhile: the keys are used again for what comes next.
    const whole = this.drawn === this.asked;
    if (whole) this.others = found.slice(AT_ONCE).map((t) => this.keyOf(t));
    return html`<h1 class="vh">${threadsText.search}</h1>
      <ls-pad
        .label=${this.named(threadsText.searchLabel, this.app.profile?.name ?? '')}
        .value=${this.typed}
        .units=${this.units}
        .unit=${this.way}
        .mark=${mark()}
        .words=${padWords}
        .understood=${bare && 'line' in bare ? bare.line : ''}
        .error=${bare && 'error' in bare && found.length === 0 ? bare.error : ''}
        @ls-pad-input=${(e: PadInputEvent) => this.heard(e)}
      >
        <div slot="results" class="results" role="group" aria-label=${threadsText.foundCount(found.length)}>
          ${
            bare && 'choice' in bare
              ? html`<button class="key solid" @click=${() => this.use(bare.choice)}>
                  ${this.way.startsWith('feed') ? threadsText.asFeed : threadsText.asPitch}
                </button>`
              : nothing
          }
          ${found.slice(0, AT_ONCE).map((t) => this.keyOf(t))}
          <span class="others ${whole ? '' : 'waiting'}">${this.others}</span>
          ${
            found.length === 0 && !(bare && 'choice' in bare)
              ? html`<p class="note">${this.typed ? threadsText.nothingFound : threadsText.typeHint}</p>`
              : nothing
          }
        </div>
      </ls-pad>`;
  }
}
