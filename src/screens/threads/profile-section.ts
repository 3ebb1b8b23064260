import { html, nothing } from 'lit';
import '../../elements/row';
import type { Job } from '../../core/job';
import type { Thread } from '../../core/thread';
import { profileFigures, type End } from '../../core/thread/basic-profile';
import { largestReaching } from '../../core/thread/depth';
import { unitOf } from '../../core/thread/forms';
import { toolForm } from '../../core/thread/tool';
import { mark } from '../../text/numbers';
import { limitsText as t } from '../../text/limits';

type Unit = 'mm' | 'in';
const row = (label: string, value: number, unit: Unit, before = '') =>
  html`<ls-row
    .label=${label}
    .value=${`${before}${value.toFixed(unit === 'mm' ? 3 : 4).replace('.', mark())}`}
    .unit=${unit}
  ></ls-row>`;
const end = (labels: Readonly<Record<End['kind'], string>>, { kind, size }: End, unit: Unit) =>
  row(labels[kind], size, unit);

/** The groove of the side being cut, by the thread's standard: heights, flats or radii. Also of a worm. */
export const profileSection = (thread: Thread, side: Job['side']) => {
  const f = profileFigures(thread);
  const member = side === 'internal' && f.nut ? f.nut : f.screw;
  return html`<h2>${t.profile}</h2>
    <div>
      ${row(t.pitchLength, f.pitch, f.unit)}
      ${f.sharpHeight === null ? nothing : row(t.sharpHeight, f.sharpHeight, f.unit)}
      ${row(t.depthFull, member.depth, f.unit)} ${row(t.addendum, member.addendum, f.unit)}
      ${f.nut ? row(t.engaged, f.engaged, f.unit) : nothing} ${end(t.crest, member.crest, f.unit)}
      ${end(t.root, member.root, f.unit)}
    </div>
    <p class="note">${t.formSource(f.source)}</p>`;
};

/** How large a nose may be for the root to come clear of the mating crest. */
export const toolSection = (thread: Thread, side: Job['side']) => {
  const form = toolForm(thread, side);
  const unit = unitOf(thread);
  const own = (mm: number): number => (unit === 'in' ? mm / 25.4 : mm);
  if (thread.form === 'square')
    return html`<h2>${t.tool}</h2>
      <div>${row(t.toolWidth, own(form.pitch / 2), unit)}</div>
      <p class="note">${t.squareNote}</p>`;
  const largest = (kind: 'radius' | 'flat') => {
    const size = largestReaching(kind, form.half, form.pitch, form.reach);
    return size === null ? nothing : row(t.largest[kind], own(size), unit, kind === 'radius' ? 'R ' : '');
  };
  return html`<h2>${t.tool}</h2>
    <div>${largest('radius')} ${largest('flat')}</div>
    <p class="note">${t.largestNote}</p>`;
};
