import { html, nothing } from 'lit';
import { fitsFor, type Fit, type NamedGroove } from '../../core/cut/fits';
import type { FigureValues } from '../../core/figures';
import { inBase } from '../../core/quantity';
import { grooveNames, stopText as t } from '../../text/cut-stop';
import { decimal, whole } from '../../text/numbers';
import type { App } from '../../state';

/** One change that would let it stop in time, in words. */
const fitLine = (f: Fit, rpm: string) => {
  const one = (text: string, note: string) =>
    html`<li class="fit hair"><strong>${text}</strong>${note ? html`<small>${note}</small>` : nothing}</li>`;
  const w = t.fit;
  const names = (list: readonly NamedGroove[]) =>
    list.map((g) => `${grooveNames[g.id]}, ${decimal(g.floor, 3)} mm`).join('; ');
  switch (f.kind) {
    case 'slower':
      return one(w.slower(whole(f.rpm)), f.own ? w.own(decimal(f.own, 1)) : f.ownKnown ? w.ownNone : '');
    case 'groove': {
      const none = f.widest
        ? w.grooveNone(grooveNames[f.widest.id], decimal(f.widest.floor, 3))
        : w.grooveNoStandard;
      return one(w.groove(decimal(f.floor, 1), rpm), f.named.length ? w.grooveNamed(names(f.named)) : none);
    }
    case 'gap':
      return one(w.gap(decimal(f.gap, 1), rpm), '');
    case 'straight-in':
      return one(w.straight(decimal(f.room, 2, 'down'), whole(f.rpm)), w.straightNote);
    case 'outwards':
      return one(
        w.outwards,
        f.chuck === 'locked' ? t.awayHelp : f.chuck === 'screw-on' ? t.awayNever : t.awayAsk,
      );
    case 'by-hand':
      return one(w.byHand, w.byHandNote);
  }
};

/** What would fit, reckoned on the job’s own figures; nothing where it stops in time as it is. */
export const fitsOf = (app: App, { place }: FigureValues['stopRoom'], grooves: readonly NamedGroove[]) => {
  const lead = app.sheet.get('lead').value;
  const { profile, job } = app;
  const { wholeStopTime: time, safetyFactor: factor } = profile ?? {};
  if (!lead || !profile || !time || !factor) return nothing;
  const found = fitsFor({
    place,
    lead,
    rpm: job.rpm,
    time: inBase(time),
    factor: inBase(factor),
    speeds: profile.spindleDrive === 'speeds' ? (profile.spindleSpeeds?.map((s) => s.value) ?? null) : null,
    chuck: profile.chuckMount,
    grooves,
  });
  if (found.length === 0) return nothing;
  const rpm = job.rpm ? decimal(job.rpm, 1) : '';
  return html`<h2>${t.fits}</h2>
    <ul>
      ${found.map((f) => fitLine(f, rpm))}
    </ul>`;
};
