import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import {
  FAULT_TESTS,
  faultsKept,
  isRun,
  isSlot,
  PATTERN,
  patternIn,
  PATTERNS,
  testOf,
  type Cause,
  type Found,
  type Group,
  type Pattern,
  type Ranked,
} from '../../core/prove/faults';
import { mul } from '../../core/quantity';
import {
  changeText,
  faultsText as t,
  faultTestText,
  patternCauseText,
  patternTestText,
  patternText,
  slipText,
} from '../../text/faults';
import { decimal, significant, statedText } from '../../text/numbers';
import { dayText } from '../../text/records';
import type { App } from '../../state';
import { faultsNow, takeRecorded, type Now } from './now';
import { AGAIN, again, lapsed, ratioText, readingPage } from './reading';

/** How long the ranking may go on before the screen gets a turn. */
const PIECE_MS = 8;
/** Causes that are shown before more are asked for. */
const MOST_SHOWN = 6;
/** Causes of readings that disagree with the profile, and the test that tells them apart. */
@customElement('ls-faults')
export class FaultsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      .next {
        font-size: 1.75rem;
        min-block-size: 96px;
      }
      summary {
        padding-block: 8px;
        font-size: var(--t-label);
        min-block-size: 64px;
        display: flex;
        align-items: center;
        cursor: pointer;
      }
      summary b {
        display: block;
        text-decoration: underline;
      }
      summary small {
        display: block;
        font-size: 1rem;
      }
      details {
        margin-block-start: 8px;
        border-block-end: 1px solid var(--hair);
      }
      details[open] {
        padding-block-end: 12px;
      }
      details > :not(summary) {
        margin-block-start: 8px;
      }
    `,
  ];

  @state() private all = false;
  private ranking = '';

  /** Ranks the causes in pieces that let the screen answer in between. */
  private async rank(now: Now): Promise<void> {
    if (this.ranking === now.key) return;
    this.ranking = now.key;
    const steps = now.steps();
    while (this.ranking === now.key) {
      await new Promise((resolve) => setTimeout(resolve));
      const until = performance.now() + PIECE_MS;
      let step = steps.next();
      while (!step.done && performance.now() < until) step = steps.next();
      if (!step.done) continue;
      now.keep(step.value);
      this.ranking = '';
      this.requestUpdate();
    }
  }

  private name(c: Cause): string {
    if (c.changes.length === 0)
      return c.typed ? `${slipText[c.kind]}: ${statedText(c.typed)}` : slipText[c.kind];
    return c.changes
      .map(changeText)
      .map(({ label, to }) => `${label}: ${to}`)
      .join(' · ');
  }

  private note({ kind, where, changes }: Cause): string {
    const from = changes.map(changeText).map((x) => x.from);
    const said = where === 'controller' ? t.typed(from.join(', ')) : t.not(from.join(', '));
    return changes.length > 0 ? [said, slipText[kind]].filter(Boolean).join(' · ') : '';
  }

  private async apply(causes: readonly Cause[], now: Now): Promise<void> {
    const edits = causes.flatMap(({ where, changes }) => (where === 'profile' ? changes : []));
    await again(this.app, now.machine, Object.fromEntries(edits.map(({ field, to }) => [field, to])));
  }

  private async clear(machine: string): Promise<void> {
    await this.app.clearReadings(faultsKept(machine));
    await this.app.choose(AGAIN, '');
  }

  private edit(causes: readonly Cause[], now: Now) {
    const edits = causes.filter((c) => c.where === 'profile').flatMap((c) => c.changes);
    const controller = causes.some((c) => c.where === 'controller');
    if (edits.length === 0 && !controller) return html`<p>${t.noEntry}</p>`;
    return html`${
        edits.length > 0
          ? html`<p>${t.lookFirst}</p>
              <div>
                ${edits.map((c) => {
                  const { label, from, to } = changeText(c);
                  return html`<h3>${label}</h3>
                    <ls-row .label=${t.now} .value=${from}></ls-row>
                    <ls-row .label=${t.then} .value=${to}></ls-row>`;
                })}
              </div>`
          : nothing
      }
      ${controller ? html`<p>${t.controller}</p>` : nothing}
      <button class="key solid" @click=${() => void this.apply(causes, now)}>
        ${edits.length > 0 ? t.apply : t.done}
      </button>`;
  }

  private cause({ causes, factors }: Ranked, now: Now) {
    return html`<details>
      <summary>
        <span
          >${causes.length > 1 ? html`<small>${t.both}</small>` : nothing}${causes.map((c) => {
            const note = this.note(c);
            return html`<b>${this.name(c)}</b>${note ? html`<small>${note}</small>` : nothing}`;
          })}</span
        >
      </summary>
      ${
        causes.some((c) => c.where === 'machine')
          ? nothing
          : html`<ls-row
              .label=${t.travel}
              .value=${decimal(mul(factors.screw, factors.carriage), 6)}
            ></ls-row>`
      }
      ${this.edit(causes, now)}
    </details>`;
  }

  private group(group: Group, now: Now) {
    return html`<section>
      ${group.length > 1 ? html`<p>${t.alike}</p>` : nothing} ${group.map((r) => this.cause(r, now))}
    </section>`;
  }

  /** The first few; the rest, which fits as well, by a key. */
  private some(groups: readonly Group[], more: number, now: Now) {
    let left = this.all ? Infinity : MOST_SHOWN;
    const shown = groups.flatMap((g) => {
      const part = g.slice(0, left);
      left -= part.length;
      return part.length > 0 ? [part] : [];
    });
    const rest = groups.flat().length - shown.flat().length;
    return html`${shown.map((g) => this.group(g, now))}
    ${
      rest > 0
        ? html`<button class="key" @click=${() => (this.all = true)}>${t.showMore(rest)}</button>`
        : more > 0
          ? html`<p class="note">${t.pairs(more)}</p>`
          : nothing
    }`;
  }

  private ranked(found: Found, now: Now) {
    const fits = found.groups.filter((g) => g.some((r) => r.fits));
    const outside = found.groups.filter((g) => !fits.includes(g));
    const finest = Math.min(...found.weighed.filter((w) => w.test === 'travel').map((w) => 2e6 * w.u));
    return html`${
      found.agrees
        ? html`<p><strong>${t.agrees}</strong></p>
            ${Number.isFinite(finest) ? html`<p>${t.finest(significant(finest, 2))}</p>` : nothing}`
        : nothing
    }
    ${fits.length > 0 || !found.agrees ? html`<h2>${found.agrees ? t.hidden : fits.length > 0 ? t.fits : t.none}</h2>` : nothing}
    ${this.some(fits, found.more, now)}
    ${
      outside.length > 0
        ? html`<h2>${t.outside}</h2>
            ${outside.slice(0, 2).map((g) => this.group(g, now))}`
        : nothing
    }`;
  }

  private pattern(p: Pattern, seen: boolean) {
    const { causes, test } = PATTERN[p];
    return html`<details ?open=${seen}>
      <summary>
        <span><b>${patternText[p]}</b>${seen ? html`<small>${t.shown}</small>` : nothing}</span>
      </summary>
      <p>${t.likely}: ${causes.map((c) => patternCauseText[c]).join('; ')}.</p>
      <p><strong>${t.tell}:</strong> ${patternTestText[test]}</p>
    </details>`;
  }

  /** Test records hold readings that aren't here yet: which, and one key that takes them over. */
  private recorded(now: Now) {
    if (now.recorded.length === 0) return nothing;
    return html`<h2>${t.recorded}</h2>
      <div>
        ${now.recorded.map(({ slot, record, reading }) => {
          const { name, over, unit } = faultTestText[testOf(slot)];
          return html`<ls-row
            .label=${`${name}, ${dayText(record.at)}. ${over}: ${decimal(reading.over, 4)}`}
            .value=${decimal(reading.got, 4)}
            .unit=${unit}
          ></ls-row>`;
        })}
      </div>
      <button class="key" @click=${() => void takeRecorded(this.app, now)}>${t.takeRecorded}</button>`;
  }

  override render() {
    const now = faultsNow(this.app);
    if (!now)
      return html`<h1>${t.title}</h1>
        <p>${t.noMachine}</p>`;
    const [, sub = ''] = this.path;
    if (isSlot(sub)) return readingPage(this.app, now, sub);
    const found = now.known;
    if (!found) {
      void this.rank(now);
      return html`<h1>${t.title}</h1>
        <p role="status">${t.working}</p>`;
    }
    const some = found.weighed.length > 0;
    const next = some ? found.next : { test: 'travel' as const, over: 100 };
    const seen = patternIn(found.weighed);
    const repeat =
      this.app.settings.choices[AGAIN] === now.machine && !now.held.some((h) => h.got && isRun(h.slot));
    const gears = this.app.profile?.driveKind === 'change-gears';
    return html`<h1>${t.title}</h1>
      ${
        repeat
          ? html`<p class="alert" role="status"><strong>${gears ? t.againGears : t.again}</strong></p>
              ${gears ? nothing : html`<a class="key left" href="#/machine/sheet">${t.sheet}</a>`}`
          : some
            ? nothing
            : html`<p>${t.intro}</p>`
      }
      ${lapsed(this.app, now)} ${this.recorded(now)}
      ${next ? html`<p class="label">${some ? t.next : t.begin}</p>` : nothing}
      ${
        next
          ? html`<a class="key big solid next" href="#/machine/faults/${next.test}"
              >${faultTestText[next.test].next(`${next.over}`)}</a
            >`
          : html`<p><strong>${t.look}</strong></p>`
      }
      ${some ? this.ranked(found, now) : nothing}
      <h2>${t.measured}</h2>
      <div class="stack">
        ${FAULT_TESTS.filter((x) => !(gears && x === 'counts')).map((test) => {
          const taken = now.held.flatMap((h) => (testOf(h.slot) === test && h.weighed ? h.weighed : []));
          return html`<a class="key left" href="#/machine/faults/${test}"
            >${faultTestText[test].name}${taken.length > 0 ? `: ${taken.map(ratioText).join(', ')}` : ''}</a
          >`;
        })}
      </div>
      <h2>${t.pattern}</h2>
      <div>${PATTERNS.map((p) => this.pattern(p, p === seen))}</div>
      <a class="key" href="#/machine">${t.toMachine}</a>
      ${
        now.held.some((h) => h.over ?? h.got ?? h.half)
          ? html`<div class="apart stack">
              <button class="key stop" @click=${() => void this.clear(now.machine)}>${t.clearAll}</button>
            </div>`
          : nothing
      }`;
  }
}
