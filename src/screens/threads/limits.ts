import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/limits-drawing';
import '../../elements/row';
import { classOf } from '../../core/figures';
import { inBase, mul, type Ratio } from '../../core/quantity';
import { formOf, limits, unitOf, type LimitsResult, type Thread } from '../../core/thread';
import { classesOf } from '../../core/thread/classes';
import { basicSizes, majorLength } from '../../core/thread/forms';
import type { Band } from '../../core/thread/limits';
import { marked } from '../../text/numbers';
import { bandText, limitsText as t, sizeText } from '../../text/limits';
import { classText, startsText } from '../../text/threads';
import type { App } from '../../state';
import { profileSection, toolSection } from './profile-section';
import { limitsShape } from './shape';
import {
  drillsSection,
  endsSection,
  engagementSection,
  helixSection,
  taperSection,
  undercutSection,
} from './sizes';

/** Limits of size of the chosen thread for a class, drawn to scale, and every figure that goes with its sizes. */
@customElement('ls-limits')
export class LimitsScreen extends ScreenElement<App> {
  private classKeys(thread: Thread) {
    const { job } = this.app;
    const offered = classesOf(thread);
    const keys = (side: 'external' | 'internal') => {
      const list = offered[side];
      if (list.length === 0) return nothing;
      const now = job.side === side ? classOf(thread, job.classId, side) : null;
      return html`<h2 class="label">${t.classes(t[side])}</h2>
        <div class="keys" role="group" aria-label=${t.classes(t[side])}>
          ${list.map(
            (c) =>
              html`<button
                class="key"
                aria-pressed=${c === now}
                @click=${() => void this.app.jobs.change({ side, classId: c })}
              >
                ${classText(c)}
              </button>`,
          )}
        </div>`;
    };
    return html`${keys('external')}${keys('internal')}`;
  }

  private bandRow(label: string, band: Band, unit: 'mm' | 'in'): TemplateResult {
    const known = band.min ?? band.max;
    return html`<ls-row .label=${label} .value=${bandText(band, unit)} .unit=${known ? unit : ''}></ls-row>`;
  }

  private table(l: Extract<LimitsResult, { ok: true }>) {
    return html`<div>
        ${this.bandRow(t.major, l.major, l.unit)} ${this.bandRow(t.pitch(), l.pitch, l.unit)}
        ${this.bandRow(t.minor, l.minor, l.unit)}
        ${l.minorFlat ? this.bandRow(t.minorFlat, { min: null, max: l.minorFlat }, l.unit) : nothing}
      </div>
      <p class="note">${t.source(l.source)}</p>`;
  }

  private basic(thread: Thread) {
    const sizes = basicSizes(thread);
    if (!sizes) return nothing;
    const row = (label: string, r: Ratio) =>
      html`<ls-row .label=${label} .value=${sizeText(r, sizes.unit)} .unit=${sizes.unit}></ls-row>`;
    return html`<h2>${t.basic}</h2>
      <div>${row(t.major, sizes.major)} ${row(t.pitch(), sizes.pitch)} ${row(t.minor, sizes.minor)}</div>
      <p class="note">${t.formSource(formOf(thread).source)}</p>`;
  }

  private limits(thread: Thread, classId: string | null) {
    // Without a class the standard itself says why there are none.
    const l = limits(thread, classId ?? '');
    if (!l.ok) return html`<p>${t.refused(l.refusal, thread.family)}</p>`;
    const shape = limitsShape(thread, l, null, this.app.job);
    return html`${
      shape
        ? html`<ls-limits-drawing
              .shape=${shape}
              .text=${t.drawing(marked(thread.designation), classText(classId ?? ''), Boolean(shape.tool))}
            ></ls-limits-drawing>
            <p class="note">${t.drawnToScale} ${shape.tool ? t.toolDrawn : ''}</p>`
        : nothing
    }
    ${this.table(l)}`;
  }

  override render() {
    const chosen = this.app.sheet.get('chosen').value?.thread;
    if (!chosen)
      return html`<h1>${t.noThread}</h1>
        <a class="key solid" href="#/threads/find">${t.back}</a>`;
    const { job } = this.app;
    const thread = { ...chosen, starts: job.starts };
    const classId = classOf(thread, job.classId, job.side);
    const lead = mul(inBase(thread.pitch), job.starts);
    const major = majorLength(thread);
    const unit = unitOf(thread);
    return html`
      <h1>${marked(thread.designation)} ${classId ? classText(classId) : ''}</h1>
      ${job.starts > 1 ? html`<p class="label">${startsText(job.starts)}</p>` : nothing}
      <h2>${t.title}</h2>
      ${this.limits(thread, classId)} ${this.classKeys(thread)} ${this.basic(thread)}
      ${profileSection(thread, job.side)} ${toolSection(thread, job.side)} ${helixSection(thread, lead)}
      ${engagementSection(thread)} ${undercutSection(thread, major, unit)} ${endsSection(thread)}
      ${drillsSection(thread)} ${taperSection(thread)}
      <a class="key" href="#/threads">${t.back}</a>
    `;
  }
}
