import { css } from 'lit';

/** A reading on a straight scale, as an SVG of class `scale` 96 high: rules, a pointer `at`, and numbers below. */
export const scaleStyles = css`
  .scale {
    display: block;
    inline-size: min(100%, var(--scale-width, 26rem));
    margin-inline: auto;
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .scale .at {
    fill: var(--ink);
    stroke: none;
  }
  .scale text {
    fill: var(--ink);
    stroke: none;
    font-family: var(--font);
    font-size: clamp(20px, 1.25rem, 24px);
  }
`;
