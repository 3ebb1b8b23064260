import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { inBase, read as readExact, stated, toNumber } from '../../core/quantity';
import { catalogue } from '../../core/thread';
import {
  candidatesFrom,
  gaugedPitch,
  identify,
  type Candidate,
  type Match,
  type Separation,
  type ThreadReadings,
} from '../../core/thread/identify';
import { pitchOverCrests, type Measured } from '../../core/thread/wires';
import { mark, marked, statedText } from '../../text/numbers';
import { identifyText as t } from '../../text/identify';
import { familyText } from '../../text/threads';
import type { App } from '../../state';

/** Standard uncertainties by common practice, mm: of a diameter, and of a length over crests. */
const U = {
  caliper: { diameter: 0.02, length: 0.05 },
  micrometer: { diameter: 0.005, length: 0.05 },
  rule: { diameter: 0.2, length: 0.2 },
} as const;
/** An angle told by a gauge held to the light, degrees. */
const U_ANGLE = 1.5;
const ANGLES = ['none', '60', '55', '47.5', '30', '29'] as const;
/** Two that differ in nothing usual are less than this apart, in standard deviations. */
const APART = 1;

let catalogued: readonly Candidate[] | null = null;
let own: { readonly version: number; readonly candidates: readonly Candidate[] } | null = null;

/** What may be it: the catalogue and the person's own threads. */
const candidatesOf = ({ own: threads }: App): readonly Candidate[] => {
  catalogued ??= candidatesFrom(catalogue());
  if (own?.version !== threads.version)
    own = { version: threads.version, candidates: [...catalogued, ...candidatesFrom(threads.complete)] };
  return own.candidates;
};

/** What is this thread? From what could be measured, the threads it may be, and what would tell them apart. */
@customElement('ls-identify')
export class IdentifyScreen extends ScreenElement<App> {
  /** What was last chosen by key; it outlives the pad and the page. */
  private chosen<K extends string>(name: string, of: readonly K[], usual: K): K {
    return of.find((k) => k === this.app.settings.choices[`identify.${name}`]) ?? usual;
  }
  private keep(name: string, value: string): void {
    void this.app.choose(`identify.${name}`, value);
  }
  private get side() {
    return this.chosen('side', ['external', 'internal'] as const, 'external');
  }
  private get pitchBy() {
    return this.chosen('pitchBy', ['count', 'gauge'] as const, 'count');
  }
  private get instrument() {
    return this.chosen('instrument', Object.keys(U) as (keyof typeof U)[], 'caliper');
  }
  /** Told by a gauge: a reading like the others, cleared with them. */
  private get angle(): (typeof ANGLES)[number] {
    const kept = this.app.readings.get('identify.angle');
    return (kept && ANGLES.find((a) => a === `${toNumber(kept.value)}`)) ?? 'none';
  }
  private setAngle(angle: (typeof ANGLES)[number]): void {
    const read = readExact(angle);
    void this.app.readings.set('identify.angle', read.ok ? stated(read.value, 'deg') : null);
  }

  private mm(key: string): number | null {
    const s = this.app.readings.get(`identify.${key}`);
    return s && toNumber(inBase(s));
  }

  private get pitch(): Measured | null {
    if (this.pitchBy === 'gauge') {
      const gauge = this.mm('gauge');
      return gauge === null ? null : gaugedPitch(gauge);
    }
    const [length, crests] = [this.mm('length'), this.mm('crests')];
    if (length === null || crests === null) return null;
    return pitchOverCrests({ value: length, u: U[this.instrument].length }, crests);
  }

  private get readings(): ThreadReadings {
    const diameter = this.mm('diameter');
    return {
      side: this.side,
      diameter: diameter === null ? null : { value: diameter, u: U[this.instrument].diameter },
      pitch: this.pitch,
      angle: this.angle === 'none' ? null : { value: Number(this.angle), u: U_ANGLE },
    };
  }

