import { html, css } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/pad';
import type { PadInputEvent } from '../../elements/pad';
import { readNumber, type NumberField } from '../../core/machine';
import type { Stated, Unit } from '../../core/quantity';
import { TICK, vibrate } from '../../device/vibrate';
import { mark, plain } from '../../text/numbers';
import { readErrorText, refusalText, understood } from '../../text/typed';
import { enterText } from '../../text/app';
import { padWords } from '../../text/pad';
import type { App } from '../../state';
import { questionFor, type Question } from './questions';

/**
 * One number on our own pad, filling the screen: a field of the machine, something of the job, a reading of a
 * check. What is typed stays until it is accepted; what can't be right is refused beside it, in words.
 */
@customElement('ls-enter')
export class EnterScreen extends ScreenElement<App> {
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
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: var(--gap);
      }
    `,
  ];
  @state() private typed = '';
  @state() private unit: Unit | null = null;
  @state() private refused = '';
  private touched = false;
  private shown = '';

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const here = this.path.join('/');
    if (here === this.shown) return;
    this.shown = here;
    const q = questionFor(this.app, this.path);
    this.typed = q?.now ? plain(q.now.value).replace('−', '-') : '';
    this.unit = q?.now?.unit ?? q?.field.units[0] ?? null;
    this.touched = false;
    this.refused = '';
  }

  private read(field: NumberField): { value: Stated | null; line: string; error: string } {
    if (this.typed === '' || !this.unit) return { value: null, line: '', error: '' };
    const read = readNumber(field, this.typed, this.unit);
    if (read.ok) return { value: read.value, line: understood(read.value, field.units), error: '' };
    const { code } = read.refusal;
    // Half-typed is no mistake yet; it becomes one when Done is pressed.
    const waiting = code === 'unfinished' || code === 'out-of-range' || code === 'not-whole';
    return { value: null, line: '', error: waiting && !this.refused ? '' : refusalText(read.refusal) };
  }

  private async done(q: Question): Promise<void> {
    const { value } = this.read(q.field);
    if (!value) {
      this.refused = 'yes';
      return;
    }
    // What can't be saved stays on the pad, and says so.
    const trouble = await q.accept(value).catch(() => enterText.notSaved);
    if (trouble) this.refused = trouble;
    else this.leave();
  }

  /** Back to where the pad was opened; in the guided entry on to the next field, so that the pad isn't a detour. */
  private leave(): void {
    const at = Number(this.path[2]);
    if (this.path[0] === 'machine' && Number.isInteger(at) && this.path[2])
      location.replace(`#/machine/guide/${at + 1}`);
    else history.back();
  }

  private async notKnown(q: Question): Promise<void> {
    await q.forget?.();
    this.leave();
  }

  override render() {
    const q = questionFor(this.app, this.path);
    if (!q || !this.unit) return html`<h1>${enterText.nothingToEnter}</h1>`;
    const read = this.read(q.field);
    const empty = this.refused && this.typed === '' ? readErrorText('empty') : '';
    const trouble = this.refused && this.refused !== 'yes' ? this.refused : '';
    return html`<h1 class="vh">${q.label}</h1>
      <ls-pad
        .label=${this.named(q.label, this.app.profile?.name ?? '')}
        .value=${this.typed}
        .units=${q.field.units.map((u) => ({ id: u, label: q.unitLabel(u) }))}
        .unit=${this.unit}
        .mark=${mark()}
        .words=${padWords}
        .understood=${read.line && this.named(read.line, this.app.profile?.name ?? '')}
        .error=${trouble || empty || read.error}
        @ls-pad-input=${(e: PadInputEvent) => {
          vibrate(TICK);
          // The first key replaces what stood there; correcting keeps it.
          const grown =
            !this.touched && e.value.startsWith(this.typed) && e.value.length === this.typed.length + 1;
          this.typed = grown && e.unit === this.unit ? e.value.slice(this.typed.length) : e.value;
          this.touched = true;
          this.unit = e.unit as Unit;
          this.refused = '';
        }}
      >
        <div slot="results" class="results by-hand">
          ${
            q.forget
              ? html`<button class="key" @click=${() => void this.notKnown(q)}>${enterText.notKnown}</button>`
              : html`<button class="key" @click=${() => history.back()}>${enterText.cancel}</button>`
          }
          <button class="key solid" @click=${() => void this.done(q)}>${enterText.done}</button>
        </div>
      </ls-pad>`;
  }
}
