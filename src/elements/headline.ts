import { css, html } from 'lit';
import './standing';
import type { StandingName } from './standing';

/** What stands first on a screen: a name, and how it stands. In a screen's own styles. */
export const headlineSheet = css`
  .name {
    font-size: var(--t-deciding);
    line-height: 1.05;
    overflow-wrap: anywhere;
  }
  .name small {
    font-size: 0.62em;
  }
`;

/** A name as large as it can be; what follows a "×" is smaller. */
export const headline = (name: string) => {
  const cut = name.indexOf('×');
  if (cut < 0) return html`<h1 class="name">${name}</h1>`;
  return html`<h1 class="name">${name.slice(0, cut)}<small>${name.slice(cut)}</small></h1>`;
};

/** How something stands, as a key to where that can be changed. */
export const standingKey = (href: string, standing: StandingName, word: string, of: string) =>
  html`<a class="key left" href=${href}
    ><ls-standing .standing=${standing} .word=${word}>${of}</ls-standing></a
  >`;
