import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/row';
import '../../elements/thread-dial';
import { linesFrom, type NutRule } from '../../core/cut';
import { LONGEST_WAIT, waitAtStop } from '../../core/cut/counting';
import { runIn } from '../../core/cut/picking-up';
import type { Figure } from '../../core/figures';
import { addingUp, nutSum } from '../../core/figures/nut-sum';
import { div, inBase, leadNumber, toNumber } from '../../core/quantity';
import { decimal, plain, significant, whole } from '../../text/numbers';
import { nutPage as t } from '../../text/nut';
import { pathLabel } from '../../text/paths';
import { standingWord } from '../../text/standing';
import { nutText, threadsText } from '../../text/threads';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { errorText, FIRST_LINE, firstLine, keep, lengthText } from './nut-kept';

/** Below this only that it is less is worth reading; more revs than these no spindle turns in a job (33 hours at 500 rpm). */
const SMALL_PPM = 0.001;
const FOR_EVER = 1e6;

type Lines = Extract<NutRule, { kind: 'lines' }>;

/** Where the half-nut may be closed again, and how one comes back to the start between passes. */
@customElement('ls-nut-rule')
export class NutRuleScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      .rule {
        margin-block: 4px;
      }
      .many {
        font-size: var(--t-figure);
      }
      ls-thread-dial {
        inline-size: 100%;
        margin-inline: auto;
      }
      .lines {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(64px, 1fr));
        gap: var(--gap, 8px);
      }
      ol {
        margin: 0;
        padding-inline-start: 1.6em;
        display: flex;
        flex-direction: column;
        gap: 8px;
        font-size: var(--t-label);
      }
    `,
  ];

  private get first(): number | null {
    const lines = this.app.profile?.dialLines;
    const line = firstLine(this.app);
    return line !== null && lines && line <= Number(lines.value.n) ? line : null;
  }

  private good(rule: Lines): number[] {
    return linesFrom(rule, this.first ?? rule.of);
  }

  private head(rule: NutRule | null) {
    const dial = this.app.profile?.threadDial === 'dial';
    const counted = rule?.kind === 'lines' ? { ...rule, lines: this.good(rule) } : rule;
    const { head } = nutText(counted, dial);
    const many = rule?.kind === 'lines' && rule.lines.length < rule.of && rule.lines.length > 4;
    return html`<p class="deciding rule ${many ? 'many' : ''}">${head}</p>`;
  }

  /** Why, with the a and b that can be reckoned by hand. */
  private reason(rule: NutRule) {
    const screw = this.app.sheet.get('screwLead').value;
    const starts = this.app.profile?.screwStarts;
    const pitch = screw && starts ? toNumber(div(screw, starts.value)) : null;
    const { a, b } = rule;
    const inStep =
      a !== null && b !== null && pitch !== null
        ? t.inStep(whole(a), whole(b), lengthText(this.app, Number(b) * pitch, 4))
        : '';
    if (rule.kind === 'anywhere') return html`<p>${t.anywhere(whole(rule.a))}</p>`;
    if (rule.kind === 'keep-closed') return html`<p>${t.kept(rule.reason)} ${inStep}</p>`;
    const where = rule.lines.length === rule.of ? t.firstAll : t.onLine;
    return html`<p><strong>${where}</strong> ${inStep}</p>`;
  }

  private dial(rule: Lines) {
    const good = this.good(rule);
    const marked = t.marked(rule.lines.length, `${rule.perTurn}`);
    return html`<div>
        <ls-row .label=${t.places} .value=${t.placesOf(whole(rule.perTurn))} .note=${marked}></ls-row>
      </div>
      <ls-thread-dial
        .lines=${rule.of}
        .good=${good.map((line) => line - 1)}
        .text=${t.dial(rule.of, good)}
      ></ls-thread-dial>
      <p class="note">${t.still}</p>
      ${this.firstKeys(rule)}`;
  }

  private firstKeys(rule: Lines) {
    const { first } = this;
    if (rule.lines.length === rule.of) return nothing;
    const said =
      first === null ? t.firstAsk(rule.of) : rule.lines.length === 1 ? t.firstOne : t.firstNow(first);
    return html`<h2>${t.firstUsed}</h2>
      <p>${said}</p>
      <div class="lines" role="group" aria-label=${t.firstUsed}>
        ${Array.from({ length: rule.of }, (_, i) => i + 1).map(
          (line) =>
            html`<button
              class="key"
              aria-pressed=${first === line}
              @click=${() => keep(this.app, FIRST_LINE, first === line ? '' : line)}
            >
              ${line}
            </button>`,
        )}
      </div>`;
  }

  /** What an inexact ratio adds up to, whether or not the nut may be opened. */
  private error(f: Figure<NutRule>) {
    const { app } = this;
    const held = app.sheet.get('ratioHeld').value;
    const lead = app.sheet.get('lead').value;
    if (!held || !lead || held.exact || !f.value || f.value.a === null) return nothing;
    if (f.value.kind !== 'keep-closed' || f.value.reason !== 'inexact-ratio') {
      const sum = nutSum(held, app.profile?.ratioHeld ?? null, leadNumber(lead));
      if (!sum) return nothing;
      const ppm = Math.abs(held.ppm);
      const note = t.movedNote(
        ppm < SMALL_PPM ? `< ${significant(SMALL_PPM)}` : significant(ppm, 2),
        sum.lasts < FOR_EVER ? whole(BigInt(Math.floor(sum.lasts))) : '',
      );
      return html`<div>
        <ls-row
          .label=${t.moved}
          .value=${errorText(app, sum.sum)}
          .note=${note}
          .standing=${sum.standing}
          .word=${standingWord[sum.standing]}
          why="Why"
          figure="nutRule"
        ></ls-row>
      </div>`;
    }
    const adds = addingUp(app.sheet);
    if (!adds) return nothing;
    const standing = adds.sum > adds.allowed ? 'over' : 'near';
    return html`<div>
      <ls-row
        .label=${t.adds(whole(adds.passes))}
        .value=${errorText(app, adds.sum)}
        .note=${t.addsNote(significant(adds.ppm, 3), errorText(app, adds.perClosing), whole(adds.cycle), adds.planned)}
        .standing=${standing}
        .word=${standingWord[standing]}
        why="Why"
        figure="ratioHeld"
      ></ls-row>
    </div>`;
  }

  private between(rule: NutRule) {
    const { app } = this;
    const m = app.profile;
    const [pitch, lead] = [app.sheet.get('pitch').value, app.sheet.get('lead').value];
    if (!pitch || !lead || !m) return nothing;
    const backlash = m.backlash ? toNumber(inBase(m.backlash)) : null;
    const way = runIn(backlash, leadNumber(pitch), leadNumber(lead));
    if (!way) return nothing;
    // Rounded up: a little farther behind does no harm.
    const step = app.settings.units === 'in' ? 2.54 : 0.5;
    const behind = t.behind(lengthText(app, Math.ceil(way.mm / step) * step), backlash !== null);
    const turns = way.degrees ? t.degrees(`${significant(way.degrees, 3)}°`) : '';
    const closed = rule.kind === 'keep-closed';
    const steps = closed ? t.closed(behind, turns) : t.opened(behind, turns);
    return html`<h2>${t.between}</h2>
      ${closed ? html`<p class="alert"><strong>${t.toolFirst}</strong></p>` : nothing}
      <ol>
        ${steps.map((s) => html`<li>${s}</li>`)}
      </ol>
      ${
        backlash === null
          ? html`<p class="unknown">${t.backlashUnknown}</p>
              <a class="key left" href="#/machine/field/backlash"
                >${t.enter(pathLabel('machine.backlash'))}</a
              >`
          : nothing
      }
      ${closed ? this.afterwards(rule) : nothing}`;
  }

  private afterwards(rule: NutRule) {
    const m = this.app.profile;
    const caution =
      m?.chuckMount === 'locked' ? '' : m?.chuckMount === 'screw-on' ? t.screwOn : t.mountUnknown;
    const opens = rule.kind === 'keep-closed' && rule.reason !== 'no-half-nut';
    return html`${caution ? html`<p class="alert"><strong>${caution}</strong></p>` : nothing}
    ${
      opens
        ? html`<h2>${t.astray}</h2>
            <p>${m?.threadDial === 'dial' ? t.astrayDial : t.astrayNone}</p>`
        : nothing
    }`;
  }

  private counting(rule: NutRule) {
    const { app } = this;
    if (rule.a === null || rule.kind === 'anywhere') return nothing;
    if (rule.kind === 'keep-closed' && (rule.reason === 'inexact-ratio' || rule.reason === 'no-half-nut'))
      return nothing;
    if (app.profile?.driveKind !== 'electronic') return nothing;
    const { rpm } = app.job;
    const wait = waitAtStop(rule.a, app.sheet.get('countsPerRev').value, rpm);
    const speed = rpm ? decimal(rpm, 1) : '';
    const s = wait.seconds ? `${significant(toNumber(wait.seconds), 3)}\u00a0s` : '';
    const counts = wait.counts ? (wait.counts.d === 1n ? whole(wait.counts.n) : plain(wait.counts)) : '';
    return html`<h2>${t.counting}</h2>
      ${
        wait.tooLong
          ? html`<p>${t.tooLong(s, speed, `${LONGEST_WAIT}\u00a0s`)}</p>`
          : html`<p>${t.countingHow}</p>
              <div>
                <ls-row
                  .label=${t.wait}
                  .value=${whole(wait.revs)}
                  .unit=${wait.revs === 1n ? 'rev' : 'revs'}
                  .note=${t.waitNote(
                    wait.counts && wait.counts.d !== 1n ? t.fraction(counts) : counts && t.countsOf(counts),
                    s ? t.seconds(s, speed) : t.noRpm,
                  )}
                ></ls-row>
              </div>`
      }`;
  }

  private missing(f: Figure<NutRule>) {
    return html`<div class="stack">
      ${f.missing
        .filter((path) => path.startsWith('machine.'))
        .map(
          (path) =>
            html`<a class="key left" href="#/machine/field/${path.slice(8)}">${t.enter(pathLabel(path))}</a>`,
        )}
    </div>`;
  }

  override render() {
    const { app } = this;
    const f = app.sheet.get('nutRule');
    const rule = f.value;
    const { starts } = app.job;
    if (!app.sheet.get('chosen').value)
      return html`<h1>${t.title}</h1>
        <p>${t.noThread}</p>
        <a class="key solid" href="#/threads/find">${threadsText.choose}</a>
        <a class="key" href="#/cut">${t.back}</a>`;
    return html`<h1>${t.title}</h1>
      ${this.head(rule)}
      ${
        rule
          ? html`${this.reason(rule)} ${rule.kind === 'lines' ? this.dial(rule) : nothing} ${this.error(f)}
              <div>
                <ls-row .label=${threadsText.nut} .value=${t.ab(rule)} why="Why" figure="nutRule"></ls-row>
              </div>
              ${this.between(rule)} ${this.counting(rule)}`
          : html`<p class="unknown">${nutText(null).line}</p>
              ${this.missing(f)}`
      }
      ${links(mistakeLinksAt('cut/nut'))}
      ${starts > 1 ? html`<a class="key left" href="#/cut/nut/starts">${t.starts(starts)}</a>` : nothing}
      <a class="key left" href="#/cut/nut/pick-up">${t.pickUp}</a>
      <a class="key" href="#/cut">${t.back}</a>`;
  }
}
