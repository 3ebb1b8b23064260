import { html, nothing } from 'lit';
import '../../elements/row';
import '../../elements/standing';
import { inBase, stated, toNumber, type Ratio } from '../../core/quantity';
import type { LimitsResult, Thread } from '../../core/thread';
import * as wires from '../../core/thread/wires';
import { measureText as t, type Way } from '../../text/measure';
import { classText } from '../../text/threads';
import { limitsScale } from '../../elements/limits-scale';
import type { Found } from './measured';

/** How lengths in mm are written in the person's unit. */
export interface Lengths {
  readonly unit: 'mm' | 'in';
  readonly number: (mm: number, places?: number) => string;
  readonly length: (mm: number, places?: number) => string;
}

export const inMm = (r: Ratio, unit: 'mm' | 'in'): number => toNumber(inBase(stated(r, unit)));

/**
 * What was found, against the limits of the class. The one deciding figure is what is left to take, or the size when
 * nothing is.
 */
export const resultSection = (
  thread: Thread,
  found: Found,
  l: LimitsResult,
  classId: string | null,
  way: Exclude<Way, 'gauge'>,
  { unit, number, length }: Lengths,
) => {
  const min = l.ok && l.pitch.min ? inMm(l.pitch.min, l.unit) : null;
  const max = l.ok && l.pitch.max ? inMm(l.pitch.max, l.unit) : null;
  const expanded = found.u === null ? null : 2 * found.u;
  const verdict = wires.verdictOf(found.value, expanded, min, max);
  const known = min !== null && max !== null ? { min, max } : null;
  const excess = known ? found.value - (known.min + known.max) / 2 : 0;
  const left = excess > 0 && verdict !== 'within' ? wires.remainingInfeed(excess, null).radial : null;
  const uneven = wires.symmetricalHalf(wires.wireThreadOf(thread).half) === null;
  const spread = expanded === null ? '' : t.uncertainty(length(expanded));
  const big = (label: string, mm: number, note: string) =>
    html`<div class="hair">
      <p class="label">${label}</p>
      <p><span class="deciding">${number(mm)}</span> <span class="unit">${unit}</span></p>
      <p class="note">${note}</p>
    </div>`;
  return html`<div role="status">
      <ls-standing
        .standing=${wires.VERDICT_STANDING[verdict]}
        .word=${t.verdict(verdict, way !== 'micrometer')}
      ></ls-standing>
    </div>
    ${left === null ? big(t.found(), found.value, spread) : big(t.left, left, t.leftNote)}
    ${
      known && expanded !== null
        ? limitsScale(
            { value: found.value, expanded },
            known,
            number,
            t.scale(number(found.value), number(known.min), number(known.max)),
          )
        : nothing
    }
    <div>
      ${
        left === null
          ? nothing
          : html`<ls-row
              .label=${t.found()}
              .value=${number(found.value)}
              .unit=${unit}
              .note=${spread}
            ></ls-row>`
      }
      ${
        known && l.ok
          ? html`<ls-row
              .label=${t.limits(classText(classId ?? ''))}
              .value="${number(known.min)} – ${number(known.max)}"
              .unit=${unit}
              .note=${t.source(l.source)}
            ></ls-row>`
          : nothing
      }
    </div>
    <p class="note">${t.formula(way, uneven)}</p>
    ${l.ok ? nothing : html`<p class="note">${t.refusal(l.refusal)}</p>`}`;
};
