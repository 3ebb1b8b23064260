import { html } from 'lit';
import '../../elements/cable-drawing';
import { printPage } from '../../device/print';
import { cablesOf, continuityOf, tickState, withTick, type ContinuityItem } from '../../core/wiring/record';
import { whoseText } from '../../text/machine';
import { statedText } from '../../text/numbers';
import { trade } from '../../text/prove';
import { dayText } from '../../text/records';
import { kindName, sectionText, wiringText as t } from '../../text/wiring';
import type { App } from '../../state';
import { drawnCable } from './drawn';
import { cautions } from './list';
import { endName } from './names';

/** Everything on one page for the lid: the cables drawn, and what to try with a meter, to be ticked. */
export const sheetPage = (app: App) => {
  const r = app.wiring?.value;
  const m = app.profile;
  if (!r || !m) return html``;
  const tick = (item: ContinuityItem): void => {
    app.clock.tick();
    void app.wiring?.set(withTick(r, item, app.clock.now));
  };
  const row = (item: ContinuityItem) => {
    const state = tickState(r, item);
    const at = r.ticks[item.id]?.at ?? 0;
    const note = state === 'none' ? '' : state === 'held' ? t.ticked(dayText(at)) : t.lapsed;
    return html`<button class="key tick" aria-pressed=${state === 'held'} @click=${() => tick(item)}>
      <span>${endName(r, item.a)} – ${endName(r, item.b)} <i>${item.signals.join(', ')}</i></span>
      <span>${t.reads[item.expects]}</span>
      <small class=${state === 'lapsed' ? 'unknown' : ''}>${note}</small>
    </button>`;
  };
  return html`<h1>${t.title}</h1>
    <p>${whoseText(m, app.clock.day)}</p>
    ${cautions()}
    <div class="drawings">
      ${cablesOf(r).map(([id, c]) => {
        const { cable, text } = drawnCable(r, id, c);
        const more = [c.length && statedText(c.length), c.section && sectionText(c.section)].filter(Boolean);
        return html`<section>
          <h2>${c.name} · ${trade(kindName[c.kind])}</h2>
          ${more.length > 0 ? html`<p>${more.join(', ')}</p>` : ''}
          <ls-cable-drawing .cable=${cable} .text=${text}></ls-cable-drawing>
        </section>`;
      })}
    </div>
    <p class="note">${t.rings}</p>
    <h2>${t.continuity}</h2>
    <p class="note">${t.continuityHow}</p>
    <div class="ticks">${continuityOf(r).map(row)}</div>
    <div class="screen-only stack">
      <button class="key solid" @click=${printPage}>${t.print}</button>
      <a class="key" href="#/machine/wiring">${t.back}</a>
    </div>`;
};
