import { css, html } from 'lit';
import type { Ceiling } from '../core/figures';
import type { ChartRow } from '../core/figures/chart';
import { chartText } from '../text/chart';
import { embedText } from '../text/embed';
import { showLead, whole } from '../text/numbers';

const t = embedText.chart;

export const chartTableSheet = css`
  table {
    inline-size: 100%;
    border-collapse: collapse;
  }
  th,
  td {
    padding: 8px 4px;
    border-block-end: 1px solid var(--hair);
    text-align: start;
    vertical-align: baseline;
  }
  th:last-child,
  td:last-child {
    text-align: end;
  }
  @container (width >= 30rem) {
    td span {
      white-space: nowrap;
    }
  }
  td b {
    font-size: var(--t-figure);
  }
`;

const ceilingText = ({ highest, atMost }: Ceiling) => {
  if (highest !== null) return html`<b>${whole(highest)}</b>`;
  return atMost === null ? chartText.notKnown : t.notAbove(whole(atMost));
};

/** The threads' figures: what the drive alone follows. */
export const chartTable = (rows: readonly ChartRow[], nameOf: (row: ChartRow) => string) => {
  const lead = (r: ChartRow) => {
    const { mm, tpi } = showLead(r.lead);
    return html`<span>${mm} mm ·</span> <span>${tpi} tpi</span>`;
  };
  return html`<table part="table">
      <thead>
        <tr>
          <th scope="col">${t.columns.thread}</th>
          <th scope="col">${t.columns.lead}</th>
          <th scope="col">${t.columns.drive}</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (r) =>
            html`<tr>
              <th scope="row">${nameOf(r)}</th>
              <td>${lead(r)}</td>
              <td>${ceilingText(r.drive)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="note">${t.exact}</p>`;
};
