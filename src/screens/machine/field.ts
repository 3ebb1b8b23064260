import { html, nothing, css } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import { machineMark } from '../../elements/machine-mark';
import { written } from '../../elements/styles';
import {
  checkSpeeds,
  checkText,
  FIELD_NAMES,
  FIELDS,
  readNumber,
  type FieldName,
  type MachineProfile,
} from '../../core/machine';
import { isAsked } from '../../core/machine/asked';
import { compare, type Stated } from '../../core/quantity';
import { choiceLabel, choiceNote, fieldText, groupName, machineText } from '../../text/machine';
import { plain, showStated } from '../../text/numbers';
import { refusalText } from '../../text/typed';
import { fieldUnitFor } from '../../text/units';
import type { App } from '../../state';
import { fieldValue } from '../../text/field-value';
import { restsOnText } from '../../text/checks/rests-on';
import { mistakeLinksAt } from '../../text/mistakes';
import { colourTaken, workshopField } from './workshop-field';
import './written';

type AnyValue = MachineProfile[FieldName];

/** A usual value on its key. A pulley of one tooth stands for no belt at all. */
const suggestion = (field: FieldName, value: Stated): string => {
  const direct = field.endsWith('Pulley') && compare(value.value, 1) === 0;
  return `${showStated(value).value} ${direct ? machineText.direct : fieldUnitFor(field, value)}`
    .replace(' °', '°')
    .trim();
};

/**
 * One field of the machine: what it is, where to read it, its usual values as keys, "not known", and typing it.
 * In the guided entry ("guide/12") the same page walks from field to field.
 */