  private choice<K extends string>(
    name: string,
    options: readonly (readonly [K, string])[],
    now: K,
    set: (k: K) => void,
  ) {
    return html`<h2 class="label">${name}</h2>
      <div class="keys" role="group" aria-label=${name}>
        ${options.map(
          ([k, label]) =>
            html`<button class="key" aria-pressed=${k === now} @click=${() => set(k)}>${label}</button>`,
        )}
      </div>`;
  }

  private entry(key: string, label: string) {
    const s = this.app.readings.get(`identify.${key}`);
    return html`<a class="key left" href="#/enter/reading/identify.${key}"
      >${s ? `${label}: ${statedText(s)}` : `${t.enter}: ${label}`}</a
    >`;
  }

  private use(m: Match): void {
    const { thread } = m.candidate;
    void this.app.chooseFound(thread);
    this.go('#/threads');
  }

  private line(m: Match) {
    const { thread } = m.candidate;
    const crest = m.crest ? ` · ${t.crest[m.crest]}` : '';
    return html`<button class="key left" @click=${() => this.use(m)}>
      <span
        >${marked(thread.designation)}<br /><small
          >${familyText(thread.family)} · ${t.likely(m.probability)}${crest}</small
        ></span
      >
    </button>`;
  }

  private next(first: Separation | undefined) {
    if (!first || first.sigmas < APART) return html`<p>${t.notApart}</p>`;
    const places = first.kind === 'angle' ? 1 : 3;
    const difference = first.difference.toFixed(places).replace('.', mark());
    return html`<p>${t.next} ${t.nextBy[first.kind](difference, first.pitches)}</p>`;
  }

  private answer() {
    const found = identify(this.readings, candidatesOf(this.app));
    if (!found.ok) return html`<p>${found.refusal === 'nothing-measured' ? t.nothing : t.refused}</p>`;
    const together = found.matches.filter((m) => m.together);
    const others = found.matches.filter((m) => !m.together).slice(0, 6);
    return html`<p role="status"><strong>${found.fits ? t.fits : t.far}</strong></p>
      ${together.length > 1 ? html`<p>${t.together}</p>` : nothing}
      <div class="stack">${together.map((m) => this.line(m))}</div>
      ${together.length > 1 ? this.next(found.next[0]) : nothing}
      ${
        others.length
          ? html`<h2 class="label">${t.others}</h2>
              <div class="stack">${others.map((m) => this.line(m))}</div>`
          : nothing
      }`;
  }

  override render() {
    return html`
      <h1>${t.title}</h1>
      <p class="note">${t.help}</p>
      ${this.choice(
        t.sideName,
        [
          ['external', t.side.external],
          ['internal', t.side.internal],
        ],
        this.side,
        (k) => this.keep('side', k),
      )}
      <div class="stack">${this.entry('diameter', t.diameter[this.side])}</div>
      ${this.choice(
        t.pitchBy,
        [
          ['count', t.pitchWays.count],
          ['gauge', t.pitchWays.gauge],
        ],
        this.pitchBy,
        (k) => this.keep('pitchBy', k),
      )}
      <div class="stack">
        ${
          this.pitchBy === 'gauge'
            ? this.entry('gauge', t.pitchWays.gauge)
            : html`${this.entry('length', t.lengthOver)} ${this.entry('crests', t.crestsIn)}`
        }
      </div>
      ${this.choice(
        t.readWith,
        (['caliper', 'micrometer', 'rule'] as const).map((k) => [k, t.instruments[k]] as const),
        this.instrument,
        (k) => this.keep('instrument', k),
      )}
      ${this.choice(
        t.angle,
        ANGLES.map((k) => [k, t.angles[k]] as const),
        this.angle,
        (k) => this.setAngle(k),
      )}
      ${this.answer()}
      <div class="apart">
        <button class="key stop" @click=${() => void this.app.clearReadings('identify.')}>${t.clear}</button>
      </div>
    `;
  }
}
