import { css } from 'lit';

/**
 * The pad's geometry. A key is 96 px high at least and up to 132, three side by side; in landscape six, 64 at least.
 * At 360 × 560 everything is there at once: 4 + 64 value + 8 + 64 results + 8 + 4 × 96 + 3 × 8 = 556.
 */
export const padSheet = css`
  :host {
    display: block;
    container: pad / size;
    block-size: 100%;
    min-block-size: 300px;
    overflow-y: auto;
    overscroll-behavior: contain;
  }
  .all {
    display: grid;
    grid-template: 'top' auto 'results' auto 'keys' 1fr / minmax(0, 1fr);
    gap: 8px;
    min-block-size: 100%;
    max-inline-size: 40rem;
    margin-inline: auto;
    padding: 4px 8px 0;
    box-sizing: border-box;
  }
  .top {
    grid-area: top;
    display: grid;
    grid-template:
      'say side' minmax(0, auto)
      'value side' 1fr / minmax(0, 1fr) auto;
    min-block-size: 64px;
    column-gap: 8px;
    align-items: end;
  }
  .frame {
    grid-area: 1 / 1 / 3 / 2;
    align-self: stretch;
    border-block-end: 3px solid var(--ink);
    border-inline-start: 8px solid var(--machine);
  }
  .ask,
  .said,
  .error {
    grid-area: say;
    padding-inline-start: 16px;
    font-size: var(--t-label);
    line-height: 1.2;
  }
  .ask {
    color: var(--ink-2);
  }
  .error {
    color: var(--over);
    font-weight: 700;
  }
  .value {
    grid-area: value;
    min-block-size: 40px;
    padding: 0 0 4px 16px;
    font-weight: 700;
    font-size: max(28px, min(var(--t-figure), 48px));
    line-height: 36px;
    overflow-wrap: anywhere;
    white-space: pre-wrap;
  }
  .caret {
    display: inline-block;
    inline-size: 3px;
    block-size: 1.05em;
    margin-inline-start: 3px;
    background: var(--machine);
    vertical-align: -0.2em;
  }
  .wrong .frame {
    border-block-end: 5px dashed var(--over);
  }
  .side {
    grid-area: side;
    align-self: stretch;
    display: flex;
    gap: 8px;
  }
  .side .key {
    flex-grow: 1;
    min-inline-size: 64px;
    padding-inline: 4px;
  }
  .unit-key.only {
    border-color: transparent;
    cursor: default;
  }
  .icon {
    inline-size: 30px;
    block-size: 30px;
  }
  .results {
    grid-area: results;
    align-self: end;
    display: grid;
    grid-auto-flow: column;
    grid-auto-columns: minmax(0, 1fr);
    gap: 8px;
    min-block-size: 64px;
  }
  .pad {
    grid-area: keys;
    align-self: end;
    block-size: 100%;
    max-block-size: calc(4 * 132px + 3 * 8px);
    display: grid;
    grid-template-columns: repeat(3, minmax(96px, 1fr));
    grid-auto-rows: minmax(96px, 1fr);
    gap: 8px;
    padding-block-end: max(8px, env(safe-area-inset-bottom));
  }
  .pad .key {
    font-size: max(32px, min(2rem, 48px));
    padding: 0;
  }
  /* Words, not signs: they double with the text, and then stand one to a line. */
  .choices {
    block-size: auto;
    max-block-size: none;
    grid-template-columns: repeat(auto-fit, minmax(max(96px, 4.6em), 1fr));
    grid-auto-rows: minmax(96px, auto);
    font-size: var(--t-figure);
  }
  .choices .key {
    font-size: inherit;
  }
  /* Question, reading and error share the line above the value… */
  .answered .ask {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  /* …unless there is room for both. */
  @container pad (height >= 620px) and (width >= 18rem) {
    /* Nothing to scroll: a finger that slides on its key means the key. */
    .key {
      touch-action: none;
    }
    .all {
      gap: 12px;
    }
    .top {
      grid-template:
        'ask ask' auto
        'value side' minmax(64px, auto)
        'said said' minmax(1.5em, auto) / minmax(0, 1fr) auto;
      row-gap: 6px;
    }
    .frame {
      grid-area: value;
    }
    .ask,
    .answered .ask {
      position: static;
      inline-size: auto;
      block-size: auto;
      clip-path: none;
      grid-area: ask;
      padding-inline-start: 0;
    }
    .said,
    .error {
      grid-area: said;
      align-self: start;
      padding-inline-start: 0;
    }
    .value {
      font-size: 48px;
      line-height: 56px;
    }
    .value.long {
      font-size: 32px;
    }
  }
  /* A tablet: the answers lie at the keys. */
  @container pad (height >= 860px) {
    .all {
      grid-template-rows: auto 1fr minmax(min-content, 552px);
    }
  }
  /* Large text on a small phone: one thing a line, the value stays in sight while the keys scroll. */
  @container pad (width < 18rem) and (orientation: portrait) {
    .top {
      position: sticky;
      inset-block-start: 0;
      z-index: 1;
      grid-template: 'say' auto 'value' auto 'side' auto / minmax(0, 1fr);
      row-gap: 4px;
      background: var(--paper);
    }
    .frame {
      grid-area: 1 / 1 / 3 / 2;
    }
    .ask,
    .said,
    .error {
      grid-area: say;
      padding-inline-start: 16px;
    }
    .results {
      grid-auto-flow: row;
    }
  }
  @container pad (height < 620px) and (orientation: landscape) and (width >= 440px) {
    .all {
      grid-template: 'top results' auto 'keys keys' 1fr / minmax(0, 3fr) minmax(0, 2fr);
      max-inline-size: none;
    }
    .pad:not(.choices) {
      max-block-size: calc(2 * 132px + 8px);
      grid-template-columns: repeat(6, minmax(64px, 1fr));
      grid-auto-rows: minmax(64px, 1fr);
    }
  }
`;
