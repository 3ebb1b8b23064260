import { css } from 'lit';

/** The sheet on the screen, one under the other at reading size; on paper compact, on one page of A4 or Letter. */
export const sheetStyles = css`
  dl {
    margin: 0;
  }
  .item {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 2px 12px;
    padding-block: 8px;
    border-block-end: 1px solid var(--hair);
  }
  dt {
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  dd {
    margin: 0;
    overflow-wrap: anywhere;
  }
  dd.check {
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  @media print {
    :host {
      display: block;
      padding: 0;
      min-block-size: 0;
      font-size: 9.5pt;
    }
    .screen-only {
      display: none !important;
    }
    h1 {
      font-size: 16pt;
    }
    h2 {
      font-size: 11.5pt;
      margin-block: 6pt 2pt;
    }
    p,
    dt,
    dd.check {
      font-size: 9pt;
    }
    .item {
      grid-template-columns: 30% 28% 1fr;
      padding-block: 2pt;
      break-inside: avoid;
    }
    dd.figure {
      font-size: 11pt;
    }
  }
`;
