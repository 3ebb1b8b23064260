import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { machineMark } from '../../elements/machine-mark';
import { EXAMPLES, type ExampleId } from '../../core/machine/examples';
import { frameText } from '../../text/frame';
import { exampleText, machineText, workshopText as t } from '../../text/machine';
import type { App } from '../../state';
import { workshopsOf, type Workshop } from '../../state/workshops';
import { mistakenNotes } from './mistaken';
import { marked } from '../../text/numbers';

/** Machines of the workshop at hand before the rest is asked for: on a small screen the next workshop is there too. */
const FIRST = 3;
/** So many more at once. */
const PART = 60;

type Machine = Workshop['machines'][number];

/** Machines by workshop, the one at hand first; the examples; those put away. */
@customElement('ls-machines')
export class MachinesScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    machineMark,
    css`
      /* On a phone on its side the other workshops stand beside this one. */
      .sides {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 20rem), 1fr));
        gap: 12px 24px;
        align-items: start;
      }
      .side {
        display: grid;
        gap: 12px;
      }
      .place {
        display: flex;
        gap: var(--gap);
      }
      .place .machine {
        flex: 1;
      }
    `,
  ];
  /** How many machines of a workshop are shown, by its key. */
  @state() private shown: Readonly<Record<string, number>> = {};

  /** Puts a machine in use, and goes on at the place that the list was called from. */
  private async use(id: string): Promise<void> {
    await this.app.useMachine(id);
    this.go(`#/${this.path[1] || 'threads'}`);
  }

  private async addExample(id: ExampleId): Promise<void> {
    const known = this.app.machines.list.find(
      (m) => m.value.example && m.value.profile.name === exampleText[id].name,
    );
    await this.use(known?.id ?? (await this.app.machines.add(EXAMPLES[id](), true)));
  }

  private async bringBack(id: string): Promise<void> {
    await this.app.bringBack(id);
    this.go('#/machine');
  }

  private key(colour: string | null, head: string, notes: readonly string[], press: () => void, now = false) {
    return html`<button class="key machine ${colour ?? ''}" aria-pressed=${now} @click=${press}>
      ${head}${notes.map((n) => html`<small>${n}</small>`)}
    </button>`;
  }

  private machine(m: Machine, workshop: Workshop): TemplateResult {
    const { machine, runs } = this.app;
    const { name, colour } = m.value.profile;
    const open = [runs.current, ...runs.others].find((r) => r?.run.machine === m.id);
    const notes = [
      m.value.example && machineText.exampleShort,
      open && t.open(marked(open.run.threadName)),
      ...mistakenNotes(workshop, m),
    ];
    return this.key(
      colour,
      name,
      notes.filter((n) => typeof n === 'string'),
      () => void this.use(m.id),
      machine?.id === m.id,
    );
  }

  private machines(workshop: Workshop, first: number) {
    const { key, machines } = workshop;
    const shown = this.shown[key] ?? first;
    const more = machines.length - shown;
    return html`<div class="stack">
      ${machines.slice(0, shown).map((m) => this.machine(m, workshop))}
      ${
        more > 0 && shown > 0
          ? html`<button class="key" @click=${() => (this.shown = { ...this.shown, [key]: shown + PART })}>
              ${t.more(more)}
            </button>`
          : nothing
      }
    </div>`;
  }

  /** Another workshop: its key puts the machine used last there in use; the one beside it shows the others. */
  private other(workshop: Workshop) {
    const { key, machines } = workshop;
    const [last] = machines;
    const name = workshop.name || frameText.noWorkshop;
    const open = (this.shown[key] ?? 0) > 0;
    return html`<div class="place">
        ${this.key(last.value.profile.colour, name, [t.last(last.value.profile.name, machines.length)], () => void this.use(last.id))}
        ${
          machines.length > 1
            ? html`<button
                class="key"
                aria-label=${t.show(machines.length, name)}
                aria-expanded=${open}
                @click=${() => (this.shown = { ...this.shown, [key]: open ? 0 : PART })}
              >
                ${open ? '−' : '+'}
              </button>`
            : nothing
        }
      </div>
      ${open ? this.machines(workshop, 0) : nothing}`;
  }

  private workshops() {
    const [here, ...others] = workshopsOf(this.app);
    if (!here) return nothing;
    return html`<div class="sides">
        <div class="side">
          <h2>${here.name || frameText.noWorkshop}</h2>
          ${this.machines(here, here.machines.length > FIRST + 1 ? FIRST : FIRST + 1)}
        </div>
        ${
          others.length
            ? html`<div class="side">
                <h2>${t.others}</h2>
                ${others.map((w) => this.other(w))}
              </div>`
            : nothing
        }
      </div>
      <a class="key solid apart" href="#/machine/new">${machineText.newMachine}</a>
      <a class="key" href="#/machine/field/workshop">${t.rename(here.name)}</a>`;
  }

  private away() {
    const { away } = this.app.machines;
    return away.length
      ? html`<h2>${machineText.awayTitle}</h2>
          <div class="stack">
            ${away
              .slice(0, PART)
              .map(({ id, value: { profile: p } }) =>
                this.key(
                  p.colour,
                  machineText.bringBackKey(p.name),
                  [p.workshop],
                  () => void this.bringBack(id),
                ),
              )}
          </div>`
      : nothing;
  }

  private examples() {
    return html`<h2>${machineText.examples}</h2>
      <p class="note">${machineText.examplesHelp}</p>
      <div class="stack">
        ${(Object.keys(EXAMPLES) as ExampleId[]).map((id) =>
          this.key(
            EXAMPLES[id]().colour,
            exampleText[id].name,
            [exampleText[id].note],
            () => void this.addExample(id),
          ),
        )}
      </div>`;
  }

  override render() {
    const { machine, machines } = this.app;
    const { loaded, unreadable } = machines;
    const none = loaded && !machine;
    return html`
      <h1>${none ? machineText.none : machineText.machines}</h1>
      ${
        unreadable.length
          ? html`<p class="alert" role="alert">${machineText.unreadableMachines(unreadable.length)}</p>`
          : nothing
      }
      ${loaded ? this.workshops() : nothing}
      ${none ? html`<a class="key solid" href="#/machine/new">${machineText.newMachine}</a>` : nothing}
      ${loaded ? html`${this.away()} ${this.examples()}` : nothing}
    `;
  }
}
