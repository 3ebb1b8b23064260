import { html, nothing } from 'lit';
import '../elements/standing';
import type { CheckState, Item } from '../core/checks';
import { read, stated, type Stated } from '../core/quantity';
import { checksText, checkText, findingText } from '../text/checks';
import { embedText } from '../text/embed';
import { standingWord } from '../text/standing';
import { timeOf } from '../text/time';
import { readErrorText } from '../text/typed';

const t = embedText.checks;

/** The figure typed, in the item's first unit; null where there is none, a word of refusal where it is no number. */
export const readingOf = ({ reading }: Item, typed: string): Stated | null | { readonly trouble: string } => {
  if (!reading || typed.trim() === '') return null;
  const number = read(typed);
  return number.ok ? stated(number.value, reading.units[0]) : { trouble: readErrorText(number.error) };
};

/** How an item stands by what is worked out; what a person is asked to look at isn't called OK before they looked. */
export const findingSaid = ({ finding, state }: CheckState) => {
  if (!finding || (finding.standing === 'within' && state !== 'done')) return nothing;
  return html`<ls-standing .standing=${finding.standing} .word=${standingWord[finding.standing]}
    >${findingText(finding)}</ls-standing
  >`;
};

/** What is left when nothing more is asked. @param at time of the last answer */
export const restSaid = (open: readonly CheckState[], at: number | null) => {
  const stuck = open.filter((s) => !s.answerable).length;
  return html`<p class="question" part="question" aria-live="polite">
      ${open.length || at === null ? checksText.leftCount(open.length) : t.answered(timeOf(at))}
    </p>
    ${stuck ? html`<p class="unknown">${t.worked(stuck)}</p>` : nothing}
    <ul>
      ${open.map(
        (s) =>
          html`<li>
            ${checkText(s.item.id).question}
            ${s.state === 'not-ok' ? html`<strong class="over">${checksText.notOk}</strong>` : findingSaid(s)}
          </li>`,
      )}
    </ul>
    <p>${checksText.afterAll}</p>`;
};
