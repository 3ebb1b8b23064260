import { html, nothing } from 'lit';
import '../elements/row';
import { basicSizes, type LimitsResult, type Thread } from '../core/thread';
import type { Band } from '../core/thread/limits';
import { gaugeLengths, gaugeRuleOf, wireThreadOf } from '../core/thread/wires';
import { bandText, limitsText, sizeText } from '../text/limits';
import { measureText } from '../text/measure';

const bandRow = (label: string, band: Band, unit: 'mm' | 'in') => {
  const known = band.min ?? band.max;
  return html`<ls-row .label=${label} .value=${bandText(band, unit)} .unit=${known ? unit : ''}></ls-row>`;
};

/** The limits of a class. */
export const limitFigures = (l: Extract<LimitsResult, { ok: true }>) => {
  return html`<div part="figures">
      ${bandRow(limitsText.major, l.major, l.unit)} ${bandRow(limitsText.pitch(), l.pitch, l.unit)}
      ${bandRow(limitsText.minor, l.minor, l.unit)}
    </div>
    <p class="note">${limitsText.source(l.source)}</p>`;
};

/** Basic sizes, where there are no limits. */
export const basicFigures = (thread: Thread) => {
  const sizes = basicSizes(thread);
  return sizes
    ? html`<p class="label">${limitsText.basic}</p>
        <div part="figures">
          ${(['major', 'pitch', 'minor'] as const).map(
            (of) =>
              html`<ls-row
                .label=${of === 'pitch' ? limitsText.pitch() : limitsText[of]}
                .value=${sizeText(sizes[of], sizes.unit)}
                .unit=${sizes.unit}
              ></ls-row>`,
          )}
        </div>`
    : nothing;
};

/** How far the gauges run. */
export const goNoGo = (thread: Thread) => {
  const { lead } = wireThreadOf(thread);
  const rule = gaugeRuleOf(thread);
  const g = gaugeLengths(rule, lead, lead);
  return g
    ? html`<div>
        <ls-row .label=${measureText.go} .value=${measureText.goLength}></ls-row>
        <ls-row
          .label=${measureText.noGo}
          .value=${measureText.turns(g.noGoTurns)}
          .note=${measureText.gaugeNote[rule]}
        ></ls-row>
      </div>`
    : nothing;
};
