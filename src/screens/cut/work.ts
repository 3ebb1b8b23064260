import { html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import { blankBounds, judgeBounds } from '../../core/checks/bounds';
import { holdNotes, type HoldNote } from '../../core/cut/hold';
import type { CutPlan } from '../../core/cut/plan';
import { classOf } from '../../core/figures';
import {
  ENDINGS,
  HOLDINGS,
  INFEEDS,
  MATERIALS,
  NOSE_KINDS,
  TOOL_MATERIALS,
  type Infeed,
  type Job,
  type StatedJobField,
} from '../../core/job';
import { inBase, toNumber, type Ratio, type Stated } from '../../core/quantity';
import { classesOf, type Thread } from '../../core/thread';
import {
  angleText,
  endingName,
  holdingName,
  holdText,
  infeedHelp,
  infeedName,
  materialName,
  toolMaterialName,
  workText as t,
} from '../../text/cut-work';
import { choiceLabel, fieldText } from '../../text/machine';
import { decimal, marked, showStated, statedText } from '../../text/numbers';
import { classText, handName, noseName, sideName, threadsText } from '../../text/threads';
import { fieldUnitFor, unitLabel } from '../../text/units';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { jobKeys, jobNumber } from './job-lines';
import { line, lineSheet } from './line';

const CROSS = ['crossReads', 'crossDivision', 'crossDivisions'] as const;
const TOP = ['topScale', 'topDivision', 'topDivisions'] as const;

const mm = (s: Stated | null): number | null => s && toNumber(inBase(s));

/** Everything that a job is planned by: the thread, the work, the tool, the dials, the speed. */
@customElement('ls-cut-work')
export class WorkScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, ...lineSheet];

  private keys<K extends keyof Job>(
    key: K,
    label: string,
    options: readonly (Job[K] & string)[],
    name: (o: Job[K] & string) => string,
  ) {
    const heading = html`<h3 class="label" id="of-${key}">${label}</h3>`;
    return jobKeys(this.app, key, heading, options, name);
  }

  private number(key: StatedJobField, label: string, notes: readonly string[] = []) {
    return jobNumber(this.app, key, label, notes);
  }

  private thread(thread: Thread | null) {
    const { job } = this.app;
    const pitch = this.app.sheet.get('chosen').value?.pitch;
    const classes = thread && classesOf(thread)[job.side];
    const now = thread && classOf(thread, job.classId, job.side);
    return html`<h2>${t.thread}</h2>
      <div>
        ${line({
          label: t.designation,
          href: '#/threads/find',
          value: thread ? marked(thread.designation) : pitch ? statedText(pitch) : t.none,
          open: !pitch,
        })}
      </div>
      ${
        classes && classes.length > 1
          ? html`<h3 class="label">${threadsText.class}</h3>
              <div class="keys" role="group" aria-label=${threadsText.class}>
                ${classes.map(
                  (c) =>
                    html`<button
                      class="key"
                      aria-pressed=${c === now}
                      @click=${() => void this.app.jobs.change({ classId: c })}
                    >
                      ${classText(c)}
                    </button>`,
                )}
              </div>`
          : nothing
      }
      ${this.keys('side', t.side, ['external', 'internal'], (o) => sideName[o])}
      ${this.keys('hand', t.hand, ['right', 'left'], (o) => handName[o])}
      <div>${line({ label: t.starts, href: '#/enter/job/starts', value: `${job.starts}` })}</div>`;
  }

  /** The blank between its limits, and what one that isn't leads to. */
  private blank() {
    const { job, sheet } = this.app;
    const inside = job.side === 'internal';
    const wanted = sheet.get('blank').value;
    const bounds = blankBounds(sheet);
    const found = job.blank && bounds ? judgeBounds(inBase(job.blank), bounds) : null;
    const text = (r: Ratio, rule: 'up' | 'down') => decimal(r, wanted?.unit === 'in' ? 4 : 3, rule);
    const between = wanted
      ? t.wanted(
          `${wanted.min ? `${text(wanted.min, 'up')} – ` : ''}${text(wanted.max, 'down')} ${wanted.unit}`,
        )
      : '';
    const why =
      found?.why === 'reading-high'
        ? inside
          ? t.boreTooLarge
          : t.tooLarge
        : found?.why === 'reading-low'
          ? inside
            ? t.boreTooSmall
            : t.tooSmall
          : '';
    return line({
      label: inside ? t.bore : t.blank,
      href: '#/enter/job/blank',
      value: job.blank ? showStated(job.blank).value : t.notKnown,
      unit: job.blank ? unitLabel[job.blank.unit] : '',
      open: !job.blank,
      standing: job.blank && bounds ? (found?.standing ?? 'unknown') : null,
      notes: [why, between, wanted && !wanted.min ? t.noLimits : ''],
    });
  }

  private get holding(): readonly HoldNote[] {
    const { job } = this.app;
    const major = this.app.sheet.get('chosen').value?.thread?.major ?? null;
    const length = mm(job.length);
    // Gap or groove stands out beside the thread; what isn't known adds nothing to what is so at the least.
    const beside = Math.max(mm(job.gap) ?? 0, mm(job.groove) ?? 0);
    return holdNotes({
      holding: job.holding,
      diameter: job.side === 'external' ? (mm(job.blank) ?? mm(major)) : null,
      out: length === null ? null : length + beside,
    });
  }

  private work() {
    const { job } = this.app;
    return html`<h2>${t.work}</h2>
      <div>
        ${line({
          label: t.material,
          href: '#/cut/work/material',
          value: job.material ? materialName[job.material] : t.notChosen,
          open: !job.material,
        })}
        ${this.blank()} ${this.number('length', t.length)}
      </div>
      ${this.keys('ending', t.ending, ENDINGS, (o) => endingName[o])}
      <a class="key left" href="#/cut/stop">${t.endingMore}</a>
      ${this.keys('holding', t.holding, HOLDINGS, (o) => holdingName[o])}
      ${this.holding.map((n) => html`<p class="note">${holdText(n)}</p>`)}
      ${job.side === 'internal' ? html`<a class="key left" href="#/cut/ways">${t.bar}</a>` : nothing}`;
  }

  private get plan(): CutPlan | null {
    return this.app.sheet.get('plan').value;
  }
  /** As chosen; else as the plan takes it. */
  private get infeed(): Infeed | null {
    return this.app.job.infeed ?? this.plan?.infeed ?? null;
  }

  private tool() {
    const { job } = this.app;
    const sized = job.noseKind === 'radius' || job.noseKind === 'flat';
    const { plan, infeed } = this;
    return html`<h2>${t.tool}</h2>
      ${this.keys('toolMaterial', t.toolMaterial, TOOL_MATERIALS, (o) => toolMaterialName[o])}
      ${this.keys('noseKind', t.nose, NOSE_KINDS, (o) => noseName[o])}
      ${sized ? html`<div>${this.number('noseSize', t.noseSize)}</div>` : nothing}
      ${this.keys('infeed', t.infeed, INFEEDS, (o) => infeedName[o])}
      <p class="note">
        ${job.infeed ? infeedHelp[job.infeed]() : plan ? t.infeedUsual(infeedName[plan.infeed]) : t.infeedOpen}
      </p>
      ${
        infeed === 'flank' || infeed === 'modified-flank'
          ? html`<div>
              ${this.number('topSlide', t.topSlide(), [
                t.topAsScale,
                plan && plan.scale !== null && !job.topSlide ? t.topUsual(angleText(plan.scale)) : '',
              ])}
            </div>`
          : nothing
      }`;
  }

  private dials() {
    const m = this.app.profile;
    if (!m) return nothing;
    const { infeed } = this;
    // A flank is cut by the top slide alone, straight in by the cross-slide; while neither is certain both are shown.
    const asked =
      infeed === 'radial'
        ? CROSS
        : infeed === 'flank' || infeed === 'modified-flank'
          ? [...TOP, ...CROSS]
          : [...CROSS, ...TOP];
    return html`<h2>${t.dials}</h2>
      <div>
        ${asked.map((f) => {
          const value = m[f];
          const text =
            value === null
              ? t.notKnown
              : typeof value === 'string'
                ? choiceLabel(f, value)
                : showStated(value).value;
          return line({
            label: fieldText[f].label,
            href: `#/machine/field/${f}`,
            value: text,
            unit: value === null || typeof value === 'string' ? '' : fieldUnitFor(f, value),
            open: value === null,
          });
        })}
      </div>`;
  }

  private materials() {
    return html`<h1>${t.materialTitle}</h1>
      <div class="stack">
        ${MATERIALS.map(
          (m) =>
            html`<button
              class="key left"
              aria-pressed=${this.app.job.material === m}
              @click=${() => {
                void this.app.jobs.change({ material: m });
                location.replace('#/cut/work');
              }}
            >
              ${materialName[m]}
            </button>`,
        )}
      </div>
      <a class="key" href="#/cut/work">${t.materialBack}</a>`;
  }

  override render() {
    if (this.path[1] === 'material') return this.materials();
    const thread = this.app.sheet.get('chosen').value?.thread ?? null;
    const { rpm } = this.app.job;
    return html`<h1>${t.title}</h1>
      ${this.thread(thread)} ${this.work()} ${this.tool()} ${this.dials()}
      <h2>${t.speed}</h2>
      <div>
        ${line({
          label: t.rpm,
          href: '#/speed',
          value: rpm ? decimal(rpm, 1) : t.notChosen,
          unit: rpm ? 'rpm' : '',
          open: !rpm,
        })}
      </div>
      ${links(mistakeLinksAt('cut/work'))}
      <a class="key left" href="#/cut/ways">${t.ways}</a>
      <a class="key" href="#/cut">${t.back}</a>`;
  }
}
