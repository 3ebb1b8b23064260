import { css } from 'lit';

/** Lines that lead to a page, swatches, and the sheet: at reading size on the screen, compact on paper. */
export const wiringStyles = css`
  .line {
    display: grid;
    grid-template-columns: 2.2rem 1fr;
    align-items: center;
    padding-block: 8px;
    border-block-end: 1px solid var(--hair);
    font-size: var(--t-label);
    color: inherit;
    text-decoration: none;
    overflow-wrap: anywhere;
  }
  a.line {
    min-block-size: 64px;
    margin-block-start: 8px;
  }
  a.line strong {
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
  .alert {
    display: grid;
    gap: 8px;
  }
  .alert p,
  .alert strong {
    font-size: 1.375rem;
    font-weight: 700;
  }
  .alert strong {
    color: var(--over);
  }
  .swatch {
    display: grid;
    margin-inline: -12px;
    justify-items: center;
    gap: 2px;
  }
  .swatch svg {
    inline-size: 56px;
    padding: 4px;
    background: var(--paper);
    fill: none;
  }
  .edge {
    stroke: var(--ink);
  }
  small {
    font-size: var(--t-label);
    font-weight: 400;
  }
  .drawings,
  .ticks {
    display: grid;
    gap: var(--gap, 8px);
  }
  .tick {
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 1rem;
  }
  .tick small {
    flex-basis: 100%;
    text-align: start;
  }
  .tick i {
    font-style: normal;
    font-weight: 400;
  }
  .tick small:empty {
    display: none;
  }
  @media print {
    :host {
      display: block;
      padding: 0;
      min-block-size: 0;
    }
    .screen-only {
      display: none !important;
    }
    h1 {
      font-size: 15pt;
    }
    h2 {
      font-size: 10pt;
      margin-block: 5pt 2pt;
    }
    p,
    .note,
    .alert p,
    .alert strong {
      font-size: 8pt;
    }
    .alert p {
      font-weight: 400;
    }
    .alert {
      display: block;
      padding: 3pt;
      border-width: 1pt;
    }
    .drawings {
      columns: 4;
      display: block;
    }
    section {
      break-inside: avoid;
    }
    .ticks {
      columns: 4;
      display: block;
    }
    .tick {
      display: flex;
      min-block-size: 0;
      padding: 0;
      border: 0;
      background: none;
      color: inherit;
      font-size: 7.5pt;
      flex-wrap: nowrap;
      justify-content: start;
      text-align: start;
      gap: 0 4pt;
      break-inside: avoid;
    }
    .tick::before {
      content: '';
      flex: none;
      inline-size: 6pt;
      block-size: 6pt;
      border: 1pt solid;
    }
    .tick[aria-pressed='true'] {
      background: none;
      color: inherit;
    }
    .tick[aria-pressed='true']::before {
      background: currentColor;
    }
    .tick small {
      display: none;
    }
  }
`;
