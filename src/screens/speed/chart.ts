import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { plotOf, plotSheet } from '../../elements/chart-plot';
import type { PlotData, PlotLine } from '../../elements/chart-layout';
import { fingerprint } from '../../core/context';
import {
  chartSteps,
  GROOVE_IDS,
  type Chart,
  type ChartRow,
  type GrooveId,
  type OwnAnswer,
  type RoomAnswer,
} from '../../core/figures/chart';
import type { Ceiling, LimitReading } from '../../core/figures';
import { leadNumber, toNumber } from '../../core/quantity';
import { printPage } from '../../device/print';
import { chartText as t, grooveName } from '../../text/chart';
import { plain, showLead, statedText, whole } from '../../text/numbers';
import { limitText } from '../../text/why';
import type { App } from '../../state';
import { chartStyles } from './chart-styles';
import { chartThreads, HUNG, type NamedThread } from './chart-threads';

/** Longer names are set smaller on the page to hang up. */
const LONG = 8;
/** The drawing on a page of A4 or Letter, CSS pixels. */
const PAPER = { width: 690, height: 740, font: 15 };
/** Time for one piece of reckoning between two looks at the screen, ms. */
const PIECE = 8;

const names = (limits: readonly LimitReading[]): string => limits.map((l) => limitText[l.id].name).join(', ');
const ceilingText = (c: Ceiling): string => (c.highest === null ? t.notKnown : whole(c.highest));

const roomText = (a: RoomAnswer): string => {
  if (a.kind === 'highest') return whole(a.rpm);
  if (a.kind === 'nothing-left') return t.nothing;
  return a.kind === 'not-known' ? t.notKnown : t.noGroove;
};
/** On the wall one sign says it: there is no room for words. */
const roomSign = (a: RoomAnswer): string => {
  if (a.kind === 'highest') return `${a.rpm}`;
  return a.kind === 'nothing-left' ? '0' : a.kind === 'not-known' ? '?' : '–';
};
const ownText = (a: OwnAnswer): string => {
  if (a.kind === 'speed') return plain(a.rpm);
  return a.kind === 'none' ? t.noneOfThem : a.kind === 'no-speeds' ? t.noGroove : t.notKnown;
};

