import { html, svg } from 'lit';
import type { ChartRow, RoomAnswer } from '../../core/figures/chart';
import type { Ceiling } from '../../core/figures';
import { chartText as t } from '../../text/chart';

/** What a name takes at full size; a longer one is made narrower, never lower. Digits of the face: 0.73 of its size. */
const NAME = { letters: 8, most: 16, width: 92, height: 13, base: 12.4 };

/** On the wall one sign says it: there is no room for words. */
const roomSign = (a: RoomAnswer): string => {
  if (a.kind === 'highest') return `${a.rpm}`;
  return a.kind === 'nothing-left' ? '0' : a.kind === 'not-known' ? '?' : '–';
};
const driveSign = (c: Ceiling): string => (c.highest === null ? '?' : `${c.highest}`);

const nameOf = (name: string) => {
  if (name.length <= NAME.letters) return html`<span class="name">${name}</span>`;
  const cut = name.length > NAME.most ? `${name.slice(0, NAME.most - 1)}…` : name;
  return html`<svg class="name" viewBox="0 0 ${NAME.width} ${NAME.height}">
    ${svg`<text y=${NAME.base} textLength=${NAME.width} lengthAdjust="spacingAndGlyphs">${cut}</text>`}
  </svg>`;
};

/** The page to hang up: thread, what the drive follows, what an ISO 4755 groove leaves, in digits of 12 mm. */
export const hangPage = (
  rows: readonly (readonly [name: string, row: ChartRow])[],
  head: { readonly machine: string; readonly of: string },
) =>
  html`<section class="hang sheet paper-only" aria-hidden="true">
    <h2>${head.machine} · ${t.hang}</h2>
    <p class="whose">${head.of}</p>
    <div class="heads"><span>${t.thread}</span><span>${t.hangDrive}</span><span>${t.hangRoom}</span></div>
    <ol>
      ${rows.map(
        ([name, r]) =>
          html`<li>
            ${nameOf(name)}<span class="rpm">${driveSign(r.drive)}</span
            ><span class="rpm">${roomSign(r.grooves['iso-4755'])}</span>
          </li>`,
      )}
    </ol>
    <p>${t.hangFoot}</p>
  </section>`;
