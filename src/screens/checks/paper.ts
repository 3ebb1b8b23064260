import { css, html } from 'lit';
import type { CheckState, PhaseState } from '../../core/checks';
import { checksText, checkText, inUnit, lapseText, stateText, tierName } from '../../text/checks';
import { firstRunText } from '../../text/first-run';
import { whoseText } from '../../text/machine';
import { statedText } from '../../text/numbers';
import { isoTime } from '../../text/records';
import type { App } from '../../state';

/** The list on paper: its head stands on each page. */
export const paperSheet = css`
  .paper {
    display: none;
  }
  @media print {
    :host {
      display: block;
      padding: 0;
      min-block-size: 0;
    }
    .paper ~ * {
      display: none !important;
    }
    .paper {
      display: table;
      inline-size: 100%;
      border-collapse: collapse;
      font-size: 8pt;
      line-height: 1.2;
    }
    .paper th {
      text-align: start;
      padding-block: 4pt 2pt;
      break-after: avoid;
    }
    .paper thead th {
      font-size: 10pt;
      border-block-end: 1pt solid #000;
    }
    .paper td {
      padding: 1.5pt 6pt 1.5pt 0;
      border-block-end: 0.5pt solid #999;
      vertical-align: top;
    }
    .paper tr {
      break-inside: avoid;
    }
    .paper .box {
      inline-size: 11pt;
    }
    .paper i {
      display: block;
      inline-size: 10pt;
      block-size: 10pt;
      border: 1pt solid #000;
      font: 700 10pt / 9pt var(--font);
      text-align: center;
    }
    .paper .kept {
      inline-size: 20%;
    }
  }
`;

/** What was recorded of it and when, with its figure; why that lapsed; nothing where it is still to be written. */
const kept = (s: CheckState): string => {
  const { record, lapse, item, state } = s;
  if (!record) return item.kind === 'computed' || state === 'unknown' ? stateText(s) : '';
  if (lapse) return lapseText(lapse);
  const [unit] = item.reading?.units ?? [];
  return [stateText(s), isoTime(record.at), unit && inUnit(record.reading, unit)].filter(Boolean).join(' · ');
};

const MARK: Readonly<Partial<Record<CheckState['state'], string>>> = {
  done: '✓',
  'not-ok': '✕',
  failed: '✕',
};

/** All checks of the job on paper: a box for each, what is asked, and what was recorded. */
export const paper = (app: App, p: PhaseState) => {
  const chosen = app.sheet.get('chosen').value;
  const thread = chosen && (chosen.thread?.designation ?? statedText(chosen.pitch));
  return html`<table class="paper">
    <thead>
      <tr>
        <th colspan="3">
          ${checksText.allChecks} · ${thread} · ${whoseText(app.profile, app.clock.day)}
          ${app.machine?.value.example ? html`<br />${firstRunText.practice}` : ''}
        </th>
      </tr>
    </thead>
    <tbody>
      ${p.items.map((s, i) => {
        const { question, look } = checkText(s.item.id);
        const { tier } = s.item;
        return html`${
            p.items[i - 1]?.item.tier === tier
              ? ''
              : html`<tr>
                  <th colspan="3">${tierName[tier]}</th>
                </tr>`
          }
          <tr>
            <td class="box"><i>${MARK[s.state]}</i></td>
            <td><strong>${question}</strong> ${look}</td>
            <td class="kept">${kept(s)}</td>
          </tr>`;
      })}
      <tr>
        <td colspan="3">${checksText.caution}</td>
      </tr>
    </tbody>
  </table>`;
};
