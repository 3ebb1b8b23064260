import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import { printPage } from '../../device/print';
import { servoSheet, sheetRow } from '../../core/figures/settings-sheet';
import { MARGIN_ELECTRONIC } from '../../core/figures/standing';
import type { MachineProfile } from '../../core/machine';
import {
  compare,
  decimalText,
  div,
  mul,
  ratioText,
  toNumber,
  type Ratio,
  type Stated,
} from '../../core/quantity';
import { choiceLabel, fieldText, whoseText } from '../../text/machine';
import { mark, plain, significant, statedText, threadName, whole } from '../../text/numbers';
import { sheetText as t } from '../../text/settings-sheet';
import { mistakeLinksAt } from '../../text/mistakes';
import { threadsInUse, type App, type ThreadInUse } from '../../state';
import { sheetStyles } from './sheet-styles';

/** Threads that fit on one page beside everything else. */
const MOST = 20;

type Listed = ThreadInUse & { readonly name: string };

const kHz = (hz: Ratio): string => `${significant(toNumber(div(hz, 1000)), 4)}\u00a0kHz`;

/** Settings sheet: what to enter in the controller and in the motor drive, and how to check each; prints on one page. */
@customElement('ls-sheet-page')
export class SheetPage extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, sheetStyles];

  /** The thread of the job, favourites and those last used, each once. */
  private get listed(): readonly Listed[] {
    const used = threadsInUse(this.app);
    return [...used.filter((t) => t.now), ...used.filter((t) => !t.now)]
      .map((t) => ({ ...t, name: threadName(t) }))
      .slice(0, MOST);
  }

  private get off(): readonly string[] {
    return this.app.settings.sheetOff;
  }

  private toggle(id: string): void {
    const off = this.off.includes(id) ? this.off.filter((x) => x !== id) : [...this.off, id];
    void this.app.setSettings({ sheetOff: off });
  }

  private item(label: string, value: string, check: string) {
    return html`<div class="item">
      <dt>${label}</dt>
      <dd class="figure">${value}</dd>
      ${check ? html`<dd class="check">${check}</dd>` : nothing}
    </div>`;
  }

  private stated(label: string, value: Stated | null, check: string) {
    return this.item(label, value ? statedText(value) : t.notKnown, check);
  }

  private controller(m: MachineProfile) {
    const counts = this.app.sheet.get('countsPerRev').value;
    const text = (r: Ratio): string => (r.d === 1n ? whole(r.n) : ratioText(r));
    return html`<h2>${t.controller}</h2>
      <dl>
        ${this.item(
          t.edges,
          m.edgesPerLine ? plain(m.edgesPerLine.value) : t.notKnown,
          counts ? t.edgesCheck(text(mul(counts, 10))) : '',
        )}
        ${this.item(t.counts, counts ? text(counts) : t.notKnown, '')}
        ${this.item(t.direction, t.directionValue, t.directionCheck)}
        ${this.item(t.form, m.ratioHeld ? choiceLabel('ratioHeld', m.ratioHeld) : t.notKnown, t.ratioCheck)}
      </dl>`;
  }

  /** A ratio as the controller takes it: two numbers, a decimal, whole units of fixed point, or steps per rev. */
  private heldText(m: MachineProfile, top: bigint, bottom: bigint): string {
    if (m.ratioHeld === 'decimal' && m.ratioDigits) {
      const places = Number(m.ratioDigits.value.n);
      const one = 10n ** BigInt(places);
      const digits = ((top * one) / bottom).toString().padStart(places + 1, '0');
      return `${digits.slice(0, -places)}${mark()}${digits.slice(-places)}`;
    }
    if ((m.ratioHeld === 'fixed-rounded' || m.ratioHeld === 'fixed-truncated') && m.ratioBits)
      return `${(top << m.ratioBits.value.n) / bottom} ÷ 2^${m.ratioBits.value.n}`;
    const counts = this.app.sheet.get('countsPerRev').value;
    if (m.ratioHeld === 'rev-count' && counts)
      return `${whole((top * counts.n) / (bottom * counts.d))}\u00a0${t.stepsPerRev}`;
    if (m.ratioHeld === 'integers') return `${t.top} ${top}, ${t.bottom} ${bottom}`;
    return significant(Number(top) / Number(bottom), 10);
  }

  private ratios(m: MachineProfile) {
    const on = this.listed.filter((l) => !this.off.includes(l.id));
    return html`<h2>${t.ratioOf}</h2>
      ${on.length === 0 ? html`<p>${t.noThreads}</p>` : nothing}
      <dl>
        ${on.map((l) => {
          const { held } = sheetRow(this.app.inputs, l.choice, l.starts);
          const v = held.value;
          if (!v) return this.item(l.name, held.standing === 'over' ? t.cannot : t.notKnown, '');
          const error = v.exact ? t.exact : t.ppm(significant(v.ppm, 3));
          return this.item(l.name, this.heldText(m, v.held.top, v.held.bottom), error);
        })}
      </dl>`;
  }

  private servo() {
    const s = servoSheet(this.app.inputs);
    if (!s) return this.item(t.pulses, t.notKnown, '');
    const { gear, rate, bears, better } = s;
    const fast = rate && bears && compare(rate, mul(bears, MARGIN_ELECTRONIC)) > 0;
    const rates = rate && bears ? t.rate(kHz(rate), kHz(bears)) : '';
    return html`${this.item(t.pulses, whole(s.pulses), `${rates}${fast ? ` ${t.tooFast}` : ''}`)}
    ${this.item(
      t.gear,
      gear ? `${gear.top} / ${gear.bottom}` : t.notKnown,
      gear ? (gear.exact ? t.gearCheck : t.gearNear) : t.gearNotKnown,
    )}
    ${
      better
        ? html`<p class="alert">
            ${t.better(whole(better.pulses), `${better.gear.top}`, `${better.gear.bottom}`)}
          </p>`
        : nothing
    }`;
  }

  private drive(m: MachineProfile) {
    const steps = this.app.sheet.get('stepsPerMotorRev').value;
    const step = this.app.sheet.get('stepOnCarriage').value;
    const um = step && `${decimalText(mul(step, 1000), { places: 3, mark: mark() })}\u00a0µm`;
    const coarse = step && compare(mul(step, 200), 1) > 0;
    return html`<h2>${t.drive}</h2>
      <dl>
        ${
          m.motorKind === 'servo'
            ? this.servo()
            : this.item(
                t.stepper,
                m.microsteps ? plain(m.microsteps.value) : t.notKnown,
                steps ? t.stepperCheck(whole(steps.n / steps.d)) : '',
              )
        }
        ${this.item(t.step, um ?? t.notKnown, `${t.stepCheck}${coarse ? ` ${t.coarse}` : ''}`)}
        ${this.stated(t.pulseOn, m.pulseHigh, t.pulseCheck)} ${this.stated(t.pulseOff, m.pulseLow, '')}
        ${this.stated(t.setup, m.directionSetup, '')}
      </dl>`;
  }

  private picker() {
    const { listed, off } = this;
    return html`<div class="screen-only stack">
      <h2>${t.threads}</h2>
      <p class="note">${t.threadsHelp}</p>
      <div class="grid2">
        ${listed.map(
          (l) =>
            html`<button
              class="key"
              aria-pressed=${off.includes(l.id) ? 'false' : 'true'}
              @click=${() => this.toggle(l.id)}
            >
              ${l.name}
            </button>`,
        )}
      </div>
      ${links(mistakeLinksAt('machine/sheet'))}
      <button class="key solid" @click=${printPage}>${t.print}</button>
      <a class="key" href="#/machine">${t.back}</a>
    </div>`;
  }

  override render() {
    const m = this.app.profile;
    if (!m) return html`<h1>${t.title}</h1>`;
    return html`
      <h1>${t.title}</h1>
      <p>${whoseText(m, this.app.clock.day)}</p>
      ${
        m.driveKind === 'change-gears'
          ? html`<p>${t.changeGears}</p>
              <a class="key screen-only" href="#/machine">${t.back}</a>`
          : html`<p>${t.intro}</p>
              ${this.controller(m)} ${this.ratios(m)} ${this.drive(m)}
              <p>
                ${t.asEntered}${m.gearboxLever ? ` ${fieldText.gearboxLever.label}: ${m.gearboxLever}` : ''}
              </p>
              ${this.picker()}`
      }
    `;
  }
}
