import { html } from 'lit';

/** A choice by keys under its name. null as a value is "not known" where it is offered. */
export const choice = <T>(
  name: string,
  options: readonly (readonly [T, unknown])[],
  now: T,
  choose: (value: T) => void,
) =>
  html`<h2 class="label">${name}</h2>
    <div class="grid2" role="group" aria-label=${name}>
      ${options.map(
        ([value, label]) =>
          html`<button class="key" aria-pressed=${now === value} @click=${() => choose(value)}>
            ${label}
          </button>`,
      )}
    </div>`;
