import { css, html, nothing } from 'lit';
import { standingMark, standingSheet, type StandingName } from '../../elements/standing';
import { standingWord } from '../../text/standing';

/** One line that leads to where its value is set: what it is, what it is now, and how that stands. */
export interface Line {
  readonly label: string;
  readonly href: string;
  readonly value: string;
  readonly unit?: string;
  /** Lines below, smaller. */
  readonly notes?: readonly string[];
  readonly standing?: StandingName | null;
  /** Not entered yet. */
  readonly open?: boolean;
}

export const lineSheet = [
  standingSheet,
  css`
    a.line {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      align-content: center;
      gap: 0 1rem;
      min-block-size: 64px;
      margin-block-start: 8px;
      padding-block-end: 8px;
      border-block-end: 1px solid var(--hair);
      color: inherit;
      text-decoration: none;
    }
    a.line:active {
      background: var(--hair);
    }
    a.line .label {
      text-decoration: underline;
      text-decoration-thickness: 1px;
      text-underline-offset: 0.25em;
    }
    a.line .value {
      flex: 1 0 auto;
      max-inline-size: 100%;
      text-align: end;
    }
    a.line.open .figure {
      color: var(--unknown);
      font-weight: 400;
    }
    a.line .note {
      flex-basis: 100%;
      font-size: 1rem;
      color: var(--ink-2);
    }
    a.line .mark {
      inline-size: 1.5rem;
      block-size: 1.5rem;
      vertical-align: -0.15rem;
      margin-inline-end: 0.5rem;
    }
  `,
];

export const line = ({ label, href, value, unit, notes, standing, open }: Line) =>
  html`<a class="line ${open ? 'open' : ''}" href=${href}
    ><span class="label">${label}</span
    ><span class="value"
      >${
        standing
          ? html`<span class=${standing}>${standingMark(standing)}</span
              ><span class="vh">${standingWord[standing]}: </span>`
          : nothing
      }<span class="figure">${open ? '? ' : ''}${value}</span
      >${unit ? html` <span class="unit">${unit}</span>` : nothing}</span
    >${(notes ?? []).filter(Boolean).map((n) => html`<span class="note">${n}</span>`)}</a
  >`;
