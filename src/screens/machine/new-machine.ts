import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { written } from '../../elements/styles';
import { checkText, FIELDS } from '../../core/machine';
import { newMachine, workshopText as t } from '../../text/machine';
import { refusalText } from '../../text/typed';
import type { App } from '../../state';
import { colourFor, workshopsOf } from '../../state/workshops';
import { workshopKeys } from './workshop-field';

type Asked = 'name' | 'workshop';

/** A machine of which nothing is known but its name and where it stands. */
@customElement('ls-new-machine')
export class NewMachineScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, written];
  @state() private typed: Partial<Record<Asked, string>> = {};
  @state() private errors: Partial<Record<Asked, string>> = {};

  /** The workshop at hand, until another one is written; an example's is no one's own. */
  private value(id: Asked): string {
    const live = this.app.machine;
    const here = id === 'workshop' && live && !live.value.example ? live.value.profile.workshop : '';
    return this.typed[id] ?? here;
  }

  private set(id: Asked, value: string): void {
    this.typed = { ...this.typed, [id]: value };
  }

  private async create(): Promise<void> {
    const name = checkText(FIELDS.name, this.value('name'));
    const workshop = checkText(FIELDS.workshop, this.value('workshop'));
    this.errors = {
      ...(name.ok ? {} : { name: refusalText(name.refusal) }),
      ...(workshop.ok ? {} : { workshop: refusalText(workshop.refusal) }),
    };
    if (!name.ok || !workshop.ok) return;
    const { app } = this;
    const id = await app.machines.addBlank(name.value, workshop.value, colourFor(app, workshop.value));
    await app.useMachine(id);
    this.go('#/machine/guide/0');
  }

  private entry(id: Asked) {
    const error = this.errors[id] ?? '';
    return html`<label class="label" for=${id}>${newMachine[id]}</label>
      <input
        id=${id}
        .value=${this.value(id)}
        autocomplete="off"
        maxlength="60"
        aria-invalid=${error ? 'true' : 'false'}
        aria-describedby="${id}-error"
        @input=${(e: Event) => this.set(id, (e.target as HTMLInputElement).value)}
      />
      <p id="${id}-error" class="over" role="alert">${error}</p>`;
  }

  override render() {
    return html`
      <h1>${newMachine.heading}</h1>
      <p>${newMachine.next}</p>
      ${this.entry('name')} ${this.entry('workshop')}
      ${workshopKeys(t.known, workshopsOf(this.app), this.value('workshop'), (name) => this.set('workshop', name))}
      <div class="grow"></div>
      <button class="key solid big" @click=${() => void this.create()}>${newMachine.add}</button>
    `;
  }
}
