import { css } from 'lit';

/**
 * A key with a machine's band at its edge: `.machine` and the colour's name (theme.css draws each in its own pattern too);
 * `.fold` is the key beside one.
 */
export const machineMark = css`
  .machine {
    position: relative;
    flex-direction: column;
    align-items: flex-start;
    text-align: start;
    padding-inline-start: 32px;
  }
  .machine::before {
    content: '';
    position: absolute;
    inset: 0 auto 0 0;
    inline-size: 18px;
    background: var(--mark, none) var(--paper);
    border-inline-end: 2px solid var(--ink);
  }
  .machine small {
    font-size: 1rem;
    font-weight: 400;
  }
  .teal {
    --mark: var(--band-teal);
  }
  .amber {
    --mark: var(--band-amber);
  }
  .plum {
    --mark: var(--band-plum);
  }
  .moss {
    --mark: var(--band-moss);
  }
  .brick {
    --mark: var(--band-brick);
  }
  .slate {
    --mark: var(--band-slate);
  }
`;
