import { html, nothing } from 'lit';
import type { recallSaid } from '../text/recall';

/**
 * What was corrected since a record was made, each with the key that says it was looked over. In a screen's own styles.
 * @param stands keeps which correction a person has looked the record over for
 * @param say takes what went wrong with that, empty where nothing did
 */
export const recallNotes = (
  { all, heading, stands: key, notSaved }: ReturnType<typeof recallSaid>,
  stands: (id: string) => Promise<void>,
  say: (trouble: string) => void,
) =>
  all.length
    ? html`<div class="alert stack">
        ${all.map(
          ({ id, what, todo, between }) =>
            html`<h2>${heading}</h2>
              <p><strong>${what}</strong> ${todo}</p>
              <p>${between}</p>
              <button
                class="key"
                @click=${() =>
                  void stands(id).then(
                    () => say(''),
                    () => say(notSaved),
                  )}
              >
                ${key}
              </button>`,
        )}
      </div>`
    : nothing;
