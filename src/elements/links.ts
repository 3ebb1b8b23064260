import { html } from 'lit';

/** Plain links one below the other, a line of words each. In a screen's own styles. */
export const links = (list: readonly { readonly href: string; readonly label: string }[]) =>
  list.map(({ href, label }) => html`<a class="key quiet left" href=${href}>${label}</a>`);
