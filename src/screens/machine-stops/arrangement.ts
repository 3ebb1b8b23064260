import { html, nothing } from 'lit';
import { standingMark } from '../../elements/standing';
import { isAsked } from '../../core/machine/asked';
import { ARRANGEMENT, SEVERITY_STANDING, type Severity, type StopsNow } from '../../core/prove/stops';
import { choiceLabel, fieldText, machineText } from '../../text/machine';
import { arrangementText, severityText, sourceText, stopsText as t } from '../../text/stops';
import type { App } from '../../state';

const judged = ({ findings }: StopsNow, severity: Exclude<Severity, 'unknown'>) => {
  const all = findings.filter((f) => f.severity === severity);
  const standing = SEVERITY_STANDING[severity];
  if (all.length === 0) return nothing;
  return html`<h2 class=${standing}>${standingMark(standing)} ${severityText[severity]}</h2>
    <ul>
      ${all.map(
        (f) =>
          html`<li>
            ${arrangementText[f.code]}
            ${f.sources.length > 0 ? html`<small>${f.sources.map((x) => sourceText[x]).join('; ')}</small>` : nothing}
          </li>`,
      )}
    </ul>`;
};

/** How the stop is arranged, by choices, and what that can and cannot do. */
export const arrangementPage = (app: App, stops: StopsNow) => {
  const m = app.profile;
  if (!m) return nothing;
  return html`<h1>${t.arrangement}</h1>
    <p class=${stops.arrangement}>
      ${standingMark(stops.arrangement)} <strong>${t[stops.arrangement]}.</strong> ${t.described}
    </p>
    ${judged(stops, 'cannot')} ${judged(stops, 'weak')}
    <h2>${t.entered}</h2>
    <div>
      ${ARRANGEMENT.filter((f) => isAsked(f, m)).map((f) => {
        const value = m[f];
        return html`<a class="entry" href="#/machine/field/${f}">
          <span>${fieldText[f].label}</span>
          <strong class=${value ? '' : 'unknown'}
            >${value ? choiceLabel(f, value) : `? ${machineText.notKnown}`}</strong
          >
        </a>`;
      })}
    </div>
    ${judged(stops, 'can')}
    <p class="note">${t.defer}</p>
    <a class="key" href="#/machine/stops">${t.list}</a>`;
};