@customElement('ls-field')
export class FieldScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    written,
    machineMark,
    css`
      textarea {
        font-size: var(--t-label);
        font-weight: 400;
        min-block-size: 40vh;
      }
      .choice {
        flex-direction: column;
        align-items: flex-start;
        text-align: start;
      }
      .choice small {
        font-size: 1rem;
        font-weight: 400;
      }
    `,
  ];
  @state() private error = '';
  @state() private typed: string | null = null;
  private shown = '';

  private get guided(): boolean {
    return this.path[0] === 'guide';
  }

  private get fields(): readonly FieldName[] {
    const m = this.app.profile;
    return FIELD_NAMES.filter((f) => m && isAsked(f, m) && FIELDS[f].group !== 'name');
  }

  private get field(): FieldName | null {
    if (!this.guided) return FIELD_NAMES.find((f) => f === this.path[1]) ?? null;
    return this.fields[Number(this.path[1])] ?? null;
  }

  private next(): void {
    if (!this.guided) return history.back();
    const at = Number(this.path[1]) + 1;
    this.go(at < this.fields.length ? `#/machine/guide/${at}` : '#/machine');
  }

  private async choose(field: FieldName, value: AnyValue): Promise<void> {
    const here = this.field;
    await this.app.setField(field, value);
    // A choice may add or drop fields behind it, never before it, so the count in the address still holds.
    if (this.field === here) this.next();
  }

  private numberKeys(field: FieldName) {
    const spec = FIELDS[field];
    if (spec.kind !== 'number') return nothing;
    const first = spec.units[0];
    const now = this.app.profile?.[field] as Stated | null;
    const suggest = (spec as { suggest?: readonly string[] }).suggest ?? [];
    return html`
      ${
        suggest.length
          ? html`<div class="grid3">
              ${suggest.map((text) => {
                const read = readNumber(spec, text, first);
                if (!read.ok) return nothing;
                const pressed = now?.unit === first && compare(now.value, read.value.value) === 0;
                return html`<button
                  class="key"
                  aria-pressed=${pressed}
                  @click=${() => void this.choose(field, read.value)}
                >
                  ${suggestion(field, read.value)}
                </button>`;
              })}
            </div>`
          : nothing
      }
      <a class="key solid" href="#/enter/machine/${field}${this.guided ? `/${this.path[1] ?? ''}` : ''}"
        >${suggest.length ? machineText.typeIt : machineText.typeFirst}</a
      >
    `;
  }

  private writtenKeys(field: FieldName) {
    return FIELDS[field].kind === 'written'
      ? html`<ls-written .app=${this.app} .field=${field} @ls-kept=${() => this.next()}></ls-written>`
      : nothing;
  }

  private choiceKeys(field: FieldName) {
    const spec = FIELDS[field];
    if (spec.kind !== 'choice') return nothing;
    const note = (o: string): string =>
      field === 'colour' ? colourTaken(this.app, o) : choiceNote(field, o);
    return html`<div class="stack">
      ${spec.options.map(
        (o) =>
          html`<button
            class="key ${field === 'colour' ? `machine ${o}` : 'choice'}"
            aria-pressed=${this.app.profile?.[field] === o}
            @click=${() => void this.choose(field, o)}
          >
            ${choiceLabel(field, o)} ${note(o) ? html`<small>${note(o)}</small>` : nothing}
          </button>`,
      )}
    </div>`;
  }

  private speedKeys(field: FieldName) {
    const spec = FIELDS[field];
    if (spec.kind !== 'speeds') return nothing;
    const list = (this.app.profile?.[field] as readonly Stated[] | null) ?? [];
    const without = (s: Stated) => {
      const checked = checkSpeeds(
        spec,
        list.filter((x) => x !== s),
      );
      if (checked.ok) void this.app.setField('spindleSpeeds', checked.value.length ? checked.value : null);
    };
    return html`
      <div class="grid3">
        ${list.map(
          (s) =>
            html`<button
              class="key"
              aria-label=${machineText.removeSpeedKey(plain(s.value))}
              @click=${() => without(s)}
            >
              ${plain(s.value)} ✕
            </button>`,
        )}
      </div>
      <a class="key solid apart" href="#/enter/speed">${machineText.addSpeed}</a>
      ${list.length ? html`<p class="note">${machineText.removeHelp}</p>` : nothing}
    `;
  }

  private textEntry(field: FieldName) {
    const spec = FIELDS[field];
    if (spec.kind !== 'text') return nothing;
    const value = this.typed ?? (this.app.profile?.[field] as string);
    const save = () => {
      const checked = checkText(spec, value);
      if (!checked.ok) {
        this.error = refusalText(checked.refusal);
        return;
      }
      this.error = '';
      void this.choose(field, checked.value);
    };
    const typing = (e: Event) => (this.typed = (e.target as HTMLInputElement).value);
    return html`
      <label class="label" for="text">${fieldText[field].label}</label>
      ${
        field === 'notes'
          ? html`<textarea id="text" .value=${value} aria-describedby="error" @input=${typing}></textarea>`
          : html`<input
              id="text"
              .value=${value}
              aria-describedby="error"
              autocomplete="off"
              @input=${typing}
            />`
      }
      <p id="error" class="over" role="alert">${this.error}</p>
      ${
        field === 'workshop'
          ? workshopField(this.app, value, {
              save,
              move: (name) => void this.choose(field, name),
              rename: (old, name) => void this.app.nameWorkshop(old, name).then(() => this.next()),
              refuse: (why) => (this.error = why),
            })
          : html`<button class="key solid" @click=${save}>${machineText.save}</button>`
      }
    `;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const here = this.path.join('/');
    if (here !== this.shown) {
      this.shown = here;
      this.typed = null;
      this.error = '';
    }
  }

  override render() {
    const m = this.app.profile;
    const { field } = this;
    if (!m || !field) return html`<h1>${machineText.noSuchField}</h1>`;
    const text = fieldText[field];
    const spec = FIELDS[field];
    const unknown = m[field] === null;
    return html`
      ${
        this.guided
          ? html`<p class="label">
              ${groupName[spec.group]} · ${machineText.progress(Number(this.path[1]) + 1, this.fields.length)}
            </p>`
          : html`<p class="label">${groupName[spec.group]}</p>`
      }
      <h1>${text.question}</h1>
      ${spec.kind === 'text' ? nothing : html`<p class="figure">${fieldValue(m, field)}</p>`}
      <p>${text.where}</p>
      <p class="note">${text.needed}</p>
      ${links(mistakeLinksAt(`machine/field/${field}`))}
      <div class="grow"></div>
      ${this.writtenKeys(field)} ${this.numberKeys(field)} ${this.choiceKeys(field)} ${this.speedKeys(field)}
      ${this.textEntry(field)}
      ${
        spec.kind === 'text'
          ? nothing
          : html`<button class="key" aria-pressed=${unknown} @click=${() => void this.choose(field, null)}>
              ${machineText.notKnown}
            </button>`
      }
      ${
        this.guided
          ? html`<div class="pair by-hand">
              <button class="key" @click=${() => history.back()}>${machineText.guidedBack}</button>
              <button class="key" @click=${() => this.next()}>${machineText.guidedNext}</button>
            </div>`
          : html`<a class="key" href="#/machine">${machineText.toMachine}</a>`
      }
      ${restsOnText(field).map((line) => html`<p class="note">${line}</p>`)}
    `;
  }
}
