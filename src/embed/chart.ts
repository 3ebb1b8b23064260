import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import '../elements/chart-plot';
import { plotDataOf } from '../elements/chart-data';
import type { PlotData } from '../elements/chart-layout';
import { inPieces } from '../elements/in-pieces';
import { chartSteps, usualThreads, type Chart, type ChartRow } from '../core/figures/chart';
import type { MachineProfile } from '../core/machine';
import type { Thread } from '../core/thread';
import { chartText, grooveName } from '../text/chart';
import { embedText } from '../text/embed';
import { mark, plain, statedText } from '../text/numbers';
import { limitText } from '../text/why-limits';
import { sheetFor } from './asking';
import { chartTable, chartTableSheet } from './chart-table';
import { EmbedElement, listed } from './element';
import { readMachine, type EmbedMachine, type MachineRead } from './machine';
import { misreadSaid } from './misread';
import { describe, threadCalled, type EmbedThread } from './thread';

/** One thread of the chart: its highest speed by the drive alone, which is no threading speed. */
export interface EmbedChartRow {
  readonly thread: EmbedThread;
  /** Highest rpm the drive follows; null while something it depends on isn't known. */
  readonly highest: number | null;
  /** An upper bound by what is known; never an answer. */
  readonly notAbove: number | null;
}

/** The chart was reckoned anew. */
export class EmbedChartEvent extends Event {
  static readonly type = 'ls-embed-chart';
  constructor(readonly rows: readonly EmbedChartRow[]) {
    super(EmbedChartEvent.type, { bubbles: true, composed: true });
  }
}

const number = (x: bigint | null): number | null => (x === null ? null : Number(x));

/**
 * Wall chart: highest spindle speed that the drive follows over pitch, as a drawing and as a table. A limit that isn't known is
 * named and not drawn, and no speed is then given as an answer.
 * @element ls-embed-chart
 * @fires {EmbedChartEvent} ls-embed-chart - the chart was reckoned anew
 * @csspart drawing - the chart
 * @csspart table - the threads' figures
 * @csspart unknown - what isn't known
 * @cssprop --ls-embed-paper - ground
 * @cssprop --ls-embed-ink - text and lines
 * @cssprop --ls-embed-ink-2 - second text
 * @cssprop --ls-embed-hair - grid and hairlines
 * @cssprop --ls-embed-machine - the spindle's own speeds
 * @cssprop --ls-embed-unknown - what isn't known
 * @cssprop --ls-embed-font - typeface
 * @cssprop --ls-embed-label - size of the text
 */
@customElement('ls-embed-chart')
export class LsEmbedChart extends EmbedElement {
  static override styles = [
    ...EmbedElement.styles,
    chartTableSheet,
    css`
      .to-come {
        min-block-size: 60rem;
      }
    `,
  ];

  /**
   * The machine: any of its fields by name, numbers in writing with their unit; or a machine's body from a file of the app.
   * The properties below go before it.
   */
  @property({ type: Object }) machine: EmbedMachine | null = null;
  /** Pitch of the leadscrew: "3 mm", "8 tpi". */
  @property({ attribute: 'screw-pitch' }) screwPitch = '';
  /** Starts of the leadscrew. */
  @property({ attribute: 'screw-starts' }) screwStarts = '';
  /** Lines of the encoder. */
  @property({ attribute: 'encoder-lines' }) encoderLines = '';
  /** Edges counted for each line: 4, 2 or 1. */
  @property({ attribute: 'edges-per-line' }) edgesPerLine = '';
  /** Teeth of the pulley on the spindle; 1 and 1 for an encoder on the spindle itself. */
  @property({ attribute: 'spindle-pulley' }) spindlePulley = '';
  /** Teeth of the pulley on the encoder. */
  @property({ attribute: 'encoder-pulley' }) encoderPulley = '';
  /** Full steps of the motor in a turn. */
  @property({ attribute: 'full-steps' }) fullSteps = '';
  /** Microsteps to a full step. */
  @property() microsteps = '';
  /** Teeth of the pulley on the motor. */
  @property({ attribute: 'motor-pulley' }) motorPulley = '';
  /** Teeth of the pulley on the leadscrew. */
  @property({ attribute: 'screw-pulley' }) screwPulley = '';
  /** Motor turns for one of the pulley behind its gearbox; 1 without one. */
  @property({ attribute: 'gearbox-ratio' }) gearboxRatio = '';
  /** Highest step rate of the controller: "100 kHz". */
  @property({ attribute: 'controller-max-steps' }) controllerMaxSteps = '';
  /** Highest step rate the driver's input takes: "200 kHz". */
  @property({ attribute: 'step-input-max' }) stepInputMax = '';
  /** Highest speed of the motor, rpm. */
  @property({ attribute: 'motor-max-rpm' }) motorMaxRpm = '';
  /** Highest rate of edges the counter takes: "250 kHz". */
  @property({ attribute: 'counter-max-edges' }) counterMaxEdges = '';
  /** Highest speed of the carriage: "25 mm/s". */
  @property({ attribute: 'carriage-max' }) carriageMax = '';
  /** The spindle's own speeds, rpm: "80 160 270". */
  @property({ attribute: 'spindle-speeds' }) spindleSpeeds = '';
  /** Time from pressing stop until all is at rest: "0.5 s"; only then is it shown what a groove leaves. */
  @property({ attribute: 'whole-stop-time' }) wholeStopTime = '';
  /** Threads in the table and on the drawing, by their ids; the usual ones where it is empty. */
  @property({ converter: listed }) threads: readonly string[] = [];
  /** Which usual threads come first. */
  @property() units: 'mm' | 'in' = 'mm';
  /** How many of the usual threads. */
  @property({ type: Number }) most = 12;
  @state() private shown: { readonly chart: Chart; readonly data: PlotData } | null = null;
  private listed: readonly Thread[] = [];
  private lost: readonly string[] = [];
  private read: MachineRead | null = null;
  private turn = 0;

