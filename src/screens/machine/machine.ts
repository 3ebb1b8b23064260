import { html, nothing, css } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import {
  FIELD_NAMES,
  FIELDS,
  GROUPS,
  type FieldName,
  type Group,
  type MachineProfile,
} from '../../core/machine';
import { isAsked } from '../../core/machine/asked';
import { fieldText, groupName, machineText } from '../../text/machine';
import { decimal, plain } from '../../text/numbers';
import { trainsKey } from '../../text/pages';
import { mul, ratioText, type Ratio } from '../../core/quantity';
import { settingsSheetKey } from '../../text/pages';
import { proveKeys } from '../../text/prove';
import { backedUpText, carryText } from '../../text/carry';
import type { App } from '../../state';
import { carryOf } from '../../state/carry';
import { workshopsOf } from '../../state/workshops';
import { firstRunText } from '../../text/first-run';
import { mistakenNotes } from './mistaken';
import { fieldValue, isKnown } from '../../text/field-value';

/** Machine: everything known about the lathe and its drive, and what still isn't. */
@customElement('ls-machine')
export class MachineScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      a.line {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        align-content: center;
        gap: 0 1rem;
        color: inherit;
        text-decoration: none;
        min-block-size: 64px;
        margin-block-start: 8px;
        padding-block-end: 8px;
        border-block-end: 1px solid var(--hair);
      }
      a.line .figure {
        font-size: 1.375rem;
        margin-inline-start: auto;
        text-align: end;
      }
      a.line.open .figure {
        color: var(--unknown);
        font-weight: 400;
      }
    `,
  ];

  override connectedCallback(): void {
    super.connectedCallback();
    void carryOf(this.app)
      .look()
      .then(() => this.requestUpdate());
  }

  /** That much has changed since the last back-up. */
  private reminder() {
    const { backedUp, due } = carryOf(this.app);
    return backedUp && due
      ? html`<p class="note">${backedUpText(backedUp.at, backedUp.changes)}</p>`
      : nothing;
  }

  private line(m: MachineProfile, f: FieldName) {
    const known = isKnown(m, f) || FIELDS[f].kind === 'text';
    return html`<a class="line ${known ? '' : 'open'}" href="#/machine/field/${f}">
      <span class="label">${fieldText[f].label}</span>
      <span class="figure">${known ? '' : '? '}${fieldValue(m, f)}</span>
    </a>`;
  }

  private group(m: MachineProfile, g: Group) {
    const fields = FIELD_NAMES.filter((f) => FIELDS[f].group === g && isAsked(f, m));
    return html`<h2>${groupName[g]}</h2>
      <div>${fields.map((f) => this.line(m, f))}</div>`;
  }

  private worked() {
    const { sheet } = this.app;
    if (this.app.profile?.driveKind === 'change-gears') return this.geared();
    const counts = sheet.get('countsPerRev').value;
    const steps = sheet.get('stepsPerScrewRev').value;
    const step = sheet.get('stepOnCarriage').value;
    const show = (label: string, value: string | null, unit: string, figure: string) =>
      html`<ls-row
        .label=${label}
        .value=${value ?? machineText.notKnown}
        .unit=${value === null ? '' : unit}
        why="Why"
        .figure=${figure}
      ></ls-row>`;
    return html`<h2>${machineText.worked}</h2>
      <div>
        ${show(machineText.countsPerRev, counts && plainOrRatio(counts), '', 'countsPerRev')}
        ${show(machineText.stepsPerScrewRev, steps && plainOrRatio(steps), '', 'stepsPerScrewRev')}
        ${show(machineText.stepOnCarriage, step && decimal(mul(step, 1000), 3), 'µm', 'stepOnCarriage')}
      </div>`;
  }

  private geared() {
    const train = this.app.sheet.get('train').value;
    const cuts = train?.kind === 'wheels' ? decimal(train.cuts, 4) : null;
    return html`<h2>${machineText.worked}</h2>
      <div>
        <ls-row
          .label=${machineText.trainCuts}
          .value=${cuts ?? machineText.notKnown}
          .unit=${cuts === null ? '' : 'mm'}
          why="Why"
          figure="train"
        ></ls-row>
      </div>
      <div class="stack apart"><a class="key left" href="#/threads/trains">${trainsKey}</a></div>`;
  }

  /** What it could be mistaken for where it stands. */
  private mistaken() {
    const [here] = workshopsOf(this.app);
    const notes = here ? mistakenNotes(here, here.machines[0]) : [];
    return notes.length ? html`<p class="note">${notes.join('. ')}.</p>` : nothing;
  }

  override render() {
    const live = this.app.machine;
    if (!live) return html`<h1>${machineText.none}</h1>`;
    const m = live.value.profile;
    const asked = FIELD_NAMES.filter((f) => isAsked(f, m) && FIELDS[f].kind !== 'text');
    const open = asked.filter((f) => !isKnown(m, f)).length;
    return html`
      <h1>${m.name}</h1>
      ${this.mistaken()}
      ${live.value.example ? html`<p class="alert"><strong>${machineText.example}</strong></p>` : nothing}
      ${
        live.value.unreadable.length
          ? html`<p class="alert" role="alert">
              ${live.value.unreadable.map((f) => fieldText[f as FieldName]?.label ?? f).join(', ')}:
              ${machineText.unreadable}
            </p>`
          : nothing
      }
      <p>${open === 0 ? machineText.allKnown : machineText.openCount(open)}</p>
      <div class="pair">
        <a class="key solid" href="#/machine/guide/0">${machineText.guided}</a>
        <a class="key" href="#/machine/list">${machineText.another}</a>
      </div>
      ${this.worked()} ${GROUPS.map((g) => this.group(m, g))}
      <h2>${machineText.hours}</h2>
      <a class="line" href="#/enter/hours">
        <span class="label">${machineText.hoursNote}</span>
        <span class="figure">${this.app.records.newestHours ?? machineText.notKept}</span>
      </a>
      <div class="stack">
        <a class="key left" href="#/machine/sheet">${settingsSheetKey}</a>
        ${Object.entries(proveKeys).map(
          ([page, label]) => html`<a class="key left" href="#/machine/${page}">${label}</a>`,
        )}
        <a class="key left" href="#/machine/carry">${carryText.heading}</a>
        ${this.reminder()}
        <a class="key left" href="#/machine/first">${firstRunText.title}</a>
        <a class="key left" href="#/settings">${machineText.settings}</a>
      </div>
      <div class="apart">
        <button class="key stop" @click=${() => void this.app.putAway(live.id)}>
          ${machineText.putAwayKey(m.name)}
        </button>
      </div>
    `;
  }
}

const plainOrRatio = (r: Ratio): string => (r.d === 1n ? plain(r) : ratioText(r));
