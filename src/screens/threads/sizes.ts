import { html, nothing } from 'lit';
import '../../elements/row';
import { decimalText, inBase, mul, MM_PER_INCH, toNumber, type Ratio } from '../../core/quantity';
import { formOf, limits, tappingDrill, unitOf, type Thread } from '../../core/thread';
import { classesOf } from '../../core/thread/classes';
import { externalChamfer, shoulderDistance, threadRunOut } from '../../core/thread/ends';
import { engagement } from '../../core/thread/engagement';
import { basicSizes, pitchLength } from '../../core/thread/forms';
import { helixAngles, sideClearance } from '../../core/thread/helix';
import { setOverPpm, taperFigures } from '../../core/thread/taper';
import type { TappingDrill } from '../../core/thread/tapping';
import {
  dinUndercut,
  internalUndercut,
  isoUndercut,
  type DinUndercut,
  type InternalUndercut,
  type IsoUndercut,
  type UndercutResult,
} from '../../core/thread/undercut';
import { mark, plain, significant } from '../../text/numbers';
import { limitsText as t } from '../../text/limits';
import { drillName } from '../../text/threads';

const shown = (r: Ratio, places: number): string => decimalText(r, { places, mark: mark() });
const degrees = (x: number): string => `${x.toFixed(1).replace('-', '−').replace('.', mark())}°`;
const row = (label: string, value: string, unit = '', note = '') =>
  html`<ls-row .label=${label} .value=${value} .unit=${unit} .note=${note}></ls-row>`;

/** Lead angle at each diameter, and the clearance it asks of the tool's sides. @param lead mm, exact or without its π */
export const helixSection = (thread: Thread, lead: Ratio) => {
  const sizes = basicSizes(thread);
  if (!sizes) return nothing;
  const mm = (r: Ratio): number => toNumber(sizes.unit === 'in' ? mul(r, MM_PER_INCH) : r);
  const at = { major: mm(sizes.major), pitch: mm(sizes.pitch), minor: mm(sizes.minor) };
  const angles = helixAngles(toNumber(lead), at);
  const clear = sideClearance(angles.minor ?? 0);
  return html`<h2>${t.helix}</h2>
    <div>
      ${(['major', 'pitch', 'minor'] as const).map((k) => {
        const angle = angles[k];
        return angle === null ? nothing : row(t.helixAt[k], degrees(angle));
      })}
    </div>
    ${
      clear
        ? html`<h3 class="label">${t.clearance}</h3>
            <div>${row(t.leading, degrees(clear.leading))} ${row(t.trailing, degrees(clear.trailing))}</div>
            <p class="note">${t.clearanceNote}</p>`
        : nothing
    }`;
};

/** Groups of length of engagement, where the standard has them. */
export const engagementSection = (thread: Thread) => {
  const e = engagement(thread);
  if (!e) return nothing;
  return html`<h2>${t.engagement}</h2>
    <div>
      ${row(t.short, significant(e.shortTo), 'mm')} ${row(t.normal, significant(e.normalTo), 'mm')}
      ${row(t.long, significant(e.normalTo), 'mm')}
    </div>
    <p class="note">${t.engagementSource}</p>`;
};

const external = (title: string, result: UndercutResult<IsoUndercut | DinUndercut>, source: string) => {
  if (!result.ok) return nothing;
  const u = result.undercut;
  return html`<h3>${title}</h3>
    <div>
      ${row(t.floor, plain(u.floor), 'mm')} ${row(t.length, plain(u.length), 'mm')}
      ${row(t.floorDiameter, `${plain(u.diameter)} ${u.tolerance}`, 'mm')}
      ${row(t.radius, plain(u.radius), 'mm')}
    </div>
    <p class="note">${u.fromMemory ? t.fromMemory : source}</p>`;
};

const internal = (title: string, result: UndercutResult<InternalUndercut>) =>
  result.ok
    ? html`<h3>${title}</h3>
        <div>
          ${row(t.groove, plain(result.undercut.length), 'mm')}
          ${row(t.floorDiameter, plain(result.undercut.diameter), 'mm')}
        </div>
        <p class="note">${t.gbSource}</p>`
    : nothing;

