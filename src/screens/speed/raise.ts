import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import { raisesFor, type Raise } from '../../core/figures/raise';
import type { Ceiling, LimitReading } from '../../core/figures';
import { toNumber } from '../../core/quantity';
import { fieldText } from '../../text/machine';
import { mark, significant, statedText, whole } from '../../text/numbers';
import { raiseText as t } from '../../text/raise';
import { speedText } from '../../text/speed';
import { limitText } from '../../text/why';
import type { App } from '../../state';

const name = (l: LimitReading): string => limitText[l.id].name;

/** What limits the drive for this job, how far the next limit is, and which single change would raise it most. */
@customElement('ls-raise')
export class RaiseScreen extends ScreenElement<App> {
  private now(c: Ceiling) {
    const { atMost, binds, next, unknown } = c;
    const far =
      next?.within != null && atMost !== null && atMost > 0n
        ? t.next(
            name(next),
            whole(next.within),
            (Number(next.within) / Number(atMost)).toFixed(1).replace('.', mark()),
          )
        : '';
    return html`<p class="label">${c.highest === null ? t.nowKnown : t.now}</p>
      <p>
        <span class="deciding">${atMost === null ? speedText.notKnown : whole(atMost)}</span
        ><span class="unit">${atMost === null ? '' : ' rpm'}</span>
      </p>
      ${binds ? html`<p>${t.binds(name(binds))} ${far}</p>` : nothing}
      ${unknown.length ? html`<p class="unknown">${t.unknown(unknown.map(name).join(', '))}</p>` : nothing}`;
  }

  private label(r: Raise): string {
    if (!r.to || !r.from) return t.spread;
    const [to, from] = [statedText(r.to), statedText(r.from)];
    return r.field === 'pulseHigh' ? t.pulses(to, from) : t.to(fieldText[r.field].label, to, from);
  }

  private line(r: Raise) {
    const note = [
      r.binds ? t.then(name(r.binds)) : '',
      r.step ? t.step(`${significant(toNumber(r.step) * 1000, 3)} µm`) : '',
    ];
    return html`<ls-row
      .label=${this.label(r)}
      .value=${whole(r.highest)}
      unit="rpm"
      .note=${note.filter(Boolean).join(' · ')}
    ></ls-row>`;
  }

  override render() {
    const { app } = this;
    if (!app.sheet.get('chosen').value)
      return html`<h1>${t.title}</h1>
        <p>${t.noThread}</p>`;
    const found = app.profile?.driveKind === 'change-gears' ? null : raisesFor(app.inputs);
    return html`<h1>${t.title}</h1>
      ${
        found
          ? html`${this.now(found.now)}
              <p class="note">${t.help}</p>
              <div>${found.raises.map((r) => this.line(r))}</div>
              ${found.raises.length === 0 ? html`<p>${t.none}</p>` : nothing}`
          : html`<p>${t.gears}</p>`
      }
      <a class="key" href="#/speed">${t.back}</a>`;
  }
}
