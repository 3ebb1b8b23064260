import { css } from 'lit';

/** The pass page: the setting as large as the page allows, the key to press always at hand. */
export const passSheet = css`
  :host {
    block-size: 100%;
    padding: 0;
    gap: 0;
  }
  .body {
    flex: 1 1 auto;
    min-block-size: 0;
    overflow-y: auto;
    overscroll-behavior: contain;
    display: flex;
    flex-direction: column;
    gap: 8px;
    padding: 12px var(--edge, 16px) 16px;
  }
  /*
   * A second tap meant for the pass before must not count this one. The foot itself still takes it: let through, it
   * would reach whatever lies under the foot.
   */
  .resting > * {
    pointer-events: none;
  }
  .kept-free {
    visibility: hidden;
  }
  .where {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: baseline;
    gap: 0 1rem;
  }
  .where h1 {
    font-size: 1.375rem;
  }
  .set {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    align-items: baseline;
  }
  .reads {
    font-size: var(--t-label);
  }
  .spring {
    border-block: 3px solid var(--ink);
    padding-block: 4px;
  }
  .facts {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 1rem;
    border-block-start: 1px solid var(--hair);
    padding-block-start: 6px;
  }
  .facts .rule {
    font-size: 1.375rem;
    font-weight: 700;
  }
  .taken {
    flex-direction: column;
  }
  .taken small {
    font-size: var(--t-label);
    font-weight: 400;
  }
  .question {
    font-size: var(--t-deciding);
    line-height: 1.08;
    overflow-wrap: anywhere;
  }
  .foot {
    flex: none;
    display: grid;
    gap: 8px;
    padding: 8px var(--edge, 16px);
    border-block-start: 1px solid var(--hair);
  }
  .more {
    display: grid;
    gap: 8px;
  }
  .steps {
    margin: 0;
    padding-inline-start: 2rem;
    font-size: var(--t-label);
    display: grid;
    gap: 8px;
  }
  /* Too low for a key that stays: the setting needs the height. */
  @container (height < 24em) {
    :host {
      block-size: auto;
    }
    .body {
      overflow: visible;
    }
  }
  /* A phone on its side: the keys that stay lie beside the setting. */
  @media (orientation: landscape) and (max-height: 500px) {
    :host {
      flex-direction: row;
      block-size: 100%;
      direction: var(--hand);
    }
    :host > * {
      direction: ltr;
    }
    .body {
      overflow-y: auto;
    }
    .foot {
      flex: 0 0 min(15rem, 45%);
      align-content: start;
      overflow-y: auto;
      border: 0;
    }
    .foot .big {
      min-block-size: 80px;
    }
  }
`;