/** Undercuts of metric threads, each standard by itself, and what stands at a shoulder without one. */
export const undercutSection = (thread: Thread, major: Ratio | null, unit: 'mm' | 'in') => {
  const pitch = pitchLength(thread);
  if (!major || !pitch || unit !== 'mm' || thread.form !== 'iso60') return nothing;
  const iso = isoUndercut(major, pitch);
  if (!iso.ok) return nothing;
  return html`<h2>${t.undercut()}</h2>
    <p>${t.neverMixed}</p>
    ${external(t.iso, iso, t.isoSource)} ${external(t.dinA, dinUndercut(major, pitch, 'A'), t.fromMemory)}
    ${external(t.dinB, dinUndercut(major, pitch, 'B'), t.fromMemory)}
    ${internal(t.gbNormal, internalUndercut(major, pitch, 'normal'))}
    ${internal(t.gbShort, internalUndercut(major, pitch, 'short'))}
    <h3>${t.noUndercut}</h3>
    <div>
      ${row(t.runOut, plain(threadRunOut(pitch, 'normal')), 'mm')}
      ${row(t.shoulder, plain(shoulderDistance(pitch, 'normal')), 'mm')}
    </div>
    <p class="note">${t.gbSource}</p>`;
};

/** The chamfer an external thread starts from. */
export const endsSection = (thread: Thread) => {
  const sizes = basicSizes(thread);
  if (!sizes) return nothing;
  const chamfer = externalChamfer(toNumber(sizes.major), toNumber(sizes.minor));
  if (!chamfer) return nothing;
  const places = sizes.unit === 'mm' ? 2 : 3;
  const value = (x: number): string => x.toFixed(places).replace('.', mark());
  return html`<h2>${t.ends}</h2>
    <div>
      ${row(t.chamferTo, value(chamfer.endDiameter), sizes.unit)}
      ${row(t.chamferLength, value(chamfer.length), sizes.unit)}
    </div>
    <p class="note">${t.chamferNote}</p>`;
};

/** Drills near the right one, from every drawer, with the thread each leaves. */
export const drillsSection = (thread: Thread) => {
  if (!thread.major || thread.pitch.unit === 'module' || thread.pitch.unit === 'dp' || thread.taper)
    return nothing;
  const metric = unitOf(thread) === 'mm';
  const classId = classesOf(thread).internalDefault;
  const l = classId ? limits(thread, classId) : null;
  const mm = (r: Ratio | null): Ratio | null => (r && !metric ? mul(r, MM_PER_INCH) : r);
  const found = tappingDrill({
    major: inBase(thread.major),
    pitch: inBase(thread.pitch),
    height: toNumber(formOf(thread).majorToPitch),
    aim: metric ? { kind: 'major-less-pitch' } : { kind: 'percent', percent: 75 },
    ...(l?.ok ? { bore: { min: mm(l.minor.min), max: mm(l.minor.max) } } : {}),
  });
  if (!found.ok) return nothing;
  const line = (d: TappingDrill, recommended: boolean) =>
    row(
      drillName(d.drill.kind, d.drill.name) + (d.drill.kind === 'metric' ? ' mm' : ''),
      t.percent(d.percent.toFixed(0)),
      '',
      [
        recommended ? t.recommended : '',
        d.drill.kind === 'metric' ? '' : `${shown(d.drill.diameter, 2)} mm`,
        t.inBore[d.bore],
      ]
        .filter(Boolean)
        .join(' · '),
    );
  return html`<h2>${t.drills}</h2>
    <div>
      ${found.list.map((d) => line(d, d.drill === found.recommended.drill))}
      ${found.equivalents.map((d) => line(d, false))}
    </div>`;
};

/** What a taper thread asks of the machine. */
export const taperSection = (thread: Thread) => {
  const f = taperFigures(thread);
  if (!f) return nothing;
  const places = f.unit === 'mm' ? 2 : 4;
  return html`<h2>${t.taper}</h2>
    <div>
      ${row(t.taperOn, `${f.taper.n} : ${f.taper.d}`)}
      ${row(t.side, `${f.sideDegrees.toFixed(3).replace('.', mark())}°`)}
      ${row(t.gaugeLength, shown(f.gaugeLength, places), f.unit)}
      ${row(t.gaugeOutside, `± ${shown(f.gaugeTolerance, places)}`, f.unit, t.turns(plain(f.gaugeTurns)))}
      ${row(t.gaugeInside, `± ${shown(f.internalTolerance, places)}`, f.unit, t.turns(plain(f.internalTurns)))}
      ${row(t.useful, shown(f.usefulLength, places), f.unit)}
      ${f.smallEndPitch ? row(t.smallEnd, shown(f.smallEndPitch, places), f.unit) : nothing}
    </div>
    <p class="note">
      ${t.taperNote} ${t.setOver(Math.abs(setOverPpm(f.taper)).toFixed(0))} ${t.source(f.source)}
    </p>`;
};
