import { html, nothing, css, type PropertyValues } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/limits-drawing';
import '../../elements/row';
import { classOf } from '../../core/figures';
import { inBase, toNumber, type Stated } from '../../core/quantity';
import { limits, type LimitsResult, type Thread } from '../../core/thread';
import { basicSizes } from '../../core/thread/forms';
import * as wires from '../../core/thread/wires';
import { mark, marked, statedText } from '../../text/numbers';
import { measureLabels, measureText as t, WAYS, type MeasureKey, type Way } from '../../text/measure';
import { classText } from '../../text/threads';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { limitsScaleStyles } from '../../elements/limits-scale';
import { inMm, resultSection } from './measure-result';
import { answerOf, instrumentsFor, READINGS, type Measuring } from './measured';
import { ownedSection, wireSection } from './owned-wires';
import { limitsShape } from './shape';

const WIRE_KINDS = Object.keys(wires.WIRE_U) as wires.WireKind[];
/** What is less than half the last digit shown is not worth a line, mm. */
const SHOWN = 0.0005;
/** The thread that the readings were taken on, by this name among the choices. */
const THREAD_READ = 'measure.of';

/** Measuring the chosen thread: which wires, what they should read, and what a reading says. */
@customElement('ls-measure')
export class MeasureScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    ...limitsScaleStyles,
    css`
      .unsuited {
        padding-block: 10px;
      }
    `,
  ];
  @state() private taking = false;

  override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    this.forgetOthers();
  }

  private get thread(): Thread | null {
    const chosen = this.app.sheet.get('chosen').value?.thread;
    return chosen ? { ...chosen, starts: this.app.job.starts } : null;
  }

  /** What was read on another thread says nothing of this one. */
  private forgetOthers(): void {
    const id = this.thread?.id;
    if (!id || this.app.settings.choices[THREAD_READ] === id) return;
    // The choice first: forgetting draws this screen again.
    void this.app.choose(THREAD_READ, id);
    void this.app.readings.clear('measure.');
  }

  private chosen<K extends string>(name: string, options: readonly K[]): K {
    const now = this.app.settings.choices[`measure.${name}`];
    return options.find((k) => k === now) ?? (options[0] as K);
  }

  private get measuring(): Measuring {
    const way = this.chosen('way', WAYS);
    return {
      way,
      instrument: this.chosen('instrument', instrumentsFor(way)),
      wireKind: this.chosen('wires', WIRE_KINDS),
      read: (key) => this.app.readings.get(key),
    };
  }

  private readonly number = (mm: number, places = 3): string => {
    const inch = this.app.settings.units === 'in';
    const text = inch ? (mm / 25.4).toFixed(places + 1) : mm.toFixed(places);
    return text.replace('-', '−').replace('.', mark());
  };
  private readonly length = (mm: number, places = 3): string =>
    `${this.number(mm, places)}\u00a0${this.app.settings.units}`;

  private row(label: string, mm: number, note = '') {
    return html`<ls-row
      .label=${label}
      .value=${this.number(mm)}
      .unit=${this.app.settings.units}
      .note=${note}
    ></ls-row>`;
  }

  private entry(key: MeasureKey) {
    const s = this.app.readings.get(key);
    const label = measureLabels[key];
    return html`<a class="key left" href="#/enter/reading/${key}"
      >${s ? `${label}: ${statedText(s)}` : `${t.enter}: ${label}`}</a
    >`;
  }

  private choice<K extends string>(
    name: string,
    label: string,
    options: readonly K[],
    text: Readonly<Record<K, string>>,
  ) {
    const now = this.chosen(name, options);
    return html`<h2 class="label">${label}</h2>
      <div class="keys" role="group" aria-label=${label}>
        ${options.map(
          (k) =>
            html`<button
              class="key"
              aria-pressed=${k === now}
              @click=${() => void this.app.choose(`measure.${name}`, k)}
            >
              ${text[k]}
            </button>`,
        )}
      </div>`;
  }

  /** How the wire in use suits, said where it is entered. */
  private wireInUse(thread: Thread, sizes: wires.WireSizes, wire: number | null) {
    const { half, pitch } = wires.wireThreadOf(thread);
    const range = sizes.customary ?? sizes.range;
    const one = { id: '', diameter: wire ?? 0, measured: true, count: 3 };
    const fit = wire !== null && range ? wires.chooseWires(half, pitch, range, [one])[0]?.fit : undefined;
    const shift = wire === null ? null : wires.errorPerDegree(half, pitch, wire);
    return html`${this.entry('measure.wire')}
    ${fit && fit !== 'suits' ? html`<p class="over"><strong>${t.misfit[fit]}</strong></p>` : nothing}
    ${shift === null || Math.abs(shift) < SHOWN ? nothing : html`<p class="note">${t.perDegree(this.length(shift))}</p>`}`;
  }

  private window(thread: Thread, l: LimitsResult, classId: string | null, wire: number) {
    const w = l.ok && classId ? wires.overWiresWindow(thread, classId, wire) : null;
    if (w && !w.ok) return html`<p class="over">${t.refusal(w.refusal)}</p>`;
    const sizes = basicSizes(thread);
    const basic = sizes && inMm(sizes.pitch, sizes.unit);
    const e = w ? (w.pitchDiameterMax ?? w.pitchDiameterMin) : basic;
    if (e === null) return nothing;
    const over = wires.overWires(wires.wireThreadOf(thread), e, wire);
    if (!over.ok) return html`<p class="over">${t.refusal(over.refusal)}</p>`;
    const shape = l.ok ? limitsShape(thread, l, wire) : null;
    const lead = t.leadTerm(this.length(over.leadTerm, 4), t.method[over.method]);
    return html`${w ? html`<h2>${t.over(classText(classId ?? ''))}</h2>` : nothing}
      ${shape ? html`<ls-limits-drawing .shape=${shape} .text=${t.drawing}></ls-limits-drawing>` : nothing}
      <div>
        ${w?.min == null ? nothing : this.row(t.overAt.min, w.min)}
        ${w?.max == null ? nothing : this.row(t.overAt.max, w.max)}
        ${w ? nothing : this.row(t.overBasic, over.over)}
      </div>
      <p class="note">${lead} ${w ? `${t.source(w.source)}.` : ''}</p>
      ${w?.clear === false ? html`<p class="over"><strong>${t.notClear}</strong></p>` : nothing}`;
  }

  private uncertainties(m: Measuring) {
    const wired = m.way !== 'micrometer';
    return html`${this.choice('instrument', t.instrument, instrumentsFor(m.way), t.instruments)}
      ${wired ? this.choice('wires', t.wires, WIRE_KINDS, t.wireKinds) : nothing}
      <p class="note">
        ${t.assumed(
          this.length(wires.INSTRUMENT_U[m.instrument], 4),
          wired ? this.length(wires.WIRE_U[m.wireKind], 4) : '',
        )}
      </p>`;
  }

  private byWires(thread: Thread, l: LimitsResult, classId: string | null) {
    const sizes = wires.wireSizes(thread);
    if (!sizes) return html`<p>${t.refusal('parallel-flanks')}</p>`;
    const wire: Stated | null = this.app.readings.get('measure.wire');
    const mm = wire && toNumber(inBase(wire));
    return html`${wireSection(this.app, thread, sizes, this.length)}
    ${ownedSection(this.app, wire, this.taking, (on) => (this.taking = on))}
    ${this.wireInUse(thread, sizes, mm)} ${mm === null ? nothing : this.window(thread, l, classId, mm)}`;
  }

  /** How it is measured, then with what, then the readings; once they are there, what they say stands first. */
  private bySize(thread: Thread, m: Measuring, way: Exclude<Way, 'gauge'>) {
    const classId = classOf(thread, this.app.job.classId, this.app.job.side);
    const l = limits(thread, classId ?? '');
    const answer = answerOf(thread, m);
    const lengths = { unit: this.app.settings.units, number: this.number, length: this.length };
    const keys = html`<div class="stack">${READINGS[way].map((key) => this.entry(key))}</div>`;
    const found = answer.kind === 'found';
    return html`${
      found ? html`${resultSection(thread, answer.found, l, classId, way, lengths)} ${keys}` : nothing
    }
    ${this.wayKeys(way)} ${way === 'micrometer' ? nothing : this.byWires(thread, l, classId)}
    ${found ? nothing : keys}
    ${answer.kind === 'refused' ? html`<p class="over">${t.refusal(answer.refusal)}</p>` : nothing}
    ${this.uncertainties(m)}`;
  }

  private wayKeys(way: Way) {
    return html`${this.choice('way', t.way, WAYS, t.ways)}
      <p class="note">${t.how[way]}</p>`;
  }

  private gauge(thread: Thread) {
    const lead = wires.wireThreadOf(thread).lead;
    const rule = wires.gaugeRuleOf(thread);
    const g = wires.gaugeLengths(rule, lead, lead);
    if (!g) return nothing;
    return html`<div>
        <ls-row .label=${t.go} .value=${t.goLength}></ls-row>
        <ls-row .label=${t.noGo} .value=${t.turns(g.noGoTurns)} .note=${t.gaugeNote[rule]}></ls-row>
        ${this.row(t.along, g.noGoLength)}
      </div>
      ${t.gaugeFeel().map((line) => html`<p>${line}</p>`)}`;
  }

  private ways(thread: Thread) {
    if (thread.taper) return html`<p>${t.refusal('taper-thread')}</p>`;
    if (this.app.job.side === 'internal')
      return html`<p>${t.refusal('internal-thread')}</p>
        ${this.gauge(thread)}`;
    const { measuring } = this;
    const { way } = measuring;
    return way === 'gauge'
      ? html`${this.wayKeys(way)} ${this.gauge(thread)}`
      : this.bySize(thread, measuring, way);
  }

  override render() {
    const { thread } = this;
    if (!thread)
      return html`<h1>${t.noThread}</h1>
        <a class="key solid" href="#/threads/find">${t.back}</a>`;
    return html`
      <h1>${t.title} ${marked(thread.designation)}</h1>
      <p class="note">${t.clean}</p>
      ${this.ways(thread)} ${links(mistakeLinksAt('threads/measure'))}
      <a class="key" href="#/threads">${t.back}</a>
    `;
  }
}
