import { html, nothing } from 'lit';
import '../../elements/standing';
import type { CheckState } from '../../core/checks';
import { appText, enterText } from '../../text/app';
import { boundsText, checksText, findingText } from '../../text/checks';
import { fieldText } from '../../text/machine';
import { decimal, showAmount } from '../../text/numbers';
import { standingWord } from '../../text/standing';
import { nutText } from '../../text/threads';
import { limitText } from '../../text/why';
import type { App } from '../../state';

/** Where something that is missing can be entered. */
const entry = (path: string): { href: string; label: string } => {
  const [room, name = ''] = path.split('.');
  if (room === 'machine')
    return { href: `#/machine/field/${name}`, label: fieldText[name as keyof typeof fieldText].label };
  if (name === 'thread') return { href: '#/threads/find', label: checksText.chooseThread };
  return { href: `#/enter/job/${name}`, label: enterText.job[name as keyof typeof enterText.job] ?? name };
};

/** How a computed item, a reading or what an item rests on stands, and where to enter what is missing. */
export const finding = (s: CheckState) => {
  // What a person is asked to look at isn't called OK before they looked.
  if (!s.finding || (s.finding.standing === 'within' && s.state !== 'done')) return nothing;
  const limit = s.finding.limit ? ` ${limitText[s.finding.limit].name}.` : '';
  return html`<ls-standing .standing=${s.finding.standing} .word=${standingWord[s.finding.standing]}
      >${findingText(s.finding)}${limit}</ls-standing
    >
    ${s.item.id === 'stop-tests' ? html`<a class="key" href="#/machine/stops">${checksText.stopTests}</a>` : nothing}
    ${s.finding.missing.map((path) => {
      const { href, label } = entry(path);
      return html`<a class="key" href=${href}>${appText.enter(label)}</a>`;
    })}`;
};

/** The value that stands large beside a question. */
export const shown = (app: App, s: CheckState) => {
  const { shows } = s.item;
  // Limits of a reading are written out as such; one of them alone beside them would confuse.
  if (!shows || shows === 'blank') return nothing;
  if (shows === 'job.rpm') {
    const { rpm } = app.job;
    return rpm ? html`<p class="deciding">${decimal(rpm, 1)} <span class="unit">rpm</span></p>` : nothing;
  }
  if (shows === 'nutRule') {
    const { head, line } = nutText(app.sheet.get('nutRule').value, app.profile?.threadDial === 'dial');
    return html`<p class="figure">${head}</p>
      <p>${line}</p>`;
  }
  const amount = app.sheet.get(shows).why.result;
  return amount ? html`<p class="figure">${showAmount(amount)}</p>` : nothing;
};

/** Where a reading has to lie, before it is entered. */
export const bounds = (app: App, s: CheckState) => {
  const line = boundsText(s.item, app.sheet);
  return line ? html`<p class="figure">${line}</p>` : nothing;
};
