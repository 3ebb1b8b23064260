import { css } from 'lit';

/** On the screen each thread's figures stand under its name; on paper there is a page to hang up and a table. */
export const chartStyles = css`
  .paper-only {
    display: none;
  }
  table {
    border-collapse: collapse;
    inline-size: 100%;
    font-size: var(--t-label);
  }
  thead th {
    text-align: start;
  }
  .day {
    white-space: nowrap;
  }
  .full {
    display: flex;
    flex-direction: column;
    gap: 12px;
  }
  @media screen {
    .full:not(.all) .more {
      display: none;
    }
    td b {
      font-size: var(--t-figure);
      line-height: 1.1;
    }
    tbody tr {
      border-block-end: 1px solid var(--hair);
      padding-block: 8px;
    }
    tbody th {
      text-align: start;
      font-size: 1.375rem;
    }
  }
  /* As many figures beside each other as have room, each under what it is. */
  @media screen and (max-width: 52rem) {
    thead {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    table,
    tbody {
      display: block;
    }
    tbody tr {
      display: grid;
      grid-template-columns: repeat(auto-fill, minmax(6.75rem, 1fr));
      gap: 4px 12px;
    }
    tbody th,
    td.lead {
      grid-column: 1 / -1;
    }
    td.lead + td {
      grid-column: span 2;
    }
    td {
      display: flex;
      flex-direction: column;
      justify-content: space-between;
    }
    td:not(.lead)::before {
      content: attr(data-label);
      color: var(--ink-2);
    }
  }
  @media screen and (min-width: 52.01rem) {
    .full th,
    .full td {
      padding: 8px 6px;
      text-align: end;
      vertical-align: bottom;
      border-block-end: 1px solid var(--hair);
    }
    .full th:first-child {
      text-align: start;
    }
  }
  .paper-row {
    display: none;
  }
  @media print {
    .paper-row {
      display: table-row;
    }
    :host {
      display: block;
      padding: 0;
      min-block-size: 0;
    }
    .screen-only {
      display: none !important;
    }
    .paper-only {
      display: block;
    }
    .sheet {
      break-after: page;
    }
    /* Each page stands by itself, and has no room for the frame's line. */
    .whose {
      padding-inline-start: 8mm;
      background: var(--band) 0 0 / 5mm 100% no-repeat;
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
    .hang h2 {
      font-size: 7mm;
      line-height: 8mm;
    }
    .hang p {
      font-size: 4mm;
      line-height: 5mm;
    }
    .hang ol {
      list-style: none;
      margin: 0;
      padding: 0;
    }
    .hang li,
    .hang .heads {
      display: grid;
      grid-template-columns: 92mm 1fr 42mm;
      gap: 2mm;
      align-items: center;
      border-block-end: 0.3mm solid #000;
    }
    .hang .heads {
      font-size: 5mm;
      font-weight: 700;
      line-height: 5.6mm;
      align-items: end;
      text-align: end;
    }
    /* The face's digits are 0.73 of its size high: 16.7 mm give 12.2. Sixteen rows fit a page of Letter. */
    .hang li {
      font-size: 16.7mm;
      /* Digits stand in the middle of their line. */
      padding-block-start: 1mm;
      line-height: 13.2mm;
      block-size: 14.2mm;
      overflow: hidden;
      font-weight: 700;
      white-space: nowrap;
    }
    .hang svg.name {
      inline-size: 92mm;
      block-size: 13mm;
    }
    .hang svg text {
      font-size: 16.7px;
      fill: #000;
    }
    .hang .heads span:first-child {
      text-align: start;
    }
    .hang .rpm {
      text-align: end;
    }
    .drawn {
      --plot-font: 15px;
    }
    .full h2,
    .drawn h1 {
      font-size: 5mm;
    }
    .drawn p,
    .full p {
      font-size: 3.6mm;
    }
    .hang p:last-child {
      font-size: 3.4mm;
    }
    .full th:first-child,
    .full td:nth-child(2) {
      white-space: nowrap;
    }
    .full table {
      font-size: 3.4mm;
    }
    .full th,
    .full td {
      border-block-end: 0.2mm solid #888;
      padding: 1mm 1.5mm;
      text-align: end;
      vertical-align: bottom;
    }
    .full th:first-child {
      text-align: start;
    }
    .full td.whose {
      padding-inline-start: 8mm;
      text-align: start;
    }
    .full tr {
      break-inside: avoid;
    }
  }
  /* As high as the drawing that comes into it, so that nothing moves. */
  .plot-to-come {
    block-size: 1080px;
  }
  @media (min-width: 632px) {
    .plot-to-come {
      block-size: 760px;
    }
  }
`;
