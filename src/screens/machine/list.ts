import { html, nothing, css } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { written } from '../../elements/styles';
import { checkText, FIELDS } from '../../core/machine';
import { EXAMPLES, type ExampleId } from '../../core/machine/examples';
import { exampleText, machineText, newMachine } from '../../text/machine';
import { refusalText } from '../../text/typed';
import type { App } from '../../state';

/** Machines by workshop; a new one; the examples. */
@customElement('ls-machines')
export class MachinesScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    written,
    css`
      .machine {
        border-inline-start-width: 16px;
        flex-direction: column;
        align-items: flex-start;
        text-align: start;
      }
      .machine small {
        font-size: 1rem;
        font-weight: 400;
      }
      .teal {
        border-inline-start-color: var(--machine-teal);
      }
      .amber {
        border-inline-start-color: var(--machine-amber);
      }
      .plum {
        border-inline-start-color: var(--machine-plum);
      }
      .moss {
        border-inline-start-color: var(--machine-moss);
      }
      .brick {
        border-inline-start-color: var(--machine-brick);
      }
      .slate {
        border-inline-start-color: var(--machine-slate);
      }
    `,
  ];
  @state() private name = '';
  @state() private workshop: string | null = null;
  @state() private errors: { name?: string; workshop?: string } = {};

  private async use(id: string): Promise<void> {
    await this.app.useMachine(id);
    this.go('#/threads');
  }

  private async addExample(id: ExampleId): Promise<void> {
    const known = this.app.machines.list.find(
      (m) => m.value.example && m.value.profile.name === exampleText[id].name,
    );
    await this.use(known?.id ?? (await this.app.machines.add(EXAMPLES[id](), true)));
  }

  private async create(): Promise<void> {
    const name = checkText(FIELDS.name, this.name);
    const workshop = checkText(FIELDS.workshop, this.workshopTyped);
    this.errors = {
      ...(name.ok ? {} : { name: refusalText(name.refusal) }),
      ...(workshop.ok ? {} : { workshop: refusalText(workshop.refusal) }),
    };
    if (!name.ok || !workshop.ok) return;
    const id = await this.app.machines.addBlank(name.value, workshop.value);
    await this.app.useMachine(id);
    this.go('#/machine/guide/0');
  }

  private get workshopTyped(): string {
    const live = this.app.machine;
    return this.workshop ?? (live && !live.value.example ? live.value.profile.workshop : '');
  }

  private entry(id: 'name' | 'workshop', value: string, set: (v: string) => void) {
    const error = this.errors[id] ?? '';
    return html`<label class="label" for=${id}>${newMachine[id]}</label>
      <input
        id=${id}
        .value=${value}
        autocomplete="off"
        maxlength="60"
        aria-invalid=${error ? 'true' : 'false'}
        aria-describedby="${id}-error"
        @input=${(e: Event) => set((e.target as HTMLInputElement).value)}
      />
      <p id="${id}-error" class="over" role="alert">${error}</p>`;
  }

  private newMachine() {
    return html`
      <h1>${newMachine.heading}</h1>
      <p>${newMachine.next}</p>
      ${this.entry('name', this.name, (v) => (this.name = v))}
      ${this.entry('workshop', this.workshopTyped, (v) => (this.workshop = v))}
      <div class="grow"></div>
      <button class="key solid big" @click=${() => void this.create()}>${newMachine.add}</button>
    `;
  }

  private away() {
    const { away } = this.app.machines;
    return away.length
      ? html`<h2>${machineText.awayTitle}</h2>
          <div class="stack">
            ${away.map(
              (m) =>
                html`<button
                  class="key machine ${m.value.profile.colour ?? ''}"
                  @click=${() => void this.bringBack(m.id)}
                >
                  ${machineText.bringBackKey(m.value.profile.name)}<small>${m.value.profile.workshop}</small>
                </button>`,
            )}
          </div>`
      : nothing;
  }

  private async bringBack(id: string): Promise<void> {
    await this.app.bringBack(id);
    this.go('#/machine');
  }

  private examples() {
    return html`<h2>${machineText.examples}</h2>
      <p class="note">${machineText.examplesHelp}</p>
      <div class="stack">
        ${(Object.keys(EXAMPLES) as ExampleId[]).map(
          (id) =>
            html`<button
              class="key machine ${EXAMPLES[id]().colour ?? ''}"
              @click=${() => void this.addExample(id)}
            >
              ${exampleText[id].name}<small>${exampleText[id].note}</small>
            </button>`,
        )}
      </div>`;
  }

  override render() {
    if (this.path[0] === 'new') return this.newMachine();
    const own = this.app.machines.list;
    const workshops = [...new Set(own.map((m) => m.value.profile.workshop))];
    return html`
      <h1>${own.length ? machineText.machines : machineText.none}</h1>
      ${workshops.map(
        (w) =>
          html`<h2 class="label">${w}</h2>
            <div class="stack">
              ${own
                .filter((m) => m.value.profile.workshop === w)
                .map(
                  (m) =>
                    html`<button
                      class="key machine ${m.value.profile.colour ?? ''}"
                      aria-pressed=${this.app.machine?.id === m.id}
                      @click=${() => void this.use(m.id)}
                    >
                      ${m.value.profile.name}
                      ${m.value.example ? html`<small>${machineText.exampleShort}</small>` : nothing}
                    </button>`,
                )}
            </div>`,
      )}
      ${
        this.app.machines.unreadable.length
          ? html`<p class="alert" role="alert">
              ${machineText.unreadableMachines(this.app.machines.unreadable.length)}
            </p>`
          : nothing
      }
      <a class="key solid" href="#/machine/new">${machineText.newMachine}</a>
      ${this.away()} ${this.examples()}
    `;
  }
}
