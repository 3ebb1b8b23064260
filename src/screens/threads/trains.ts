import { html, nothing, css } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import '../../elements/standing';
import '../../elements/train-drawing';
import type { DrawnTrain } from '../../elements/train-drawing';
import { nutRule } from '../../core/cut';
import { TRAIN_LIMIT_PPM, type Standing } from '../../core/figures';
import { hasGears, type MachineProfile } from '../../core/machine';
import { gearsOf } from '../../core/machine/gearing';
import { fingerprint } from '../../core/context';
import { div, type Lead } from '../../core/quantity';
import {
  fit,
  handOf,
  seatsOf,
  trainFor,
  unchecked,
  writeTrain,
  type Found,
  type Gearing,
  type Order,
  type SearchOptions,
  type Train,
} from '../../core/drive/trains';
import { fieldText } from '../../text/machine';
import { mark, showLead, threadName } from '../../text/numbers';
import { standingWord } from '../../text/standing';
import { nutText } from '../../text/threads';
import { stagesText, trainsText as t } from '../../text/trains';
import type { App } from '../../state';
import { findTrains } from './train-search';

const KEEP = 40;
const SHOWN = 8;
/** Trains further off than 2 % are no help to a thread, ppm; a feed may be off by a tenth. */
const WITHIN = { thread: 20_000, feed: 100_000 };

const standingOf = (train: Train): Standing =>
  train.exact ? 'within' : Math.abs(train.ppm) <= TRAIN_LIMIT_PPM ? 'near' : 'over';

/** "0.038 mm in 300 mm too long (125 ppm)". */
export const offText = (train: { exact: boolean; ppm: number }): string => {
  if (train.exact) return t.exact;
  const size = Math.abs(train.ppm);
  const mm = (size * 300) / 1e6;
  const text = (x: number, places: number): string => x.toFixed(places).replace('.', mark());
  return t.off(text(mm, mm < 0.1 ? 4 : 3), text(size, size < 10 ? 2 : size < 1000 ? 1 : 0), train.ppm > 0);
};