  /** What the page says of the machine, its own properties first. */
  private get said(): EmbedMachine {
    const { screwPitch, screwStarts, encoderLines, edgesPerLine, spindlePulley, encoderPulley } = this;
    const { fullSteps, microsteps, motorPulley, screwPulley, gearboxRatio } = this;
    const { controllerMaxSteps, stepInputMax } = this;
    const { motorMaxRpm, counterMaxEdges, carriageMax, spindleSpeeds, wholeStopTime } = this;
    const own = {
      ...{ screwPitch, screwStarts, encoderLines, edgesPerLine, spindlePulley, encoderPulley },
      ...{ fullSteps, microsteps, motorPulley, screwPulley, gearboxRatio, controllerMaxSteps, stepInputMax },
      ...{ motorMaxRpm, counterMaxEdges, carriageMax, spindleSpeeds, wholeStopTime },
    };
    return { ...this.machine, ...Object.fromEntries(Object.entries(own).filter(([, v]) => v !== '')) };
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (changed.size === 1 && changed.has('shown')) return;
    this.read = readMachine(this.said, embedText.machine);
    const ids = this.threads.length ? this.threads : usualThreads(this.units).slice(0, this.most);
    const found = ids.map((id) => [id, threadCalled(id)] as const);
    this.listed = found.flatMap(([, thread]) => thread ?? []);
    this.lost = found.flatMap(([id, thread]) => (thread ? [] : [id]));
    void this.reckon(this.read.profile);
  }

  private async reckon(machine: MachineProfile): Promise<void> {
    const turn = (this.turn += 1);
    const { inputs } = sheetFor({
      ...{ phase: 'before', machine, thread: '', rpm: '', side: 'external', records: [] },
      ...{ now: 0, day: '', begun: 0 },
    });
    const threads = this.listed.map(({ id, starts }) => ({
      key: id,
      thread: { kind: 'catalogue', id } as const,
      starts,
    }));
    const chart = await inPieces(chartSteps(inputs, threads), () => turn === this.turn);
    if (!chart || turn !== this.turn) return;
    const data = plotDataOf(chart, {
      limit: limitText,
      groove: grooveName,
      room: null,
      rpm: plain,
      thread: (r) => (this.threads.length ? this.nameOf(r) : null),
      mark: mark(),
      words: this.words(machine),
      axis: chartText.axis,
    });
    this.shown = { chart, data };
    await this.updateComplete;
    this.dispatchEvent(new EmbedChartEvent(chart.rows.flatMap((r) => this.told(r))));
  }

  private words({ wholeStopTime: time, safetyFactor: factor }: MachineProfile): readonly string[] {
    const stop =
      time && factor ? chartText.stopWords(statedText(time), plain(factor.value)) : chartText.stopNone;
    return [chartText.driveWords, stop];
  }

  private threadOf(row: ChartRow): Thread | undefined {
    return this.listed.find(({ id }) => id === row.key);
  }
  private nameOf(row: ChartRow): string {
    return this.threadOf(row)?.designation ?? row.key;
  }
  private told(row: ChartRow): EmbedChartRow[] {
    const thread = this.threadOf(row);
    const { highest, atMost } = row.drive;
    return thread ? [{ thread: describe(thread), highest: number(highest), notAbove: number(atMost) }] : [];
  }

  private missing(c: Chart | null) {
    const names = c?.unknown.map((l) => limitText[l.id].name).join(', ');
    return html`${misreadSaid(this.read)}
    ${this.lost.map((id) => html`<p class="over">${embedText.unknownThread(id)}</p>`)}
    ${names ? html`<p class="unknown" part="unknown">${chartText.unknown(names)}</p>` : nothing}`;
  }

  protected override render() {
    const { shown } = this;
    return html`<div class="stack">
      ${this.missing(shown?.chart ?? null)}
      ${
        shown
          ? html`<ls-chart-plot
                part="drawing"
                .data=${shown.data}
                .text=${`${chartText.plot} ${shown.data.words.join(' ')}`}
              ></ls-chart-plot>
              ${chartTable(shown.chart.rows, (r) => this.nameOf(r))}`
          : html`<p class="to-come" role="status">${chartText.working}</p>`
      }
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-embed-chart': LsEmbedChart;
  }
  interface HTMLElementEventMap {
    'ls-embed-chart': EmbedChartEvent;
  }
}