/** Pitch against highest spindle speed for this machine: as a drawing, as a table, and as a page to hang up. */
@customElement('ls-chart')
export class ChartScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, plotSheet, chartStyles];
  @state() private chart: Chart | null = null;
  private threads: readonly NamedThread[] = [];
  /** What the chart on the screen was reckoned from. */
  private basis = '';

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const threads = chartThreads(this.app);
    const { inputs } = this.app;
    const basis = fingerprint([inputs.machine, inputs.job.room, inputs.context.records, threads]);
    if (basis === this.basis) return;
    this.basis = basis;
    this.threads = threads;
    void this.reckon(basis);
  }

  /** A piece at a time, so that a touch meanwhile is answered; given up when something changed. */
  private async reckon(basis: string): Promise<void> {
    const steps = chartSteps(this.app.inputs, this.threads);
    for (let until = performance.now() + PIECE; ;) {
      const { done, value } = steps.next();
      if (done) {
        this.chart = value;
        return;
      }
      if (performance.now() < until) continue;
      await new Promise((resolve) => setTimeout(resolve));
      if (basis !== this.basis || !this.isConnected) return;
      until = performance.now() + PIECE;
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.basis = '';
  }

  private nameOf(row: ChartRow): string {
    return this.threads.find((x) => x.key === row.key)?.name ?? row.key;
  }

  private get words(): readonly string[] {
    const missing = (this.chart?.stopMissing.length ?? 0) > 0;
    return [t.driveWords, missing ? t.stopNone : t.stopWords];
  }

  private plotData(c: Chart): PlotData {
    const { room } = this.app.job;
    const lines: PlotLine[] = [
      ...c.lines.map((l) => ({
        name: limitText[l.id].name,
        kind: l.side === 'drive' ? ('limit' as const) : ('work' as const),
        points: l.points,
      })),
      ...c.grooves.map((g) => ({ name: grooveName[g.id], kind: 'stop' as const, points: g.points })),
      ...(c.entered && room
        ? [{ name: t.room(statedText(room)), kind: 'stop' as const, points: c.entered }]
        : []),
    ].filter((l) => l.points.length > 0);
    const inUse = new Set(this.threads.filter((x) => x.inUse).map((x) => x.key));
    return {
      from: c.from,
      to: c.to,
      lines,
      ceiling: c.ceiling.map((s) => s.points),
      rules: c.own.rpm.map((rpm) => ({ name: plain(rpm), rpm: toNumber(rpm) })),
      threads: c.rows
        .filter((r) => inUse.has(r.key))
        .map((r) => ({
          name: this.nameOf(r),
          lead: leadNumber(r.lead),
          rpm: r.drive.highest === null ? null : Number(r.drive.highest),
        })),
      words: this.words,
      axis: t.axis,
    };
  }

  private heading(c: Chart) {
    const { profile, clock } = this.app;
    return html`<p>${t.of(profile?.name ?? '', profile?.workshop ?? '', clock.day)}</p>
      ${c.unknown.length ? html`<p class="unknown">${t.unknown(names(c.unknown))}</p>` : nothing}
      ${c.byRecord.length ? html`<p class="note">${t.byRecord(names(c.byRecord))}</p>` : nothing}`;
  }

  /** Columns beside thread and lead: heading, and what stands in it. */
  private get columns(): readonly (readonly [string, (r: ChartRow) => string])[] {
    const { room } = this.app.job;
    return [
      [`${t.drive}, ${t.driveNote}`, (r) => ceilingText(r.drive)],
      [t.own, (r) => ownText(r.own)],
      ...GROOVE_IDS.map(
        (id: GrooveId) => [grooveName[id], (r: ChartRow) => roomText(r.grooves[id])] as const,
      ),
      ...(room
        ? [
            [
              t.room(statedText(room)),
              (r: ChartRow) => (r.entered ? roomText(r.entered) : t.noGroove),
            ] as const,
          ]
        : []),
    ];
  }

  private table(c: Chart) {
    const { columns } = this;
    return html`<section class="full">
      <h2>${t.table}</h2>
      ${this.words.map((w) => html`<p>${w}</p>`)}
      <table>
        <thead>
          <tr>
            <th scope="col">${t.thread}</th>
            <th scope="col">${t.lead}</th>
            ${columns.map(([name]) => html`<th scope="col">${name}, rpm</th>`)}
          </tr>
        </thead>
        <tbody>
          ${c.rows.map((r) => {
            const lead = showLead(r.lead);
            return html`<tr>
              <th scope="row">${this.nameOf(r)}</th>
              <td data-label=${t.lead}>${lead.mm} mm · ${lead.tpi} tpi</td>
              ${columns.map(([name, of]) => html`<td data-label=${name}><b>${of(r)}</b></td>`)}
            </tr>`;
          })}
        </tbody>
      </table>
    </section>`;
  }

  private hang(c: Chart) {
    const { profile, clock } = this.app;
    const sign = (x: Ceiling): string => (x.highest === null ? '?' : `${x.highest}`);
    return html`<section class="hang sheet paper-only" aria-hidden="true">
      <h2>${profile?.name ?? ''} · ${t.hang}</h2>
      <p>${t.of(profile?.name ?? '', profile?.workshop ?? '', clock.day)}</p>
      <div class="heads"><span>${t.thread}</span><span>${t.hangDrive}</span><span>${t.hangRoom}</span></div>
      <ol>
        ${c.rows.slice(0, HUNG).map((r) => {
          const name = this.nameOf(r);
          return html`<li>
            <span class=${name.length > LONG ? 'long' : ''}>${name}</span><span>${sign(r.drive)}</span
            ><span>${roomSign(r.grooves['iso-4755'])}</span>
          </li>`;
        })}
      </ol>
      <p>${t.hangFoot}</p>
    </section>`;
  }

  override render() {
    const c = this.chart;
    if (!c)
      return html`<h1>${t.title}</h1>
        <p role="status">${t.working}</p>`;
    const data = this.plotData(c);
    return html`${this.hang(c)}
      <section class="drawn sheet">
        <h1>${t.title}</h1>
        ${this.heading(c)}
        <ls-chart-plot
          class="screen-only"
          .data=${data}
          .text=${`${t.plot} ${this.words.join(' ')}`}
        ></ls-chart-plot>
        <div class="paper-only" aria-hidden="true">${plotOf(data, PAPER, t.plot, 'paper')}</div>
      </section>
      <div class="stack screen-only">
        <button class="key solid" @click=${printPage}>${t.print}</button>
        <p class="note">${t.printHelp}</p>
      </div>
      ${this.table(c)}
      <a class="key screen-only" href="#/speed">${t.back}</a>`;
  }
}
