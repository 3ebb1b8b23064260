import { html, nothing, css, svg } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/limits-drawing';
import '../../elements/row';
import '../../elements/standing';
import { readStored } from '../../core/machine';
import { classOf, type Standing } from '../../core/figures';
import { fromBase, inBase, toNumber, type Stated } from '../../core/quantity';
import { limits, type Thread } from '../../core/thread';
import { drills } from '../../core/thread/drills';
import * as wires from '../../core/thread/wires';
import { mark, statedText } from '../../text/numbers';
import { measureText as t, WAYS, type Way } from '../../text/measure';
import { standingWord } from '../../text/speed';
import { classText, drillName } from '../../text/threads';
import type { App } from '../../state';
import { limitsShape } from './shape';

/** Standard uncertainties by common practice, mm. */
const INSTRUMENTS = { fine: 0.0015, coarse: 0.004, caliper: 0.02 } as const;
const WIRE_KINDS = { set: 0.0005, shanks: 0.003 } as const;
const STANDING: Readonly<Record<wires.Verdict, Standing>> = {
  within: 'within',
  above: 'near',
  below: 'over',
  unsure: 'unknown',
  unknown: 'unknown',
};

/** Measuring the chosen thread: which wires, what they should read, and what a reading says. */
@customElement('ls-measure')
export class MeasureScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      svg {
        display: block;
        inline-size: min(100%, 26rem);
        margin-inline: auto;
        fill: none;
        stroke: var(--ink);
        stroke-width: 2;
      }
      .ok {
        fill: var(--ok);
        fill-opacity: 0.25;
        stroke: none;
      }
      .bar {
        stroke-width: 5;
      }
    `,
  ];
  @state() private way: Way = 'three';
  @state() private instrument: keyof typeof INSTRUMENTS = 'coarse';
  @state() private wireKind: keyof typeof WIRE_KINDS = 'set';

  private mm(x: number, places = 3): string {
    const inch = this.app.settings.units === 'in';
    return (inch ? (x / 25.4).toFixed(places + 1) : x.toFixed(places)).replace('-', '−').replace('.', mark());
  }
  private get unit(): 'mm' | 'in' {
    return this.app.settings.units;
  }
  private row(label: string, mm: number | null, note = '') {
    return html`<ls-row
      .label=${label}
      .value=${mm === null ? standingWord.unknown : this.mm(mm)}
      .unit=${mm === null ? '' : this.unit}
      .note=${note}
    ></ls-row>`;
  }

  private read(key: string): Stated | null {
    return this.app.readings.get(key);
  }
  private measured(key: string, u: number): wires.Measured | null {
    const s = this.read(key);
    return s && { value: toNumber(inBase(s)), u };
  }
  private entry(key: string, label: string) {
    const s = this.read(key);
    return html`<a class="key left" href="#/enter/reading/${key}"
      >${s ? `${label}: ${statedText(s)}` : `${t.enter}: ${label}`}</a
    >`;
  }

  private choice<K extends string>(
    name: string,
    options: Readonly<Record<K, string>>,
    now: K,
    set: (k: K) => void,
  ) {
    return html`<h2 class="label">${name}</h2>
      <div class="keys" role="group" aria-label=${name}>
        ${(Object.entries(options) as [K, string][]).map(
          ([k, label]) =>
            html`<button class="key" aria-pressed=${k === now} @click=${() => set(k)}>${label}</button>`,
        )}
      </div>`;
  }

  private get owned(): readonly Stated[] {
    return this.app.settings.wires.flatMap((w) => readStored(w) ?? []);
  }

  private pick(thread: Thread) {
    const sizes = wires.wireSizes(thread);
    if (!sizes) return html`<p>${t.refusal('parallel-flanks')}</p>`;
    const range = sizes.customary ?? sizes.range;
    const { half, pitch } = wires.wireThreadOf(thread);
    const { owned } = this;
    const chosen = range
      ? wires.chooseWires(
          half,
          pitch,
          range,
          owned.map((w, i) => ({ id: `${i}`, diameter: toNumber(inBase(w)), measured: true, count: 3 })),
        )[0]
      : undefined;
    const best = owned[Number(chosen?.wire.id ?? -1)];
    const near = drills().reduce((a, b) =>
      Math.abs(toNumber(b.diameter) - sizes.best) < Math.abs(toNumber(a.diameter) - sizes.best) ? b : a,
    );
    const remove = (i: number) =>
      void this.app.setSettings({ wires: this.app.settings.wires.filter((_, j) => j !== i) });
    return html`<div>
        ${this.row(t.bestWire, sizes.best, t.bestNote)}
        ${
          range
            ? html`<ls-row
                .label=${sizes.customary ? t.customary : t.usable}
                .value="${this.mm(range.least)} – ${this.mm(range.most)}"
                .unit=${this.unit}
              ></ls-row>`
            : nothing
        }
        ${
          best && chosen?.fit === 'suits'
            ? html`<ls-row .label=${t.pick} .value=${statedText(best)}></ls-row>`
            : html`<ls-row
                .label=${t.shank}
                .value=${`${drillName(near.kind, near.name)}${near.kind === 'metric' ? ' mm' : ''}`}
                .note=${owned.length ? t.pickNone : ''}
              ></ls-row>`
        }
      </div>
      <h2 class="label">${t.owned}</h2>
      <div class="keys">
        ${owned.map(
          (w, i) =>
            html`<button class="key" aria-label=${t.takeOut(statedText(w))} @click=${() => remove(i)}>
              ${statedText(w)} ✕
            </button>`,
        )}
        <a class="key" href="#/enter/wire">${t.addWire}</a>
      </div>
      ${owned.length ? html`<p class="note">${t.ownedHelp}</p>` : nothing}
      <h2 class="label">${t.using}</h2>
      ${this.entry('measure.wire', t.using)}`;
  }

  private window(thread: Thread, classId: string, wire: number) {
    const w = wires.overWiresWindow(thread, classId, wire);
    if (!w.ok) return html`<p>${t.refusal(w.refusal)}</p>`;
    const l = limits(thread, classId);
    const shape = l.ok ? limitsShape(thread, l, wire) : null;
    const e = w.pitchDiameterMax ?? w.pitchDiameterMin;
    const over = e === null ? null : wires.overWires(wires.wireThreadOf(thread), e, wire);
    return html`<h2>${t.over} ${classText(classId)}</h2>
      ${shape ? html`<ls-limits-drawing .shape=${shape} .text=${t.over}></ls-limits-drawing>` : nothing}
      <div>${this.row(t.overAt.min, w.min)} ${this.row(t.overAt.max, w.max)}</div>
      ${over?.ok ? html`<p class="note">${t.leadTerm}: ${this.mm(over.leadTerm, 4)} ${this.unit}, ${t.method[over.method]}.</p>` : nothing}
      ${w.clear === false ? html`<p class="over"><strong>${t.notClear}</strong></p>` : nothing}`;
  }

  /** The reading's keys for this way, and the pitch diameter that follows, mm. */
  private reading(thread: Thread): {
    keys: unknown;
    found: { value: number; u: number | null } | null;
    refusal: string | null;
  } {
    const u = INSTRUMENTS[this.instrument];
    const wire = this.measured('measure.wire', WIRE_KINDS[this.wireKind]);
    const solve = (r: wires.WireReading | null) => {
      if (!r || !wire) return { found: null, refusal: null };
      const e = wires.pitchDiameterFromReading(wires.wireThreadOf(thread), r, wire);
      return e.ok
        ? { found: { value: e.pitchDiameter, u: e.u }, refusal: null }
        : { found: null, refusal: e.refusal };
    };
    if (this.way === 'three') {
      const over = this.measured('measure.over', u);
      return { keys: this.entry('measure.over', t.reading.three), ...solve(over && { kind: 'over', over }) };
    }
    if (this.way === 'one') {
      const [reading, major] = [this.measured('measure.one', u), this.measured('measure.major', u)];
      return {
        keys: html`${this.entry('measure.one', t.reading.one)} ${this.entry('measure.major', t.major)}`,
        ...solve(reading && major && { kind: 'one-wire', reading, major }),
      };
    }
    if (this.way === 'two') {
      const [cylinder, difference] = [
        this.measured('measure.cylinder', u),
        this.measured('measure.difference', u),
      ];
      return {
        keys: html`${this.entry('measure.cylinder', t.cylinder)}
        ${this.entry('measure.difference', t.reading.two)}`,
        ...solve(cylinder && difference && { kind: 'compared', cylinder, difference }),
      };
    }
    const [mic, actual, shown] = (['mic', 'standard', 'shown'] as const).map((k) =>
      this.measured(`measure.${k}`, u),
    );
    return {
      keys: html`${this.entry('measure.standard', t.standardActual)}
      ${this.entry('measure.shown', t.standardShown)} ${this.entry('measure.mic', t.reading.micrometer)}`,
      found: mic && actual && shown ? wires.threadMicrometer(mic, { actual, shown }) : null,
      refusal: null,
    };
  }

  private scale(value: number, U: number, min: number, max: number) {
    const middle = (min + max) / 2;
    const span = 1.15 * Math.max(max - min, 2 * (Math.abs(value - middle) + U));
    const x = (v: number): string => (((v - middle) / span + 0.5) * 340 + 10).toFixed(1);
    return html`<svg
      viewBox="0 0 360 64"
      role="img"
      aria-label=${t.scale(this.mm(value), this.mm(min), this.mm(max))}
    >
      ${svg`<rect class="ok" x=${x(min)} y="14" width=${(Number(x(max)) - Number(x(min))).toFixed(1)} height="30" />
      <path d="M${x(min)} 8V50M${x(max)} 8V50M4 44H356" />
      <path class="bar" d="M${x(value - U)} 29H${x(value + U)}" />
      <path d="M${x(value)} 56l-8 8h16zV16" fill="currentColor" />`}
    </svg>`;
  }

  private answer(thread: Thread, classId: string | null) {
    const { keys, found, refusal } = this.reading(thread);
    const l = classId ? limits(thread, classId) : null;
    const mm = (r: { n: bigint; d: bigint } | null): number | null =>
      r && l?.ok ? toNumber(inBase({ value: r as never, unit: l.unit })) : null;
    const [min, max] = l?.ok ? [mm(l.pitch.min), mm(l.pitch.max)] : [null, null];
    const U = found?.u == null ? null : 2 * found.u;
    const verdict = found ? wires.verdictOf(found.value, U, min, max) : null;
    const words = verdict && (verdict === 'within' ? t.verdict.within() : t.verdict[verdict]);
    const excess = found && min !== null && max !== null ? found.value - (min + max) / 2 : null;
    return html`<div class="stack">${keys}</div>
      ${this.choice(t.instrument, t.instruments, this.instrument, (k) => (this.instrument = k))}
      ${this.way === 'micrometer' ? nothing : this.choice(t.wires, t.wireKinds, this.wireKind, (k) => (this.wireKind = k))}
      <p class="note">${t.assumed}</p>
      ${refusal ? html`<p class="over">${t.refusal(refusal)}</p>` : nothing}
      ${
        found && verdict
          ? html`<div>
                ${this.row(t.found(), found.value, U === null ? '' : t.uncertainty(`${this.mm(U)} ${this.unit}`))}
              </div>
              ${min !== null && max !== null && U !== null ? this.scale(found.value, U, min, max) : nothing}
              <ls-standing .standing=${STANDING[verdict]} .word=${words ?? ''}></ls-standing>
              ${
                excess !== null && excess > 0 && verdict !== 'within'
                  ? html`<div>
                      ${this.row(t.left, wires.remainingInfeed(excess, null).radial, t.leftNote)}
                    </div>`
                  : nothing
              }`
          : nothing
      }`;
  }

  private gauge(thread: Thread) {
    const lead = toNumber(inBase(thread.pitch)) * thread.starts;
    const rule = thread.pitch.unit === 'tpi' ? 'asme-b1.2' : 'iso-1502';
    const g = wires.gaugeLengths(rule, lead, lead);
    if (!g) return nothing;
    return html`<div>
        <ls-row .label=${t.go} .value=${t.goLength}></ls-row>
        <ls-row .label=${t.noGo} .value=${t.turns(g.noGoTurns)}></ls-row>
        ${this.row(t.along, g.noGoLength)}
      </div>
      <p class="note">${t.gaugeNote}</p>
      <p>${t.gaugeFeel}</p>`;
  }

  override render() {
    const chosen = this.app.sheet.get('chosen').value?.thread;
    if (!chosen)
      return html`<h1>${t.noThread}</h1>
        <a class="key solid" href="#/threads/find">${t.back}</a>`;
    const thread = { ...chosen, starts: this.app.job.starts };
    const classId = classOf(chosen, this.app.job.classId, this.app.job.side);
    const wire = this.read('measure.wire');
    const wired = this.way === 'three' || this.way === 'one' || this.way === 'two';
    return html`
      <h1>${t.title} ${chosen.designation}</h1>
      <p class="note">${t.clean}</p>
      ${this.choice(t.way, t.ways, this.way, (k) => (this.way = WAYS.find((w) => w === k) ?? 'three'))}
      ${wired ? this.pick(thread) : nothing}
      ${wired && wire && classId ? this.window(thread, classId, toNumber(fromBase(inBase(wire), 'mm'))) : nothing}
      ${this.way === 'gauge' ? this.gauge(thread) : this.answer(thread, classId)}
      <a class="key" href="#/threads">${t.back}</a>
    `;
  }
}
