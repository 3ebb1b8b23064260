import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { checkWritten, FIELDS, boxOf, mountedOf, wheelsOf } from '../../core/machine';
import { writeTrain, writeWheels, type Stages } from '../../core/drive/trains/written';
import { Listen } from '../../elements/listen';
import { shared, written } from '../../elements/styles';
import { refusalText } from '../../text/typed';
import { stagesText } from '../../text/train-words';
import { wheelsText as t } from '../../text/wheels';
import type { App } from '../../state';

type WrittenName = 'gearWheels' | 'gearMounted' | 'boxTable' | 'torqueCurve';

/**
 * A motor's curve and change gears. Gears by touch: wheels put into the set and taken out, the train mounted built wheel by wheel; and any of them,
 * and the box's table, in writing.
 * @fires ls-kept - a whole value was kept: the field is done
 */
@customElement('ls-written')
export class LsWritten extends LitElement {
  static override styles = [
    ...shared,
    written,
    css`
      :host {
        --written: var(--t-label);
        display: flex;
        flex-direction: column;
        gap: var(--gap);
      }
      .grid {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(5.5rem, 1fr));
        gap: var(--gap);
      }
    `,
  ];
  @property({ attribute: false }) app!: App;
  @property() field: WrittenName = 'gearWheels';
  @state() private typed: string | null = null;
  @state() private error = '';
  @state() private draft: Stages | null = null;
  @state() private lever: string | null | undefined;

  private readonly listen = new Listen(this);

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('app')) this.listen.to(this.app);
    if (!changed.has('field')) return;
    this.typed = null;
    this.error = '';
    this.draft = null;
    this.lever = undefined;
  }

  private async keep(value: string): Promise<void> {
    await this.app.setField(this.field, value);
    this.dispatchEvent(new Event('ls-kept', { bubbles: true, composed: true }));
  }

  private writing(now: string | null): TemplateResult {
    const save = () => {
      const checked = checkWritten(FIELDS[this.field], this.typed ?? now ?? '');
      this.error = checked.ok ? '' : refusalText(checked.refusal);
      if (checked.ok) void this.keep(checked.value);
    };
    const example = t.examples[FIELDS[this.field].form];
    return html`<label class="label" for="written"
        >${this.field === 'gearWheels' ? t.write : t.writeAlone}: ${example}</label
      >
      <input
        id="written"
        .value=${this.typed ?? now ?? ''}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        aria-describedby="error"
        @input=${(e: Event) => (this.typed = (e.target as HTMLInputElement).value)}
      />
      <p id="error" class="over" role="alert">${this.error}</p>
      <button class="key" @click=${save}>${t.keep}</button>`;
  }

  private set(): TemplateResult {
    const wheels = (this.app.profile && wheelsOf(this.app.profile)) ?? [];
    const takeOut = (at: number) => {
      const left = wheels.filter((_, i) => i !== at);
      void this.app.setField('gearWheels', left.length ? writeWheels(left) : null);
    };
    return html`<p class="label">${wheels.length ? t.count(wheels.length) : t.none}</p>
      <div class="grid">
        ${wheels.map(
          (z, i) =>
            html`<button class="key" aria-label=${t.takeOut(z)} @click=${() => takeOut(i)}>${z} ✕</button>`,
        )}
      </div>
      ${wheels.length ? html`<p class="label">${t.help}</p>` : nothing}
      <a class="key solid apart" href="#/enter/wheel">${t.add}</a>`;
  }

  /** The last stage of the draft is open: it takes the next wheel. */
  private build(): TemplateResult {
    const { profile } = this.app;
    const wheels = profile && wheelsOf(profile);
    if (!profile || !wheels) return html`<a class="key" href="#/machine/field/gearWheels">${t.noSet}</a>`;
    const now = mountedOf(profile);
    const draft = this.draft ?? now?.stages ?? [];
    const box = boxOf(profile) ?? [];
    const lever = this.lever === undefined ? (now?.box ?? null) : this.lever;
    const used = draft.flat();
    const left = [...wheels];
    for (const z of used) if (left.includes(z)) left.splice(left.indexOf(z), 1);
    const open = draft.at(-1) ?? [];
    const add = (z: number) => (this.draft = [...draft.slice(0, -1), [...open, z]]);
    const takeLast = () => {
      const rest = open.slice(0, -1);
      this.draft = rest.length ? [...draft.slice(0, -1), rest] : draft.slice(0, -1);
    };
    const text = writeTrain({ stages: draft, box: box.length ? lever : null });
    const checked = checkWritten(FIELDS.gearMounted, text);
    return html`<p class="label">${t.draft}</p>
      <p class="figure" role="status">${draft.length ? stagesText(draft) : '–'}</p>
      <p class="label">${t.pick}</p>
      <div class="grid">
        ${[...new Set(left)].map((z) => html`<button class="key" @click=${() => add(z)}>${z}</button>`)}
      </div>
      ${
        box.length
          ? html`<p class="label">${t.lever}</p>
              <div class="grid">
                ${box.map(
                  (r) =>
                    html`<button
                      class="key"
                      aria-pressed=${r.name === lever}
                      @click=${() => (this.lever = r.name)}
                    >
                      ${r.name}
                    </button>`,
                )}
              </div>`
          : nothing
      }
      <button class="key" ?disabled=${open.length < 2} @click=${() => (this.draft = [...draft, []])}>
        ${t.nextPair}
      </button>
      <button class="key" ?disabled=${draft.length === 0} @click=${takeLast}>${t.takeLast}</button>
      <button
        class="key solid"
        ?disabled=${!checked.ok}
        @click=${() => checked.ok && void this.keep(checked.value)}
      >
        ${t.keep}
      </button>`;
  }

  protected override render() {
    const now = this.app.profile?.[this.field] ?? null;
    if (this.field === 'gearWheels') return html`${this.set()} ${this.writing(now)}`;
    return this.field === 'gearMounted' ? this.build() : this.writing(now);
  }
}
