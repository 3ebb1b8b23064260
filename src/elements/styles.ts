import { css } from 'lit';

/**
 * Text, rules and rows. Classes: `.label` (18 px and up), `.figure` (28 px), `.deciding` (56 px), `.huge`, `.unit`,
 * `.second` (quieter text), `.hair` (line below), `.row` (label left, figure right, wraps), `.vh` (read, not seen).
 */
export const base = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  h1,
  h2,
  h3,
  p {
    margin: 0;
    text-wrap: pretty;
  }
  h1 {
    font-size: 1.75rem;
    line-height: 1.15;
  }
  h2 {
    font-size: 1.375rem;
    line-height: 1.2;
  }
  h3 {
    font-size: var(--t-label);
  }
  p {
    font-size: var(--t-label);
  }
  a {
    color: inherit;
    text-underline-offset: 0.2em;
  }
  .label {
    font-size: var(--t-label);
    color: var(--ink-2);
  }
  .second {
    color: var(--ink-2);
  }
  .figure,
  .deciding,
  .huge {
    font-weight: 700;
    line-height: 1.1;
    overflow-wrap: anywhere;
  }
  .figure {
    font-size: var(--t-figure);
  }
  .deciding {
    font-size: var(--t-deciding);
  }
  .huge {
    font-size: var(--t-huge);
    line-height: 1;
  }
  .unit {
    font-size: var(--t-label);
    font-weight: 400;
    overflow-wrap: normal;
  }
  .hair {
    border-block-end: 1px solid var(--hair);
  }
  hr {
    border: 0;
    border-block-start: 1px solid var(--hair);
    margin: 0;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 1rem;
    padding-block: 10px;
  }
  .row > :last-child {
    margin-inline-start: auto;
    text-align: end;
  }
  .within {
    color: var(--ok);
  }
  .near {
    color: var(--near);
  }
  .over {
    color: var(--over);
  }
  .unknown {
    color: var(--unknown);
  }
  .vh {
    position: absolute;
    inline-size: 1px;
    block-size: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  :focus {
    outline: none;
  }
  :focus-visible {
    outline: 3px solid var(--ink);
    outline-offset: 3px;
  }
  @media (prefers-reduced-motion: reduce) {
    * {
      animation: none !important;
      transition: none !important;
      scroll-behavior: auto !important;
    }
  }
`;

/**
 * Keys, for <button>, <a> and <summary>. `.key`, with `.solid` (the thing to do), `.dashed` (off limits), `.quiet`
 * (a line under words), `.big` (the one large key of a screen), `.stop` (NOT OK, remove). `.keys` sets keys side by
 * side with 8 px between; `.by-hand` sets its parts so that the last lies under the thumb; `.apart` keeps what destroys 24 px from the rest. Pressed or current keys are filled.
 */
export const keys = css`
  .keys {
    display: flex;
    flex-wrap: wrap;
    gap: var(--gap, 8px);
  }
  .keys > .key {
    flex: 1 1 auto;
  }
  /* Things side by side of which the last is used most: for a left hand they stand the other way round. */
  .by-hand {
    direction: var(--hand, ltr);
  }
  .by-hand > :not(.by-hand) {
    direction: ltr;
  }
  .key {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    min-inline-size: 64px;
    min-block-size: 64px;
    margin: 0;
    padding: 6px 14px;
    border: 3px solid var(--ink);
    border-radius: 0;
    background: var(--paper);
    color: var(--ink);
    font: 700 var(--t-label) / 1.2 var(--font);
    font-variant-numeric: tabular-nums;
    text-align: center;
    text-decoration: none;
    overflow-wrap: anywhere;
    cursor: pointer;
    touch-action: manipulation;
    user-select: none;
    -webkit-user-select: none;
    -webkit-tap-highlight-color: transparent;
  }
  .key.solid,
  .key[aria-pressed='true'],
  .key[aria-checked='true'],
  .key[aria-current]:not([aria-current='false']) {
    background: var(--ink);
    color: var(--paper);
  }
  .key.big {
    min-block-size: 112px;
    inline-size: 100%;
    font-size: var(--t-figure);
  }
  .key.stop {
    border-color: var(--over);
    color: var(--over);
  }
  .key.dashed,
  .key:disabled,
  .key[aria-disabled='true'] {
    border-style: dashed;
    border-color: var(--over);
    color: var(--over);
  }
  .key.dashed[aria-pressed='true'] {
    background: var(--over);
    border-color: var(--paper);
    color: var(--paper);
  }
  .key:disabled,
  .key[aria-disabled='true'] {
    border-color: var(--ink-2);
    color: var(--ink-2);
    background: var(--paper);
    cursor: default;
  }
  .key.quiet {
    border-color: transparent;
    background: none;
    font-weight: 400;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.25em;
  }
  .key:active:not(:disabled, [aria-disabled='true']) {
    background: var(--ink-2);
    border-color: var(--ink-2);
    color: var(--paper);
  }
  .apart {
    margin-block-start: 24px;
  }
  @media (forced-colors: active) {
    .key {
      border-color: ButtonText;
    }
    .key.quiet {
      border-color: transparent;
    }
    .key.solid,
    .key[aria-pressed='true'],
    .key[aria-checked='true'],
    .key[aria-current]:not([aria-current='false']) {
      forced-color-adjust: none;
      background: Highlight;
      border-color: Highlight;
      color: HighlightText;
    }
  }
`;

/** A line to be written with the phone's own keyboard; `--written` is the size of its letters. */
export const written = css`
  input,
  textarea {
    font: 700 var(--written, var(--t-figure)) / 1.3 var(--font);
    inline-size: 100%;
    min-block-size: 64px;
    padding: 8px 12px;
    border: 3px solid var(--ink);
    border-radius: 0;
    background: var(--paper);
    color: var(--ink);
  }
`;

/** Both sheets, in the order in which they belong. */
export const shared = [base, keys];
