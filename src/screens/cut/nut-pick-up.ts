import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/row';
import { LOSSES, offsetCounts, PICK_STEPS } from '../../core/cut/picking-up';
import { inBase, leadNumber, neg, toNumber } from '../../core/quantity';
import { plain, significant, statedText, whole } from '../../text/numbers';
import { nutPage, pickPage as t } from '../../text/nut';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { errorText, FIRST_LINE, firstLine, keep, kept } from './nut-kept';

const STEP = 'cut.pick';
const SIDE = 'cut.pickSide';
const SIDES = ['ahead', 'behind'] as const;

/** Picking up the thread: one step at a time. A guide, not a check. */
@customElement('ls-nut-pick-up')
export class NutPickUpScreen extends ScreenElement<App> {
  /** 0: what it is for; from 1 the steps. */
  private get at(): number {
    const n = Number(kept(this.app, STEP));
    return Number.isInteger(n) && n > 0 && n <= PICK_STEPS.length ? n : 0;
  }
  private step(n: number): void {
    keep(this.app, STEP, n);
    this.scrollIntoView();
  }

  private offset() {
    const { app } = this;
    const said = app.readings.get('pick.offset');
    const side = SIDES.find((s) => s === kept(app, SIDE)) ?? 'ahead';
    return html`<h2>${t.offset}</h2>
      <a class="key left" href="#/enter/reading/pick.offset"
        >${said ? t.changeOffset(statedText(said)) : t.enterOffset}</a
      >
      ${
        said
          ? html`<p class="label">${t.way}</p>
              <div class="pair" role="group" aria-label=${t.way}>
                ${SIDES.map(
                  (s) =>
                    html`<button class="key" aria-pressed=${side === s} @click=${() => keep(app, SIDE, s)}>
                      ${t[s]}
                    </button>`,
                )}
              </div>
              ${this.counts(side)}`
          : nothing
      }`;
  }

  private counts(side: (typeof SIDES)[number]) {
    const { app } = this;
    const said = app.readings.get('pick.offset');
    const lead = app.sheet.get('lead').value;
    const counts = app.sheet.get('countsPerRev').value;
    if (!said || !lead || !counts) return html`<p>${lead ? t.noCounts : t.noLead}</p>`;
    const mm = inBase(said);
    const { exact, nearest, off } = offsetCounts(side === 'ahead' ? mm : neg(mm), lead, counts);
    const leads = toNumber(mm) / leadNumber(lead);
    const deg = `${significant(360 * leads, 4)}°`;
    const sign = nearest > 0n ? '+' : nearest < 0n ? '−' : '';
    return html`<div>
        <ls-row
          .label=${t.counts}
          .value=${sign + whole(nearest < 0n ? -nearest : nearest)}
          .unit=${t.countsUnit}
          .note=${t.countsNote(exact && exact.d !== 1n ? plain(exact) : '', errorText(app, off), deg)}
        ></ls-row>
      </div>
      <p>${t.countsWay[side]}</p>
      ${leads > 1 ? html`<p>${t.more(significant(leads, 3))}</p>` : nothing}`;
  }

  private stepAt(n: number) {
    const step = PICK_STEPS[n - 1] ?? PICK_STEPS[0];
    const { title, text, caution } = t.at(step);
    const last = n === PICK_STEPS.length;
    const line = firstLine(this.app);
    return html`<h1>${title}</h1>
      <p class="label">${t.title} · ${t.step(n, PICK_STEPS.length)}</p>
      ${caution ? html`<p class="alert"><strong>${caution}</strong></p>` : nothing}
      <p>${text}</p>
      ${step === 'groove' ? this.offset() : nothing}
      ${
        last && line !== null
          ? html`<button class="key left" @click=${() => keep(this.app, FIRST_LINE, '')}>
              ${t.forget(line)}
            </button>`
          : nothing
      }
      <span class="grow"></span>
      ${
        last
          ? html`<a class="key solid big" href="#/cut/nut" @click=${() => this.step(0)}>${t.end}</a>`
          : html`<button class="key solid big" @click=${() => this.step(n + 1)}>${t.next}</button>`
      }
      <button class="key" @click=${() => this.step(n - 1)}>${t.backOne}</button>`;
  }

  override render() {
    const { at } = this;
    if (at > 0) return this.stepAt(at);
    return html`<h1>${t.title}</h1>
      <p>${t.when}</p>
      <ul>
        ${LOSSES.map((loss) => html`<li>${t.lost(loss)}</li>`)}
      </ul>
      <p class="note">${t.guide}</p>
      ${links(mistakeLinksAt('cut/nut/pick-up'))}
      <span class="grow"></span>
      <button class="key solid big" @click=${() => this.step(1)}>${t.begin}</button>
      <a class="key" href="#/cut/nut">${nutPage.backNut}</a>`;
  }
}
