import { css, LitElement, unsafeCSS } from 'lit';
import { shared, written } from '../elements/styles';

/**
 * Colours as the app has them (elements/theme.css; a test holds them against each other): on a light page, on a dark one,
 * and where the person's system sets them.
 */
export const COLOURS = {
  paper: ['#fdfcf8', '#0e1216', 'Canvas'],
  ink: ['#11161b', '#f5f1e7', 'CanvasText'],
  'ink-2': ['#474c51', '#b9bcbd', 'CanvasText'],
  hair: ['#c9c6bb', '#4a5056', 'GrayText'],
  ok: ['#0b5a2c', '#72dd9b', 'CanvasText'],
  near: ['#714000', '#ffc266', 'CanvasText'],
  over: ['#9c1019', '#ff9c8f', 'CanvasText'],
  unknown: ['#474c51', '#b9bcbd', 'CanvasText'],
  machine: ['#474c51', '#b9bcbd', 'Highlight'],
} as const;

/** Each of them as a custom property that the page may set; dark where the page's own colour scheme is dark. */
const colours = (of: (each: readonly [string, string, string]) => string) =>
  unsafeCSS(
    Object.entries(COLOURS)
      .map(([name, each]) => `--${name}: var(--ls-embed-${name}, ${of(each)});`)
      .join(''),
  );
const system = unsafeCSS(
  Object.entries(COLOURS)
    .map(([name, [, , word]]) => `--${name}: ${word};`)
    .join(''),
);

/** What every element for other pages has in common: its looks don't come from the page, but for what that sets on purpose. */
export abstract class EmbedElement extends LitElement {
  static override styles = [
    ...shared,
    written,
    css`
      :host {
        ${colours(([light]) => light)}
        --font: var(--ls-embed-font, system-ui, sans-serif);
        --t-label: var(--ls-embed-label, max(1.125rem, 18px));
        --t-figure: calc(1.5 * var(--t-label));
        --t-deciding: clamp(28px, 9cqi, 56px);
        --gap: 8px;
        display: block;
        container-type: inline-size;
        padding: 16px;
        background: var(--paper);
        color: var(--ink);
        border-block-start: 3px solid var(--ink);
        font: 400 var(--t-label) / 1.3 var(--font);
        font-variant-numeric: tabular-nums;
        letter-spacing: normal;
        text-align: start;
        text-transform: none;
        overflow-wrap: break-word;
        touch-action: manipulation;
      }
      @supports (color: light-dark(red, red)) {
        :host {
          ${colours(([light, dark]) => `light-dark(${light}, ${dark})`)}
        }
      }
      @media (forced-colors: active) {
        :host {
          ${system}
        }
      }
      .stack {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: 12px;
      }
      .results {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 7.5em), 1fr));
        gap: var(--gap);
      }
      .title {
        font-size: var(--t-figure);
        font-weight: 700;
        line-height: 1.15;
      }
      .note {
        color: var(--ink-2);
      }
      .alert {
        border: 3px solid var(--over);
        padding: 12px;
      }
      .entry {
        display: grid;
        gap: 4px;
      }
      [aria-invalid='true'] {
        border: 3px dashed var(--over);
      }
    `,
  ];
}

/** Words of a list in an attribute: `families="iso-coarse unc"`. */
export const listed = {
  fromAttribute: (text: string | null): string[] => text?.split(/[\s,]+/).filter(Boolean) ?? [],
};
