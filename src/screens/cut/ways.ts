import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import type { NoteCode, Way, WayFigure } from '../../core/cut/ways';
import { waysNow } from '../../core/figures/ways-now';
import {
  figureText,
  minutesText,
  places,
  wayName,
  wayNote,
  waySays,
  waysText as t,
} from '../../text/cut-ways';
import { unitLabel } from '../../text/units';
import { threadsText } from '../../text/threads';
import type { App } from '../../state';

/** Notes that stand for a place of their own in the app, and what leads there. */
const LINKS: Readonly<Partial<Record<Way['id'], { href: string; label: string }>>> = {
  'multi-start': { href: '#/cut/nut/starts', label: t.starts },
  taper: { href: '#/threads/limits', label: t.limits },
  coarse: { href: '#/cut/stop', label: t.stop },
  'from-the-chuck': { href: '#/machine/field/chuckMount', label: t.chuck },
};

/** What differs when the work isn't an outside right-hand thread of one start: this job's first, the rest folded. */
@customElement('ls-cut-ways')
export class WaysScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      summary {
        font-size: var(--t-label);
        font-weight: 700;
        min-block-size: 64px;
        display: flex;
        align-items: center;
        text-decoration: underline;
      }
      details {
        margin-block-start: 8px;
        border-block-end: 1px solid var(--hair);
      }
      details[open] {
        padding-block-end: 12px;
      }
      .way {
        display: flex;
        flex-direction: column;
        gap: 12px;
      }
    `,
  ];

  private shown({ value, unit, code }: WayFigure): { value: string; unit: string } {
    if (value === null) return { value: t.notKnown, unit: '' };
    if (unit === 'mm')
      return this.app.settings.units === 'in'
        ? { value: places(value / 25.4, 3), unit: 'in' }
        : { value: places(value, value < 10 ? 2 : 1), unit: 'mm' };
    if (code === 'side-angle') return { value: minutesText(value), unit: '' };
    const digits = { deg: 1, 'mm/s': 1, s: 2, times: 1, ppm: 0, turns: 2 }[unit];
    return {
      value: `${places(value, digits)}${unit === 'deg' ? '°' : ''}`,
      unit: unit === 'deg' ? '' : unitLabel[unit],
    };
  }

  private figure(f: WayFigure) {
    const [label, note] = figureText[f.code]();
    const { value, unit } = this.shown(f);
    return html`<ls-row .label=${label} .value=${value} .unit=${unit} .note=${note}></ls-row>`;
  }

  private caution(code: NoteCode) {
    return html`<p class="alert over"><strong>${wayNote[code]}</strong></p>`;
  }

  private body(way: Way) {
    const link = LINKS[way.id];
    // Of work that this job isn't, only what can be said of it is.
    const figures = way.figures.filter((f) => way.applies || f.value !== null);
    return html`${way.cautions.map((c) => this.caution(c))}
      <div>${figures.map((f) => this.figure(f))}</div>
      ${[...way.notes.map((n) => wayNote[n]), ...(way.never ? [] : waySays(way.id))].map((w) => html`<p>${w}</p>`)}
      ${
        figures.some((f) => f.value === null)
          ? html`<a class="key left" href="#/cut/work">${t.missing}</a>`
          : nothing
      }
      ${link ? html`<a class="key left" href=${link.href}>${link.label}</a>` : nothing}`;
  }

  override render() {
    const ways = waysNow(this.app.sheet);
    const here = ways.filter((w) => w.applies);
    const chosen = this.app.sheet.get('chosen').value;
    return html`<h1>${t.title}</h1>
      ${
        chosen
          ? here.length === 0
            ? html`<p>${t.none}</p>`
            : nothing
          : html`<p>${t.noThread}</p>
              <a class="key solid" href="#/threads/find">${threadsText.choose}</a>`
      }
      ${here.map(
        (w) =>
          html`<section class="way">
            <h2>${wayName[w.id]}</h2>
            ${this.body(w)}
          </section>`,
      )}
      ${here.length > 0 ? html`<h2 class="label">${t.others}</h2>` : nothing}
      <div>
        ${ways
          .filter((w) => !w.applies)
          .map(
            (w) =>
              html`<details>
                <summary>${wayName[w.id]}</summary>
                <div class="way">${this.body(w)}</div>
              </details>`,
          )}
      </div>
      <p class="note">${t.sources}</p>
      <a class="key" href="#/cut">${t.back}</a>`;
  }
}
