import { css } from 'lit';

/** The look of tests of the machine: a list of them with how each stands, and a page with cautions and steps. */
export const testSheet = css`
  a.line {
    display: grid;
    grid-template-columns: 2.6rem 1fr;
    align-content: center;
    gap: 2px 0;
    color: inherit;
    text-decoration: none;
    min-block-size: 64px;
    margin-block-start: 8px;
    padding-block-end: 8px;
    border-block-end: 1px solid var(--hair);
  }
  a.line strong {
    font-size: 1.375rem;
  }
  a.line small {
    grid-column: 2;
    font-size: var(--t-label);
  }
  .alert {
    display: grid;
    gap: 8px;
    font-size: 1.375rem;
    font-weight: 700;
  }
  ol,
  ul {
    margin: 0;
    padding-inline-start: 1.5em;
    display: grid;
    gap: 8px;
    font-size: var(--t-label);
  }
  .reading {
    justify-content: space-between;
    flex-wrap: wrap;
    gap: 0 1rem;
  }
  .reading span {
    font-weight: 400;
  }
  textarea {
    font-size: var(--t-label);
    font-weight: 400;
  }
`;
