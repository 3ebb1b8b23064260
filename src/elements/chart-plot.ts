import { css, html, LitElement, svg, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { layout, type Pixel, type PlotData, type PlotSize } from './chart-layout';
import { base } from './styles';

export const plotSheet = css`
  svg.plot {
    display: block;
    inline-size: 100%;
    fill: none;
    stroke: var(--ink);
    overflow: visible;
  }
  .plot text {
    fill: var(--ink);
    stroke: var(--paper);
    stroke-width: 4px;
    stroke-linejoin: round;
    paint-order: stroke;
    font-family: var(--font);
    font-size: var(--plot-font, 18px);
  }
  .keyed {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.2em;
    font-size: var(--plot-font, 18px);
  }
  .plot .said,
  .plot .named {
    font-weight: 700;
  }
  .plot .frame {
    stroke-width: 2;
  }
  .plot .grid {
    stroke: var(--hair);
    stroke-width: 1;
  }
  .plot .rule {
    stroke: var(--machine);
    stroke-width: 1.5;
    stroke-dasharray: 2 4;
  }
  .plot .place {
    stroke: var(--ink-2);
    stroke-width: 1;
  }
  .plot .limit {
    stroke-width: 1.5;
  }
  .plot .work {
    stroke-width: 1.5;
    stroke-dasharray: 14 3 3 3;
  }
  .plot .stop {
    stroke-width: 3;
    stroke-dasharray: 9 4;
  }
  .plot .ceiling {
    stroke-width: 5;
    stroke-linejoin: round;
  }
  .plot .dot {
    fill: var(--paper);
    stroke-width: 3;
  }
  .plot .tick {
    fill: var(--ink);
    stroke: none;
  }
`;

const path = (line: readonly Pixel[]): string =>
  line.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/**
 * Drawn one after another on a screen, so that no touch waits for all of it: speeds and leads, the rest of the axes, rules
 * and threads, lines, names.
 */
const STAGES = 5;

/**
 * The wall chart as a drawing. `id` keeps apart the drawings of one page.
 * @param text what the drawing says to someone who can't see it
 * @param stages how much of it: all on paper
 */
export const plotOf = (data: PlotData, size: PlotSize, text: string, id: string, stages = STAGES) => {
  const upTo = <T>(stage: number, list: readonly T[]): readonly T[] => (stages >= stage ? list : []);
  const p = layout(data, size);
  const { font } = size;
  const { left, right, top, bottom } = p.frame;
  let down = 0;
  return html`<svg
      class="plot"
      viewBox="0 0 ${p.width.toFixed(0)} ${p.height.toFixed(0)}"
      role="img"
      aria-label=${text}
    >
      <clipPath id=${id}><rect x=${left} y=${top} width=${right - left} height=${bottom - top} /></clipPath>
      ${upTo(2, p.words).map((lines) => {
        const said = lines.map(
          (line) => svg`<text class="said" x="0" y=${(down += font * 1.25)}>${line}</text>`,
        );
        down += font * 0.3;
        return said;
      })}
      ${p.speeds.map(
        (t) => svg`<path class="grid" d="M${left} ${t.y}H${right}" />
        <text x=${left - 6} y=${Math.min(t.y + font * 0.35, bottom)} text-anchor="end">${t.text}</text>`,
      )}
      ${p.leads.map(
        (t) => svg`<path class="grid" d="M${t.x} ${top}V${bottom}" />
        <text x=${t.x} y=${bottom + font * 1.1} text-anchor="middle">${t.text}</text>`,
      )}
      ${upTo(2, p.tpi).map(
        (t) => svg`<path class="frame" d="M${t.x} ${top - 6}V${top}" />
        <text x=${t.x} y=${top - font * 0.5} text-anchor="middle">${t.text}</text>`,
      )}
      <text x="0" y=${top - font * 1.7}>${data.axis.rpm}</text>
      <text x=${(left + right) / 2} y=${top - font * 1.7} text-anchor="middle">${data.axis.tpi}</text>
      ${p.rules.length ? svg`<text x=${p.width} y=${top - font * 1.7} text-anchor="end">${data.axis.own}</text>` : ''}
      <text x=${(left + right) / 2} y=${bottom + font * 2.3} text-anchor="middle">${data.axis.lead}</text>
      ${upTo(3, p.rules).map(
        (r) => svg`<path class="rule" d="M${left} ${r.y}H${right}L${right + 6} ${r.at}" />
        <text class="named" x=${right + 8} y=${r.at + font * 0.35}>${r.name}</text>`,
      )}
      ${upTo(3, p.threads).map(
        (
          t,
        ) => svg`<path class="place" d="M${t.x} ${Math.max(top, t.y ?? top)}V${bottom + font * 2.6}L${t.slot} ${bottom + font * 3.7}" />
        <text class="named" transform="translate(${t.slot + font * 0.35} ${bottom + font * 3.9}) rotate(-90)" text-anchor="end">${t.name}</text>`,
      )}
      <g clip-path="url(#${id})">
        ${upTo(4, p.ceiling).map((line) => svg`<path class="ceiling" d=${path(line)} />`)}
        ${upTo(4, p.lines).map((l) => svg`<path class=${l.kind} d=${path(l.pixels)} />`)}
        ${upTo(4, p.lines)
          .filter((l) => l.kind === 'stop')
          .flatMap((l) => l.pixels.map(([x, y]) => svg`<circle class="tick" cx=${x} cy=${y} r="3" />`))}
        ${upTo(4, p.threads).map((t) => (t.y === null ? '' : svg`<circle class="dot" cx=${t.x} cy=${t.y} r="6" />`))}
      </g>
      <rect class="frame" x=${left} y=${top} width=${right - left} height=${bottom - top} />
      ${upTo(5, p.labels).map(
        (l) =>
          svg`<text class="name" transform="translate(${l.x.toFixed(1)} ${l.y.toFixed(1)}) rotate(${l.turn.toFixed(1)})">${l.text}</text>`,
      )}
    </svg>
    ${
      p.keyed.length
        ? html`<p class="keyed">${p.keyed.map((k) => html`<span><b>${k.sign}</b> ${k.name}</span> `)}</p>`
        : ''
    }`;
};

/** No higher than one looks at in one piece, words and names included: upright, and on a wider screen. CSS pixels. */
const MOST_HIGH = { narrow: 1080, wide: 760, from: 600 };

/** Size of the drawing at a width, CSS pixels: letters as high as labels are, growing with the text up to a third more. */
export const plotSize = (width: number): PlotSize => {
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16;
  return {
    width,
    height: width < MOST_HIGH.from ? MOST_HIGH.narrow : MOST_HIGH.wide,
    font: Math.min(22, Math.max(18, 1.125 * rem)),
  };
};

/**
 * Pitch against highest spindle speed, drawn to the width there is with letters that keep their size.
 * @element ls-chart-plot
 * @prop {PlotData} data - lines, rules, threads and words, already named
 * @prop {string} text - the whole drawing in words
 * @cssprop --ink, --ink-2, --hair, --paper, --machine - theme colours
 */
@customElement('ls-chart-plot')
export class LsChartPlot extends LitElement {
  static override styles = [
    base,
    plotSheet,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) data: PlotData | null = null;
  @property() text = '';
  @state() private width = 0;
  @state() private stages = 0;
  private readonly watch = new ResizeObserver(() => (this.width = Math.round(this.clientWidth)));

  override connectedCallback() {
    super.connectedCallback();
    this.watch.observe(this);
  }
  override disconnectedCallback() {
    this.watch.disconnect();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues) {
    super.willUpdate(changed);
    if (this.width === 0) this.width = Math.round(this.clientWidth) || Math.max(240, innerWidth - 32);
  }

  protected override render() {
    if (!this.data) return '';
    const size = plotSize(this.width);
    this.style.setProperty('--plot-font', `${size.font}px`);
    return plotOf(this.data, size, this.text, 'frame', this.stages);
  }

  protected override updated() {
    if (this.data && this.stages < STAGES)
      requestAnimationFrame(() => setTimeout(() => (this.stages = Math.min(STAGES, this.stages + 1))));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-chart-plot': LsChartPlot;
  }
}
