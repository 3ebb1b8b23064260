import { html, nothing } from 'lit';
import '../../elements/row';
import type { Amount, Decision, Ppm, ProveTest } from '../../core/prove';
import { div, MM_PER_INCH } from '../../core/quantity';
import { codeText, pointText, proveText as t } from '../../text/prove';
import { decimal, significant, statedText, whole } from '../../text/numbers';
import { unitLabel } from '../../text/units';
import type { App } from '../../state';

/** An amount as it is read: whole where it is, else to the digits that its unit bears. */
const shown = (app: App, { value, unit }: Amount): { value: string; unit: string } => {
  if (unit === 'mm' && app.settings.units === 'in')
    return { value: decimal(div(value, MM_PER_INCH), 5), unit: 'in' };
  return { value: decimal(value, unit === 's' ? 2 : 4), unit: unit === 'mm' ? 'mm' : unitLabel[unit] };
};

const row = (app: App, label: string, amount: Amount | null) => {
  if (!amount) return nothing;
  const { value, unit } = shown(app, amount);
  return html`<ls-row .label=${label} .value=${value} .unit=${unit}></ls-row>`;
};

const ppmText = (p: Ppm): string =>
  p.kind === 'inside'
    ? t.inside(whole(p.uncertainty))
    : t.seen(`${p.ppm > 0n ? '+' : ''}${whole(p.ppm)}`, whole(p.uncertainty));

const settlesText = (app: App, { value, unit }: Amount): string => {
  if (unit === 'turns') return t.turnsMore(whole(value.n));
  const at = shown(app, { value, unit });
  return t.travelMore(
    `${significant(Number(value.n) / Number(value.d) / (at.unit === 'in' ? 25.4 : 1), 3)} ${at.unit}`,
  );
};

/** What else a difference means: how far a drift goes on the carriage, what lies between the places. */
const differenceName = (test: ProveTest): string => {
  if (test.id === 'backlash') return t.spread;
  return test.id === 'drift' || test.id === 'coast' || test.id === 'stopping-time'
    ? t.onCarriage
    : t.difference;
};

/** The figures of a decision, each on its line, and what it points to. */
export const figures = (app: App, test: ProveTest, d: Decision) =>
  html`<div>
      ${row(app, t.expected, d.expected)} ${row(app, t.measured, d.measured)}
      ${row(app, differenceName(test), d.difference)} ${row(app, t.allowed, d.allowed)}
      ${d.allowed ? nothing : row(app, t.uncertainty, d.uncertainty)}
      ${d.ppm ? html`<ls-row .label=${t.off} .value=${ppmText(d.ppm)}></ls-row>` : nothing}
      ${
        d.settles && d.result !== 'passed'
          ? html`<ls-row
              .label=${d.settles.unit === 'turns' && test.id === 'counts' ? t.forPpm('10') : t.settles}
              .value=${settlesText(app, d.settles)}
            ></ls-row>`
          : nothing
      }
    </div>
    ${
      d.points.length > 0
        ? html`<h3>${t.points}</h3>
            <ul>
              ${d.points.map((p) => html`<li>${pointText(p)}</li>`)}
            </ul>`
        : nothing
    }`;

export const codeOf = (d: Decision): string => codeText[d.code] ?? d.code;
export const setText = (d: Decision): string =>
  d.sets ? t.recordSet(`${t.setName[d.sets.field]} ${statedText(d.sets.value)}`) : t.record;
