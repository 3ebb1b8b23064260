import { html, render, type CSSResultOrNative, type TemplateResult } from 'lit';

/** An element's class, as far as its looks go. */
interface Dressed {
  readonly elementStyles: readonly CSSResultOrNative[];
}

/**
 * Reads what elements are drawn with before there is something to draw: their style sheets, and templates that stand
 * in every picture. Nothing of it comes onto the page.
 */
export const makeReady = (elements: readonly Dressed[], templates: readonly TemplateResult[]): void => {
  for (const { elementStyles } of elements)
    for (const style of elementStyles) if (!(style instanceof CSSStyleSheet)) void style.styleSheet;
  render(html`${templates}`, document.createDocumentFragment());
};
