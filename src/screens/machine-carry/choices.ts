import { css, html, nothing, type TemplateResult } from 'lit';
import { readProfile, FIELDS, type FieldName } from '../../core/machine';
import { carryText as t, conflictText, kindText } from '../../text/carry';
import { fieldValue } from '../../text/field-value';
import { type CarryState, type Choice, type Side } from '../../state/carry';

export const choiceStyles = css`
  .choice {
    flex-direction: column;
    gap: 4px;
  }
  .choice small {
    font-size: 1rem;
    font-weight: 400;
  }
`;

/** More than this are worth a key for all of them. */
const FEW = 3;

const profileField = (field: string): FieldName | null => {
  const name = field.replace(/^profile\./, '');
  return Object.hasOwn(FIELDS, name) ? (name as FieldName) : null;
};

/** A side's value in words. */
const valueOf = ({ incoming, conflicts }: Choice, side: Side): string => {
  const row = side === 'ours' ? incoming.ours : incoming.theirs;
  const [conflict] = conflicts;
  if (incoming.store !== 'machines' || !conflict)
    return row && 'changedAt' in row ? t.changedAt(row.changedAt) : '';
  const value = conflict[side];
  if (conflict.field === 'deleted') return value ? t.away : t.inUse;
  const field = profileField(conflict.field);
  const read = field && readProfile({ [field]: value });
  return read && field ? fieldValue(read.profile, field) : value ? t.yes : t.no;
};

const label = (state: CarryState, { incoming, conflicts }: Choice): string => {
  const { store, theirs } = incoming;
  const what = store === 'machines' ? conflictText(conflicts[0]?.field ?? '') : kindText(store);
  return store === 'settings' ? what : `${state.nameOf(theirs)}: ${what}`;
};

const side = (state: CarryState, choice: Choice, which: Side, from: string): TemplateResult =>
  html`<button
    class="key choice"
    aria-pressed=${choice.chosen === which}
    @click=${() => state.choose([choice.key], which)}
  >
    <span>${t[which]}</span><span class="figure">${valueOf(choice, which)}</span><small>${from}</small>
  </button>`;

/** What both changed, side by side, for a person to choose. */
export const choicesOf = (state: CarryState, made: string): TemplateResult | typeof nothing => {
  const { choices } = state;
  if (choices.length === 0) return nothing;
  const keys = choices.map((c) => c.key);
  return html`<h2>${t.toChoose(choices.length)}</h2>
    <p>${t.chooseNote}</p>
    ${
      choices.length > FEW
        ? html`<div class="pair">
            <button class="key" @click=${() => state.choose(keys, 'ours')}>${t.allOurs}</button>
            <button class="key" @click=${() => state.choose(keys, 'theirs')}>${t.allTheirs}</button>
          </div>`
        : nothing
    }
    ${choices.map(
      (c) =>
        html`<h3>${label(state, c)}</h3>
          <div class="pair" role="group" aria-label=${label(state, c)}>
            ${side(state, c, 'ours', t.here)} ${side(state, c, 'theirs', t.file(made))}
          </div>`,
    )}`;
};