/** Change gears: the trains that cut this thread on this machine, the one looked at drawn to scale. */
@customElement('ls-trains')
export class TrainsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      .train {
        flex-direction: column;
        align-items: flex-start;
        text-align: start;
      }
      .train small {
        font-size: 1rem;
        font-weight: 400;
      }
      ol {
        margin: 0;
        padding-inline-start: 1.4em;
        font-size: var(--t-label);
      }
      ls-train-drawing {
        inline-size: 100%;
        max-inline-size: 40rem;
      }
    `,
  ];
  @state() private found: Found | null = null;
  @state() private chosen: string | null = null;
  @state() private more = false;
  @state() private slow = false;
  private asked = '';

  private get order(): Order {
    return this.app.settings.choices['trains.order'] === 'ease' ? 'ease' : 'error';
  }
  private get pairs(): 2 | 3 {
    return this.app.settings.choices['trains.pairs'] === '3' ? 3 : 2;
  }

  /** How far off a train may be to be looked at, ppm. */
  private get within(): number {
    if (this.app.sheet.get('chosen').value?.kind === 'feed') return WITHIN.feed;
    return this.order === 'ease' ? TRAIN_LIMIT_PPM : WITHIN.thread;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const m = this.app.profile;
    const lead = this.app.sheet.get('lead').value;
    const gears = m && hasGears(m) ? gearsOf(m) : null;
    if (!gears?.ok || !lead) return;
    const options: SearchOptions = {
      hand: this.app.job.hand,
      pairs: this.pairs,
      order: this.order,
      keep: KEEP,
      within: this.within,
    };
    const question = fingerprint([gears.gearing, lead, options]);
    if (question === this.asked) return;
    this.asked = question;
    void this.look(question, gears.gearing, lead, options);
  }

  private async look(question: string, gearing: Gearing, lead: Lead, options: SearchOptions): Promise<void> {
    const waiting = setTimeout(() => (this.slow = true), 250);
    const found = await findTrains(gearing, lead, options);
    clearTimeout(waiting);
    // Something else was asked meanwhile: its own answer comes.
    if (question !== this.asked) return;
    this.slow = false;
    this.found = found;
    if (!found.trains.some((x) => writeTrain(x) === this.chosen)) this.chosen = null;
  }

  private async mount(train: Train): Promise<void> {
    await this.app.setField('gearMounted', writeTrain(train));
  }

  private show(train: Train): void {
    this.chosen = writeTrain(train);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector('h2')?.scrollIntoView({ block: 'start' }),
    );
  }

  private drawn(train: Train, gearing: Gearing): { drawn: DrawnTrain; steps: string[] } | null {
    const f = fit(train.stages, gearing.banjo);
    if (!f.fits) return null;
    const seats = seatsOf(train.stages);
    const changed = train.changed.flat();
    const end = f.at.length - 1;
    const wheels = seats.map((s, i) => ({
      x: f.at[s.shaft]?.x ?? 0,
      y: f.at[s.shaft]?.y ?? 0,
      teeth: s.teeth,
      stage: s.stage,
      idler: s.shaft > 0 && s.shaft < end && seats.filter((o) => o.shaft === s.shaft).length === 1,
      changed: changed[i] ?? false,
    }));
    const name = (i: number): string => (i === 0 ? t.firstShaft : i === end ? t.screw : t.stud(i));
    const shafts = f.at.map((p, i) => ({ ...p, name: name(i) }));
    const steps = f.at.map((_, i) => {
      const here = seats.flatMap((s, k) => (s.shaft === i ? [{ z: s.teeth, on: changed[k] ?? false }] : []));
      const [a, b] = here;
      const words = here.map((w) => `${w.z} ${w.on ? t.putOn : t.stays}`).join(', ');
      const line =
        i === 0
          ? t.steps.first(a?.z ?? 0)
          : i === end
            ? t.steps.screw(a?.z ?? 0)
            : b
              ? t.steps.stud(i, a?.z ?? 0, b.z)
              : t.steps.idler(i, a?.z ?? 0);
      return `${line} (${words})`;
    });
    return { drawn: { wheels, shafts }, steps };
  }

  private handWord(train: Train, gearing: Gearing): string {
    if (gearing.shaftTurns === null) return t.hands.unknown;
    const hand = handOf(train.stages, gearing.shaftTurns);
    return hand ? t.hands[hand] : t.hands.either;
  }

  private nut(train: Train, gearing: Gearing, m: MachineProfile, lead: Lead) {
    const known = m.screwStarts && m.halfNut && (m.halfNut === 'always-closed' || m.threadDial);
    const dial = m.halfNut === 'half-nut' && m.threadDial === 'dial';
    if (!known || !m.screwStarts || (dial && (!m.dialTeeth || !m.dialLines))) return nutText(null);
    return nutText(
      nutRule({
        lead,
        nutPitch: div(gearing.screwLead, m.screwStarts.value),
        halfNut: m.halfNut === 'half-nut',
        dial:
          dial && m.dialTeeth && m.dialLines
            ? { teeth: Number(m.dialTeeth.value.n), lines: Number(m.dialLines.value.n) }
            : null,
        exactRatio: train.exact,
      }),
      dial,
    );
  }

  private one(train: Train, gearing: Gearing, m: MachineProfile, lead: Lead) {
    const picture = this.drawn(train, gearing);
    const standing = standingOf(train);
    const cut = showLead({ mm: train.lead, pi: false });
    const nut = this.nut(train, gearing, m, lead);
    const open = unchecked(gearing.banjo);
    const mounted = gearing.mounted !== null && writeTrain(gearing.mounted) === writeTrain(train);
    return html`
      <h2 class="figure">${stagesText(train.stages)}</h2>
      ${train.box === null ? nothing : html`<p class="label">${t.lever(train.box)}</p>`}
      <p>
        <ls-standing .standing=${standing} .word=${standingWord[standing]}>${offText(train)}</ls-standing>
      </p>
      ${
        picture
          ? html`<ls-train-drawing
                .train=${picture.drawn}
                .text=${picture.steps.join('. ')}
              ></ls-train-drawing>
              <ol>
                ${picture.steps.map((s) => html`<li>${s}</li>`)}
              </ol>
              <p class="note">${t.drawnToScale} ${gearing.banjo.shafts === null ? t.assumed : ''}</p>`
          : nothing
      }
      ${
        mounted
          ? html`<p class="label"><strong>${t.nowMounted}</strong></p>`
          : html`<button class="key solid" @click=${() => void this.mount(train)}>${t.mount}</button>`
      }
      <div>
        <ls-row .label=${t.cuts} .value=${cut.mm} unit="mm" .note="${cut.tpi} tpi"></ls-row>
        <ls-row .label=${t.change} .value=${`${train.changes}`}></ls-row>
        <ls-row .label=${t.hand} .value=${this.handWord(train, gearing)} .note=${t.leftScrew}></ls-row>
        <ls-row .label=${t.nut} .note=${nut.line}><span class="figure">${nut.head}</span></ls-row>
      </div>
      <p class="note">${open.length ? `${t.uncheckedOne}${t.limits(open)}.` : t.checked} ${t.rules}</p>
    `;
  }

  private list(found: Found, selected: Train) {
    const shown = this.more ? found.trains : found.trains.slice(0, SHOWN);
    return html`<h3>${t.list}</h3>
      <div class="stack">
        ${shown.map(
          (x) =>
            html`<button class="key train" aria-pressed=${x === selected} @click=${() => this.show(x)}>
              <span>${stagesText(x.stages)}${x.box === null ? '' : ` · ${t.lever(x.box)}`}</span
              ><small>${offText(x)} · ${t.changes(x.changes)}</small>
            </button>`,
        )}
      </div>
      ${
        found.trains.length > shown.length
          ? html`<button class="key" @click=${() => (this.more = true)}>${t.more}</button>`
          : nothing
      }
      ${found.dontFit > 0 ? html`<p class="note">${t.dontFit(found.dontFit)}</p>` : nothing}`;
  }

  private choices() {
    const keys = (
      label: string,
      name: string,
      now: string,
      options: readonly (readonly [string, string])[],
    ) =>
      html`<h3>${label}</h3>
        <div class="keys" role="group" aria-label=${label}>
          ${options.map(
            ([value, word]) =>
              html`<button
                class="key"
                aria-pressed=${now === value}
                @click=${() => void this.app.choose(name, value)}
              >
                ${word}
              </button>`,
          )}
        </div>`;
    return html`${keys(t.orderName, 'trains.order', this.order, [
        ['error', t.order.error],
        ['ease', t.order.ease],
      ])}
      <p class="note">${t.easeHelp}</p>
      ${keys(t.pairsName, 'trains.pairs', `${this.pairs}`, [
        ['2', t.pairs.two],
        ['3', t.pairs.three],
      ])}`;
  }

  private mounted(gearing: Gearing, lead: Lead) {
    const now = gearing.mounted && trainFor(gearing, gearing.mounted, lead);
    const f = now && fit(now.stages, gearing.banjo);
    return html`<h3>${t.mountedTitle}</h3>
      ${
        now
          ? html`<ls-row
              .label=${stagesText(now.stages)}
              .value=${showLead({ mm: now.lead, pi: false }).mm}
              unit="mm"
              .note=${f && !f.fits ? t.misfit(f.misfit) : ''}
              why="Why"
              figure="train"
            ></ls-row>`
          : html`<p>${t.notMounted}</p>`
      }
      <a class="key" href="#/machine/field/gearMounted">${t.enterWheels}</a>`;
  }

  private body(m: MachineProfile) {
    if (!hasGears(m))
      return html`<p>${t.none}</p>
        <a class="key" href="#/machine/field/driveKind">${t.toDrive}</a>`;
    const gears = gearsOf(m);
    if (!gears.ok)
      return html`<p>${t.missing}</p>
        <div class="stack">
          ${gears.missing.map(
            (field) =>
              html`<a class="key left" href="#/machine/field/${field}">${fieldText[field].label}</a>`,
          )}
        </div>`;
    const lead = this.app.sheet.get('lead').value;
    const what = this.app.sheet.get('chosen').value;
    if (!lead || !what)
      return html`<p>${t.noThread}</p>
        <a class="key solid" href="#/threads/find">${t.noThread}</a>`;
    const { found } = this;
    const selected = found?.trains.find((x) => writeTrain(x) === this.chosen) ?? found?.trains[0];
    const shown = showLead(lead);
    return html`
      <p class="label">${t.leadOf(threadName(what), `${shown.mm} mm`)}</p>
      <p class="vh" role="status">${this.slow ? t.looking : ''}</p>
      ${selected ? this.one(selected, gears.gearing, m, lead) : nothing}
      ${found && !selected ? html`<p>${t.nothing(this.within / 10_000)}</p>` : nothing}
      ${found && selected ? this.list(found, selected) : nothing} ${this.choices()}
      ${this.mounted(gears.gearing, lead)}
    `;
  }

  override render() {
    const m = this.app.profile;
    return html`<h1>${t.title}</h1>
      ${m ? this.body(m) : nothing}
      <a class="key" href="#/threads">${t.back}</a>`;
  }
}
