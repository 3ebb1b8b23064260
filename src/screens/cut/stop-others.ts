import { html, nothing } from 'lit';
import '../../elements/row';
import { EMERGENCY_TIME, followedTravel, highestIn, leadingSide } from '../../core/cut/stop';
import type { FigureValues, Standing } from '../../core/figures';
import { inBase, leadLow, ratio, sub, toNumber } from '../../core/quantity';
import { threadRunOut } from '../../core/thread/ends';
import { mmText, stopText as t } from '../../text/cut-stop';
import { fieldText } from '../../text/machine';
import { decimal, statedText, whole } from '../../text/numbers';
import { standingWord } from '../../text/standing';
import type { App } from '../../state';

/** What a thread that fades out may take, by the standard, and what speed that bears. */
export const fadesOf = (app: App, { place, room }: FigureValues['stopRoom']) => {
  const lead = app.sheet.get('lead').value;
  const { wholeStopTime: time, safetyFactor: factor } = app.profile ?? {};
  if (place.ending !== 'run-out' || place.outwards || !lead || !time || !factor) return nothing;
  const off = leadingSide(place.depth, place.half) + room.creep;
  const row = (length: 'normal' | 'short') => {
    const mm = threadRunOut(leadLow(place.pitch), length);
    const left = sub(mm, ratio(BigInt(Math.ceil(off * 1000)), 1000n));
    const rpm = highestIn(left.n > 0n ? left : null, lead, inBase(time), inBase(factor));
    return [decimal(mm, 3), whole(rpm)] as const;
  };
  return html`<h2 class="label">${t.fades}</h2>
    <p>${t.fadesNormal(...row('normal'))}</p>
    <p>${t.fadesShort(...row('short'))}</p>
    <p class="note">${t.fadesNote}</p>`;
};

/** What stops by spindle or button do to the carriage: the drive follows as long as the spindle turns. */
export const othersOf = (app: App) => {
  const { profile, job, sheet } = app;
  const lead = sheet.get('lead').value;
  const coast = sheet.get('coasting').value;
  const room = sheet.get('stopRoom').value?.room;
  const turns = profile?.coast ?? null;
  const emergency =
    lead && job.rpm && turns ? followedTravel(lead, job.rpm, EMERGENCY_TIME, inBase(turns)) : null;
  const standing: Standing =
    emergency && room ? (toNumber(emergency) < room.contact ? 'within' : 'over') : 'unknown';
  return html`<h2>${t.otherStops}</h2>
    <div>
      <ls-row
        .label=${t.coast}
        .value=${coast ? decimal(coast, 2, 'up') : t.notKnown}
        .unit=${coast ? 'mm' : ''}
        .note=${turns ? t.coastNote(statedText(turns)) : ''}
        why="Why"
        figure="coasting"
      ></ls-row>
      <ls-row
        .label=${t.emergency}
        .value=${emergency ? decimal(emergency, 2, 'up') : t.notKnown}
        .unit=${emergency ? 'mm' : ''}
        .note=${room ? t.emergencyNote(mmText(Math.max(0, room.contact))) : ''}
        .standing=${standing}
        .word=${standingWord[standing]}
      ></ls-row>
    </div>
    ${emergency && standing === 'over' ? html`<p class="over"><strong>${t.emergencyOver}</strong></p>` : nothing}
    <p class="note">${t.emergencyHelp}</p>
    ${turns ? nothing : html`<a class="key left" href="#/machine/field/coast">${fieldText.coast.label}</a>`}`;
};
