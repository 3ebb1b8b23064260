import { html, nothing } from 'lit';
import { limitsScale } from '../../elements/limits-scale';
import '../../elements/row';
import '../../elements/standing';
import type { FinishFound, Left, Lies } from '../../core/cut/finish';
import { asRead } from '../../core/cut/dial';
import { divisionsLength } from '../../core/cut/handwheels';
import type { Standing } from '../../core/figures';
import { symmetricalHalf, wireThreadOf } from '../../core/thread/wires';
import { finishText as t, mmText, type FinishWay } from '../../text/finish';
import { measureText } from '../../text/measure';
import { statedText, withUnit } from '../../text/numbers';
import { classText } from '../../text/threads';
import type { Piece, SlideLeft } from './finishing';

const STANDING: Readonly<Record<Lies, Standing>> = {
  within: 'within',
  'to-take': 'near',
  beyond: 'over',
  unsure: 'unknown',
  unknown: 'unknown',
};

export interface Result {
  readonly piece: Piece;
  readonly way: Exclude<FinishWay, 'gauge'>;
  readonly found: Extract<FinishFound, { ok: true }>;
  readonly left: Left;
  readonly slides: readonly SlideLeft[];
  /** The slide that goes deeper. */
  readonly feeds: 'cross' | 'top';
  readonly unit: 'mm' | 'in';
}

const big = (label: string, figure: string, unit: string, note: string) =>
  html`<div class="hair">
    <p class="label">${label}</p>
    <p><span class="deciding">${figure}</span> <span class="unit">${unit}</span></p>
    ${note ? html`<p class="note">${note}</p>` : nothing}
  </div>`;

/** The one figure that decides: what is left on the handwheel that feeds, or the size where nothing is. */
const deciding = ({ found, left, slides: [first], feeds, unit }: Result) => {
  const length = (mm: number): string => withUnit(mmText(mm, unit), unit);
  if (!(left.radial > 0)) {
    const spread = left.expanded === null ? '' : measureText.uncertainty(length(left.expanded));
    return big(measureText.found(), mmText(found.value, unit), unit, spread);
  }
  if (first?.slide !== feeds) return big(t.stillRadial, mmText(left.radial, unit), unit, '');
  const { wheel, slide, divisions } = first;
  const name = t.slides()[slide];
  const counted = asRead(wheel, (left.radial / wheel.radial) * wheel.travel);
  const inch = wheel.division.unit === 'in';
  const exact = withUnit(mmText(inch ? counted * 25.4 : counted, inch ? 'in' : 'mm'), inch ? 'in' : 'mm');
  const [count = '', ...word] = t.divisions(divisions).split(' ');
  return big(
    t.still(name),
    count,
    `${word.join(' ')} = ${statedText(divisionsLength(wheel, divisions))}`,
    t.ofDivision(exact, statedText(wheel.division)),
  );
};

const rows = ({ piece, found, left, slides, feeds, unit }: Result) => {
  const { target, classId } = piece;
  const length = (mm: number): string => mmText(mm, unit);
  const spread = left.expanded === null ? '' : measureText.uncertainty(withUnit(length(left.expanded), unit));
  return html`<div>
    ${
      left.radial > 0
        ? html`<ls-row
              .label=${measureText.found()}
              .value=${length(found.value)}
              .unit=${unit}
              .note=${spread}
            ></ls-row>
            <ls-row .label=${t.radial} .value=${length(left.radial)} .unit=${unit}></ls-row>
            ${slides
              .filter(({ slide }) => slide !== feeds)
              .map(
                ({ slide, wheel, divisions }) =>
                  html`<ls-row
                    .label=${t.instead(t.slides()[slide])}
                    .value=${t.inDivisions(divisions, statedText(divisionsLength(wheel, divisions)))}
                  ></ls-row>`,
              )} `
        : nothing
    }
    ${
      target?.min != null && target.max !== null
        ? html`<ls-row
            .label=${measureText.limits(classText(classId ?? ''))}
            .value="${length(target.min)} – ${length(target.max)}"
            .unit=${unit}
            .note=${target.source ? measureText.source(target.source) : ''}
          ></ls-row>`
        : nothing
    }
    ${
      target
        ? html`<ls-row
            .label=${t.aim}
            .value=${length(target.aim)}
            .unit=${unit}
            .note=${t.aimBy[target.by]}
          ></ls-row>`
        : nothing
    }
  </div>`;
};

/** What a reading says: where the thread lies, what is left to take in the dial's own terms. @param keys what can be done */
export const resultSection = (r: Result, keys: unknown) => {
  const { piece, way, found, left, unit } = r;
  const { target, thread, job } = piece;
  const known = target?.min != null && target.max !== null ? { min: target.min, max: target.max } : null;
  const write = (mm: number): string => mmText(mm, unit);
  const uneven = thread !== null && symmetricalHalf(wireThreadOf(thread).half) === null;
  const formula = way === 'wires' ? 'three' : 'micrometer';
  const gone = left.excess <= 0 && left.lies !== 'within' && left.lies !== 'beyond';
  return html`<div role="status">
      <ls-standing
        .standing=${STANDING[left.lies]}
        .word=${t.lies(left.lies, job.side, way === 'wires')}
      ></ls-standing>
    </div>
    ${left.lies === 'beyond' ? html`<p><strong>${t.lost}</strong></p>` : nothing}
    ${gone ? html`<p><strong>${t.gone}</strong></p>` : nothing} ${deciding(r)}
    ${
      known && left.expanded !== null
        ? limitsScale(
            { value: found.value, expanded: left.expanded },
            known,
            write,
            measureText.scale(write(found.value), write(known.min), write(known.max)),
          )
        : nothing
    }
    ${keys} ${rows(r)}
    <p class="note">${measureText.formula(formula, uneven)} ${left.radial > 0 ? t.reckoned : ''}</p>
    ${target?.refusal ? html`<p class="note">${measureText.refusal(target.refusal)}</p>` : nothing}`;
};
