import { html, nothing, type TemplateResult } from 'lit';
import { checkText, FIELDS, workshopKey } from '../../core/machine';
import { machineText, workshopText as t } from '../../text/machine';
import { refusalText } from '../../text/typed';
import type { App } from '../../state';
import { workshopsOf, type Workshop } from '../../state/workshops';

/** More than these are written by hand. */
const MOST = 12;

/** The workshops there are, each on a key, so that one isn't written in two ways; but the one that it is now. */
export const workshopKeys = (
  title: string,
  workshops: readonly Workshop[],
  now: string,
  take: (name: string) => void,
): TemplateResult | typeof nothing => {
  const others = workshops.filter((w) => w.name && w.key !== workshopKey(now)).slice(0, MOST);
  return others.length
    ? html`<p class="note">${title}</p>
        <div class="grid2">
          ${others.map(({ name }) => html`<button class="key" @click=${() => take(name)}>${name}</button>`)}
        </div>`
    : nothing;
};

/** What the page of the field does with a name. */
interface Named {
  /** The machine in use alone stands where it is typed. */
  save(): void;
  /** It is moved to a workshop that there is. */
  move(name: string): void;
  /** All that stand with it stay together under the name typed. */
  rename(old: string, name: string): void;
  refuse(why: string): void;
}

/** The workshop of the machine in use: moved there alone, or all machines that stand with it under another name. */
export const workshopField = (app: App, typed: string, named: Named): TemplateResult => {
  const all = workshopsOf(app);
  const [here] = all;
  const count = here?.machines.length ?? 1;
  const machine = app.profile?.name ?? '';
  const keys = workshopKeys(t.move(machine), all, here?.name ?? '', (name) => named.move(name));
  if (!here || count === 1)
    return html`<button class="key solid" @click=${() => named.save()}>${machineText.save}</button>${keys}`;
  const joined = all.find((w) => w !== here && w.key === workshopKey(typed));
  const rename = (): void => {
    const checked = checkText(FIELDS.workshop, typed);
    if (checked.ok) named.rename(here.name, checked.value);
    else named.refuse(refusalText(checked.refusal));
  };
  return html`${joined ? html`<p class="note">${t.joins(joined.name)}</p>` : nothing}
    <button class="key solid" @click=${() => named.save()}>${t.alone(machine)}</button>
    <button class="key" @click=${rename}>${t.all(count, here.name)}</button>${keys}`;
};

/** The other machines of the workshop that have a colour already. */
export const colourTaken = (app: App, colour: string): string =>
  (workshopsOf(app)[0]?.machines ?? [])
    .flatMap((m) =>
      m.id !== app.machine?.id && m.value.profile.colour === colour ? m.value.profile.name : [],
    )
    .join(', ');
