import { css, html, LitElement, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { layout, type BodeData } from './bode-layout';
import { plotSheet, plotSize } from './chart-plot';
import { base } from './styles';

/**
 * Gain against frequency: heavy as it is, thin as the ideal would be, with what lies where named above it.
 * @element ls-bode-plot
 * @prop {BodeData|null} data - nothing is drawn without it
 * @prop {string} text - the drawing in words
 * @prop {string} axis - what both axes show
 * @prop {{real: string, ideal: string, marks: string}} names - of the kinds of lines
 * @cssprop --ink, --ink-2, --hair, --paper, --machine
 */
@customElement('ls-bode-plot')
export class LsBodePlot extends LitElement {
  static override styles = [
    base,
    plotSheet,
    css`
      :host {
        display: block;
      }
      .plot .between {
        stroke: var(--hair);
        stroke-width: 0.5;
      }
      .keyed span {
        display: inline-flex;
        align-items: center;
        gap: 0.5em;
      }
      .keyed svg {
        flex: none;
        inline-size: 2.5em;
      }
    `,
  ];
  @property({ attribute: false }) data: BodeData | null = null;
  @property() text = '';
  @property() axis = '';
  @property({ attribute: false }) names = { real: '', ideal: '', marks: '' };
  @state() private width = 0;
  private readonly watch = new ResizeObserver(() => (this.width = Math.round(this.clientWidth)));

  override connectedCallback(): void {
    super.connectedCallback();
    this.watch.observe(this);
  }
  override disconnectedCallback(): void {
    this.watch.disconnect();
    super.disconnectedCallback();
  }

  private key(kind: string, name: string) {
    return name
      ? html`<span
          ><svg class="plot" viewBox="0 0 40 10" aria-hidden="true">
            ${svg`<path class=${kind} d="M0 5H40" />`}</svg
          >${name}</span
        >`
      : '';
  }

  protected override render() {
    if (!this.data || this.width === 0) return '';
    const { width } = this;
    const { font } = plotSize(width);
    this.style.setProperty('--plot-font', `${font}px`);
    const p = layout(this.data, width, font);
    const { left, right, top, bottom } = p.frame;
    return html`<svg
        class="plot"
        viewBox="0 0 ${width} ${p.height.toFixed(0)}"
        role="img"
        aria-label=${this.text}
      >
        <clipPath id="frame">
          <rect x=${left} y=${top} width=${right - left} height=${bottom - top} />
        </clipPath>
        ${p.between.map((x) => svg`<path class="between" d="M${x} ${top}V${bottom}" />`)}
        ${p.decades.map(
          (d) => svg`<path class="grid" d="M${d.x} ${top}V${bottom}" />
          <text x=${d.x} y=${bottom + font * 1.15} text-anchor="middle">${d.text}</text>`,
        )}
        ${p.gains.map(
          (g) => svg`<path class="grid" d="M${left} ${g.y}H${right}" />
          <text x=${left - 6} y=${g.y + font * 0.35} text-anchor="end">${g.text}</text>`,
        )}
        <path class="place" d="M${left} ${p.zero}H${right}" />
        <g clip-path="url(#frame)">
          ${p.marks.map((x) => svg`<path class="rule" d="M${x} ${top}V${bottom}" />`)}
          ${svg`<path class="limit" d=${p.ideal} /><path class="ceiling" d=${p.real} />`}
        </g>
        ${p.named.map(
          (n) => svg`<path class="place" d="M${n.at} ${n.y + 4}V${bottom}" />
          <text class="named" x=${n.x} y=${n.y}>${n.text}</text>`,
        )}
        <rect class="frame" x=${left} y=${top} width=${right - left} height=${bottom - top} />
      </svg>
      <p class="keyed">${this.axis}</p>
      <p class="keyed">
        ${this.key('ceiling', p.real ? this.names.real : '')} ${this.key('limit', this.names.ideal)}
        ${this.key('rule', p.marks.length ? this.names.marks : '')}
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ls-bode-plot': LsBodePlot;
  }
}
