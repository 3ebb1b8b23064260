import { html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { ScreenElement } from '../../elements/screen';
import { plotOf, plotSheet, plotSize } from '../../elements/chart-plot';
import { plotDataOf } from '../../elements/chart-data';
import { layoutSteps, type PlotData } from '../../elements/chart-layout';
import { inPieces } from '../../elements/in-pieces';
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
import { printPage } from '../../device/print';
import { chartText as t, grooveName } from '../../text/chart';
import { whoseText } from '../../text/machine';
import { decimal, mark, plain, showLead, statedText, whole } from '../../text/numbers';
import { limitText } from '../../text/why';
import type { App } from '../../state';
import { chartStyles } from './chart-styles';
import { hangPage } from './chart-hang';
import { chartThreads, HUNG, type NamedThread } from './chart-threads';

/** The drawing on a page of A4 or Letter, CSS pixels. */
const PAPER = { width: 690, height: 850, font: 15 };
/**
 * Made one after another: the drawing, the table below it by and by, the page to hang up, the drawing for paper, the sizes
 * not shown.
 */
const PARTS = [
  'plot',
  'table',
  'rows-2',
  'rows-3',
  'rows-4',
  'rows-5',
  'rows-6',
  'hung',
  'drawn',
  'more',
] as const;
/** Rows of the table in one part. */
const ROWS = 4;

const names = (limits: readonly LimitReading[]): string => limits.map((l) => limitText[l.id].name).join(', ');
const ceilingText = (c: Ceiling): string => (c.highest === null ? t.notKnown : whole(c.highest));

const roomText = (a: RoomAnswer): string => {
  if (a.kind === 'highest') return whole(a.rpm);
  if (a.kind === 'nothing-left') return t.nothing;
  return a.kind === 'not-known' ? t.notKnown : t.noGroove;
};
const ownText = (a: OwnAnswer): string => {
  if (a.kind === 'speed') return plain(a.rpm);
  return a.kind === 'none' ? t.noneOfThem : a.kind === 'no-speeds' ? t.noGroove : t.notKnown;
};

/** Pitch against highest spindle speed for this machine: as a drawing, as a table, and as a page to hang up. */
@customElement('ls-chart')
export class ChartScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, plotSheet, chartStyles];
  @state() private shown: { readonly chart: Chart; readonly data: PlotData } | null = null;
  /** How many parts beyond the screen's own are made. */
  @state() private parts = 0;
  /** The usual sizes too, on the screen; on paper they always stand. */
  @state() private all = false;
  private threads: readonly NamedThread[] = [];
  /** What the chart asked for last is reckoned from. */
  private basis = '';

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const threads = chartThreads(this.app);
    const { inputs } = this.app;
    // The clock alone asks for no new chart; the day does, since records lapse by it.
    const { records, events, hours, day } = inputs.context;
    const basis = fingerprint([
      inputs.machine,
      { ...inputs.job, rpm: null },
      threads,
      records,
      events,
      hours,
      day,
    ]);
    if (basis === this.basis) return;
    this.basis = basis;
    this.threads = threads;
    void this.reckon(basis);
  }

  private has(part: (typeof PARTS)[number]): boolean {
    return PARTS.indexOf(part) < this.parts;
  }

  /** How many rows of the table are made yet. */
  private get rows(): number {
    const made = PARTS.filter((part) => part.startsWith('rows') && this.has(part)).length;
    return this.has('hung') ? Infinity : ROWS * (1 + made);
  }

  private async reckon(basis: string): Promise<void> {
    const wanted = (): boolean => basis === this.basis && this.isConnected;
    const chart = await inPieces(chartSteps(this.app.inputs, this.threads), wanted);
    if (!chart) return;
    const data = this.plotData(chart);
    const { paddingInlineStart, paddingInlineEnd } = getComputedStyle(this);
    const width =
      this.clientWidth - Number.parseFloat(paddingInlineStart) - Number.parseFloat(paddingInlineEnd);
    // Laid out before they are shown, so that neither takes long to render.
    for (const size of [plotSize(Math.round(width)), PAPER])
      if (!(await inPieces(layoutSteps(data, size), wanted))) return;
    this.shown = { chart, data };
    // What isn't looked at first comes afterwards, a part to a frame, so that no touch waits for all of it.
    for (; this.parts < PARTS.length; this.parts += 1) {
      await this.updateComplete;
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
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
    const { wholeStopTime: time, safetyFactor: factor } = this.app.inputs.machine;
    const stop = time && factor ? t.stopWords(statedText(time), plain(factor.value)) : t.stopNone;
    return [t.driveWords, stop];
  }

  private plotData(c: Chart): PlotData {
    const { room } = this.app.job;
    const inUse = new Set(this.threads.filter((x) => x.inUse).map((x) => x.key));
    return plotDataOf(c, {
      limit: limitText,
      groove: grooveName,
      room: room && t.room(statedText(room)),
      rpm: plain,
      thread: (r) => (inUse.has(r.key) ? this.nameOf(r) : null),
      mark: mark(),
      words: this.words,
      axis: t.axis,
    });
  }

  private heading(c: Chart) {
    const { profile, clock } = this.app;
    return html`<p class="screen-only">${t.hang}. <span class="day">${clock.day}</span></p>
      <p class="paper-only whose">${whoseText(profile, clock.day)}</p>
      ${c.unknown.length ? html`<p class="unknown">${t.unknown(names(c.unknown))}</p>` : nothing}
      ${c.byRecord.length ? html`<p class="note">${t.byRecord(names(c.byRecord))}</p>` : nothing}`;
  }

  /** Which of the drive's limits is the lowest, and where another takes over. */
  private binding(c: Chart) {
    const [first] = c.ceiling;
    if (!first) return nothing;
    const name = (id: LimitReading['id']): string => limitText[id].name;
    return html`<p class="screen-only">
      ${t.binds(name(first.id))}
      ${c.crossings.map((x) => t.bindsFrom(decimal(x.before, 2, 'up'), name(x.to)))}
    </p>`;
  }

  /** Columns beside thread and lead: heading, and what stands in it. */
  private get columns(): readonly (readonly [string, (r: ChartRow) => string])[] {
    const { room } = this.app.job;
    const ranged = this.shown?.chart.own.kind === 'range';
    type Column = readonly [string, (r: ChartRow) => string];
    return [
      [`${t.drive}, ${t.driveNote}`, (r) => ceilingText(r.drive)],
      ...(ranged ? [] : [[t.own, (r: ChartRow) => ownText(r.own)] as const]),
      ...GROOVE_IDS.map((id: GrooveId): Column => [grooveName[id], (r) => roomText(r.grooves[id])]),
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

  private row(r: ChartRow, more: boolean) {
    const lead = showLead(r.lead);
    const pitch = showLead(r.pitch);
    return html`<tr class=${more ? 'more' : ''} role="row">
      <th scope="row" role="rowheader">${this.nameOf(r)}</th>
      <td role="cell" class="lead" data-label=${t.lead}>
        ${lead.mm} mm · ${lead.tpi} tpi${r.starts > 1 ? ` · ${t.pitch(r.starts, pitch.mm, pitch.tpi)}` : ''}
      </td>
      ${this.columns.map(([name, of]) => html`<td role="cell" data-label=${name}><b>${of(r)}</b></td>`)}
    </tr>`;
  }

  private table(c: Chart) {
    const inUse = new Set(this.threads.filter((x) => x.inUse).map((x) => x.key));
    const isMore = (r: ChartRow, i: number): boolean => i >= HUNG && !inUse.has(r.key);
    const more = c.rows.filter(isMore).length;
    return html`<section class="full ${this.all ? 'all' : ''}">
      <h2>${t.table}</h2>
      ${this.words.map((w) => html`<p class="paper-only">${w}</p>`)}
      <p>${t.noGrooveWords}</p>
      <table role="table">
        <thead role="rowgroup">
          <tr class="paper-row">
            <td class="whose" colspan=${2 + this.columns.length}>
              ${whoseText(this.app.profile, this.app.clock.day)}
            </td>
          </tr>
          <tr role="row">
            <th scope="col" role="columnheader">${t.thread}</th>
            <th scope="col" role="columnheader">${t.lead}</th>
            ${this.columns.map(([name]) => html`<th scope="col" role="columnheader">${name}, rpm</th>`)}
          </tr>
        </thead>
        <tbody role="rowgroup">
          ${c.rows
            .slice(0, this.rows)
            .map((r, i) => (isMore(r, i) && !this.has('more') ? nothing : this.row(r, isMore(r, i))))}
        </tbody>
      </table>
      ${
        more && !this.all
          ? html`<button class="key screen-only" @click=${() => (this.all = true)}>${t.more(more)}</button>`
          : nothing
      }
    </section>`;
  }

  private hang(c: Chart) {
    const { profile, clock } = this.app;
    const machine = profile?.name ?? '';
    return hangPage(
      c.rows.slice(0, HUNG).map((r) => [this.nameOf(r), r]),
      { machine, of: whoseText(profile, clock.day) },
    );
  }

  override render() {
    if (!this.shown)
      return html`<h1>${t.title}</h1>
        <p role="status">${t.working}</p>`;
    const { chart: c, data } = this.shown;
    return html`${this.has('hung') ? this.hang(c) : nothing}
      <section class="drawn sheet">
        <h1>${t.title}</h1>
        ${this.heading(c)}
        ${
          this.has('plot')
            ? html`<ls-chart-plot
                class="screen-only"
                .data=${data}
                .text=${`${t.plot} ${this.words.join(' ')}`}
              ></ls-chart-plot>`
            : html`<div class="plot-to-come screen-only"></div>`
        }
        ${this.binding(c)}
        <div class="paper-only" aria-hidden="true">
          ${this.has('drawn') ? guard([data], () => plotOf(data, PAPER, t.plot, 'paper')) : nothing}
        </div>
      </section>
      <div class="stack screen-only">
        <button class="key solid" ?disabled=${!this.has('more')} @click=${printPage}>${t.print}</button>
        <p class="note">${t.printHelp}</p>
      </div>
      ${this.has('table') ? this.table(c) : nothing}
      <a class="key screen-only" href="#/speed">${t.back}</a>`;
  }
}
