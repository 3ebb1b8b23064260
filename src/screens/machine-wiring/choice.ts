import { html } from 'lit';

/** A choice by keys under its name. null as a value is "not known" where it is offered. */
export const choice = <T>(
  name: string,
  options: readonly (readonly [T, unknown])[],
  now: T,
  choose: (value: T) => void,
  grid: 'grid2' | 'grid3' = 'grid2',
) =>
  html`<h2 class="label">${name}</h2>
    <div class=${grid} role="group" aria-label=${name}>
      ${options.map(
        ([value, label]) =>
          html`<button class="key" aria-pressed=${now === value} @click=${() => choose(value)}>
            ${label}
          </button>`,
      )}
    </div>`;
