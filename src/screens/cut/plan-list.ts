import { css, html, nothing } from 'lit';
import type { CutPlan } from '../../core/cut/plan';
import type { DialSetting, PlannedPass } from '../../core/cut/pass';
import { decimalText, div, isExactDecimal } from '../../core/quantity';
import { mark } from '../../text/numbers';
import { areaText, lengthIn, planText as t, turnsOf } from '../../text/plan';

export const listSheet = css`
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .pass {
    display: grid;
    grid-template-columns: 2.2rem 1fr;
    gap: 0 0.75rem;
    align-items: baseline;
    padding-block: 10px;
    border-block-end: 1px solid var(--hair);
  }
  .pass .n {
    font-size: var(--t-label);
    color: var(--ink-2);
    text-align: end;
  }
  .pass .set {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 1rem;
  }
  .pass .also {
    grid-column: 2;
  }
`;

/** As many places as one division of the dial has, so that the column stands. */
const placesOf = (plan: CutPlan): number => {
  const one = plan.passes.flatMap((p) => [p.cross, p.top]).find((d) => d && d.divisions > 0);
  return [1, 2, 3, 4].find((n) => one && isExactDecimal(div(one.reading.value, one.divisions), n)) ?? 4;
};

const readingText = ({ reading }: DialSetting, places: number): string =>
  `${decimalText(reading.value, { places, keepZeros: true, mark: mark() })}\u00a0${reading.unit}`;

const set = (d: DialSetting, name: string, places: number) =>
  html`<span class="set"
    ><span><span class="vh">${name}: </span><span class="figure">${turnsOf(d)}</span></span
    ><span class="unit">${readingText(d, places)}</span></span
  >`;

const row = (p: PlannedPass, plan: CutPlan, unit: 'mm' | 'in') => {
  const [main, other] = plan.slide === 'cross' ? [p.cross, p.top] : [p.top, p.cross];
  const otherName = plan.slide === 'cross' ? t.slide.top() : t.slide.cross();
  const places = placesOf(plan);
  const left = plan.reached - p.depth;
  return html`<li class="pass">
    <span class="n">${p.n}</span>
    ${main ? set(main, t.slide[plan.slide](), places) : nothing}
    ${
      other
        ? html`<span class="also"
            >${otherName} <strong>${turnsOf(other)}</strong>, ${readingText(other, places)}</span
          >`
        : nothing
    }
    <span class="also note"
      >${
        p.kind === 'spring'
          ? `${t.spring}: ${t.same.toLowerCase()}`
          : `${left > 1e-6 ? t.left(lengthIn(left, unit)) : t.full} · ${t.chip(areaText(p.chip))}`
      }</span
    >
  </li>`;
};

/** Every pass with its setting in turns and divisions, what the dial reads, what is left and the chip. */
export const passList = (plan: CutPlan, unit: 'mm' | 'in') =>
  html`<ol>
    ${plan.passes.map((p) => row(p, plan, unit))}
  </ol>`;
