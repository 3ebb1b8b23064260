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
  @media screen {
    thead {
      position: absolute;
      inline-size: 1px;
      block-size: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    table,
    tbody,
    tr,
    td,
    tbody th {
      display: block;
    }
    tbody tr {
      border-block-end: 1px solid var(--hair);
      padding-block: 8px;
    }
    tbody th {
      text-align: start;
      font-size: 1.375rem;
    }
    td {
      display: flex;
      flex-wrap: wrap;
      justify-content: space-between;
      gap: 0 12px;
    }
    td::before {
      content: attr(data-label);
      color: var(--ink-2);
    }
    td b {
      font-size: var(--t-figure);
      line-height: 1.1;
    }
  }
  @media print {
    @page {
      margin: 10mm;
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
      grid-template-columns: 1fr 46mm 40mm;
      gap: 3mm;
      align-items: center;
      border-block-end: 0.3mm solid #000;
    }
    .hang .heads {
      font-size: 4mm;
      line-height: 4.6mm;
      align-items: end;
      text-align: end;
    }
    /* The face's digits are 0.73 of its size high: 16.7 mm give 12.2. */
    .hang li {
      font-size: 16.7mm;
      line-height: 13.2mm;
      block-size: 13.4mm;
      overflow: hidden;
      font-weight: 700;
      white-space: nowrap;
    }
    .hang .heads span:first-child {
      text-align: start;
    }
    .hang li span + span {
      text-align: end;
    }
    .hang li .long {
      font-size: 9mm;
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
    .full tr {
      break-inside: avoid;
    }
  }
`;
