import { css } from 'lit';

export const checksSheet = css`
  .question {
    font-size: var(--t-deciding);
    font-weight: 700;
    line-height: 1.08;
  }
  .answers {
    display: grid;
    gap: 24px;
  }
  .done {
    min-block-size: 96px;
    font-size: var(--t-figure);
  }
  /* A second tap meant for the question before must not answer this one. */
  .resting {
    pointer-events: none;
  }
  summary {
    display: flex;
    align-items: center;
    min-block-size: 64px;
    text-decoration: underline;
    cursor: pointer;
  }
  .caution {
    padding-block-end: 12px;
    border-block-end: 1px solid var(--hair);
  }
  ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    padding-block: 8px;
    border-block-end: 1px solid var(--hair);
  }
`;
