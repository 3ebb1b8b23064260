import { html, nothing, css } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import { headline, headlineSheet, standingKey } from '../../elements/headline';
import { links } from '../../elements/links';
import { classOf, type Figure } from '../../core/figures';
import { classesOf, ownKey, type Thread } from '../../core/thread';
import { compare, decimalText, ratioText, roundTo, type Ratio, type Stated } from '../../core/quantity';
import { NOSE_KINDS, type Job } from '../../core/job';
import { decimal, mark, marked, showLead, statedText, threadName } from '../../text/numbers';
import {
  classText,
  drillName,
  familyText,
  handName,
  noseName,
  nutText,
  sideName,
  startsText,
  threadsText,
} from '../../text/threads';
import { firstRunText } from '../../text/first-run';
import { mistakeLinksAt } from '../../text/mistakes';
import { standingOf, standingWord } from '../../text/standing';
import { heldKey, limitsKey, measureKey } from '../../text/pages';
import type { App } from '../../state';
import { drawing } from './drawing';
import { trainRow } from './train-row';

/** Limits as a micrometer reads them: to 0.01 mm or a thou, rounded inwards; to the last digit where that is too coarse. */
const between = (min: Ratio | null, max: Ratio, unit: 'mm' | 'in'): string => {
  const coarse = unit === 'mm' ? 2 : 3;
  const fits = min === null || compare(roundTo(min, coarse, 'up'), roundTo(max, coarse, 'down')) < 0;
  const places = fits ? coarse : coarse + 1;
  const text = (r: Ratio, rule: 'up' | 'down') =>
    decimalText(r, { places, rule, mark: mark(), keepZeros: true });
  return min ? `${text(min, 'up')} – ${text(max, 'down')}` : text(max, 'down');
};

/** Threads: the thread on this machine, with everything needed to set up for it. */
@customElement('ls-threads')
export class ThreadsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    headlineSheet,
    css`
      :host {
        padding-block-end: 8px;
      }
      .nut {
        padding-block: 10px;
      }
      .nut .figure {
        display: block;
      }
      .ends {
        position: sticky;
        inset-block-end: 0;
        background: var(--paper);
        padding-block: 8px;
      }
      /* On a short screen the figures need the height; on a narrow one the keys would cover a row. */
      @media (max-height: 700px), (max-width: 340px) {
        .ends {
          position: static;
        }
      }
      .options .key {
        font-size: 1rem;
      }
    `,
  ];

  private pitchRows() {
    const pitch = this.app.sheet.get('pitch').value;
    const lead = this.app.sheet.get('lead').value;
    if (!pitch || !lead) return nothing;
    const p = showLead(pitch);
    const l = showLead(lead);
    const feed = this.app.sheet.get('chosen').value?.kind === 'feed';
    return html`<ls-row
        .label=${feed ? threadsText.feed : threadsText.pitch}
        .value=${p.mm}
        unit="mm"
        .note="${p.tpi} tpi"
        why="Why"
        figure="pitch"
      ></ls-row>
      ${
        this.app.job.starts > 1
          ? html`<ls-row
              .label=${threadsText.leadOf(this.app.job.starts)}
              .value=${l.mm}
              unit="mm"
              .note="${l.tpi} tpi"
              why="Why"
              figure="lead"
            ></ls-row>`
          : nothing
      }`;
  }

  private nut() {
    const f = this.app.sheet.get('nutRule');
    const { head, line } = nutText(f.value, this.app.profile?.threadDial === 'dial');
    return html`<ls-row .label=${threadsText.nut} .note=${line} why="Why" figure="nutRule"
      ><span class="figure">${head}</span></ls-row
    >`;
  }

  private lengthValue(mm: number): { value: string; unit: string } {
    const inches = this.app.settings.units === 'in';
    const text = inches ? (mm / 25.4).toFixed(4) : mm.toFixed(2);
    return { value: text.replace('.', mark()), unit: inches ? 'in' : 'mm' };
  }

  private depth(job: Job) {
    const f = this.app.sheet.get('depth');
    const sized = job.noseKind === 'radius' || job.noseKind === 'flat';
    const size = job.noseSize && sized ? ` ${statedText(job.noseSize)}` : '';
    const nose = job.noseKind ? `${noseName[job.noseKind]}${size}` : threadsText.noseNotKnown;
    const shown = f.value === null ? { value: threadsText.notKnown, unit: '' } : this.lengthValue(f.value);
    return html`<ls-row
      .label=${threadsText.depth}
      .value=${shown.value}
      .unit=${shown.unit}
      .note="${nose} · ${f.standing === 'over' ? this.unfit(f) : threadsText.depthRadial}"
      .standing=${f.standing ?? ''}
      .word=${f.standing ? standingWord[f.standing] : ''}
      why="Why"
      figure="depth"
    ></ls-row>`;
  }

  private unfit({ why: { terms } }: Figure<number>) {
    if (!terms.short) return threadsText.noseUnfit;
    const most = terms.largest?.amount;
    if (most?.kind !== 'approx') return threadsText.rootShort('');
    // Rounded down: a nose of the size shown still reaches.
    const step = this.app.settings.units === 'in' ? 0.0254 : 0.01;
    const { value, unit } = this.lengthValue(Math.floor(most.value / step) * step);
    return threadsText.rootShort(`${value} ${unit}`);
  }

  private blank(job: Job) {
    const f = this.app.sheet.get('blank');
    const label = job.side === 'external' ? threadsText.turnTo : threadsText.boreTo;
    if (!f.value) return this.unknownRow(label, f, 'blank');
    const { min, max, unit } = f.value;
    return html`<ls-row
      .label=${label}
      .value=${between(min, max, unit)}
      .unit=${unit}
      .note=${min ? (job.noseKind === 'full-form' ? threadsText.leaveOver : '') : threadsText.basicOnly}
      why="Why"
      figure="blank"
    ></ls-row>`;
  }

  private drill() {
    const f = this.app.sheet.get('drill');
    if (!f.value) return this.unknownRow(threadsText.drill, f, 'drill');
    const { name, kind, mm, percent } = f.value;
    return html`<ls-row
      .label=${threadsText.drill}
      .value=${drillName(kind, name)}
      .unit=${kind === 'metric' ? 'mm' : ''}
      .note=${`${kind === 'metric' ? '' : `${decimal(mm, 2)} mm · `}${threadsText.percentThread(percent.toFixed(0))}`}
      why="Why"
      figure="drill"
    ></ls-row>`;
  }

  private unknownRow(label: string, f: Figure<unknown>, figure: string) {
    const reason = f.why.notes.map((n) => (threadsText.whyNot as Readonly<Record<string, string>>)[n] ?? '');
    return html`<ls-row
      .label=${label}
      .value=${threadsText.notKnown}
      .note=${reason.join('')}
      why="Why"
      .figure=${figure}
    ></ls-row>`;
  }

  private ratioRow() {
    const r = this.app.sheet.get('stepsPerCount').value;
    const held = this.app.sheet.get('ratioHeld');
    const shown = r ? (r.pi ? `π × ${ratioText(r.mm)}` : ratioText(r.mm)) : threadsText.notKnown;
    const state = held.standing ?? 'unknown';
    const note = held.value
      ? held.value.exact
        ? threadsText.exact
        : threadsText.heldNearly(
            `${held.value.held.top}/${held.value.held.bottom}`,
            marked(held.value.ppm.toFixed(2).replace('-', '−')),
          )
      : threadsText.heldUnknown;
    return html`<ls-row
      .label=${threadsText.stepsPerCount}
      .value=${shown}
      .note=${note}
      .standing=${state}
      .word=${standingWord[state]}
      why="Why"
      figure="ratioHeld"
    ></ls-row>`;
  }

  private toggle<K extends keyof Job>(key: K, options: readonly { value: Job[K]; label: string }[]) {
    return html`<div class="keys options" role="group" aria-label=${threadsText[key as 'hand' | 'side']}>
      ${options.map(
        (o) =>
          html`<button
            class="key"
            aria-pressed=${this.app.job[key] === o.value}
            @click=${() => void this.app.jobs.change({ [key]: o.value, ...(key === 'side' ? { classId: null } : {}) })}
          >
            ${o.label}
          </button>`,
      )}
    </div>`;
  }

  private nose(job: Job) {
    return html`<div class="keys options" role="group" aria-label=${threadsText.nose}>
        ${NOSE_KINDS.map(
          (k) =>
            html`<button
              class="key"
              aria-pressed=${job.noseKind === k}
              @click=${() => void this.app.jobs.change({ noseKind: k })}
            >
              ${noseName[k]}
            </button>`,
        )}
      </div>
      ${
        job.noseKind === 'radius' || job.noseKind === 'flat'
          ? html`<a class="key" href="#/enter/job/noseSize"
              >${job.noseSize ? `${threadsText.noseSize} ${statedText(job.noseSize)}` : threadsText.noseEnter}</a
            >`
          : nothing
      }`;
  }

  private classes(thread: Thread, job: Job) {
    const classes = classesOf(thread);
    const offered = job.side === 'external' ? classes.external : classes.internal;
    const now = classOf(thread, job.classId, job.side);
    if (offered.length < 2) return nothing;
    return html`<h2 class="label">${threadsText.class}</h2>
      <div class="keys options" role="group" aria-label=${threadsText.class}>
        ${offered.map(
          (c) =>
            html`<button
              class="key"
              aria-pressed=${c === now}
              @click=${() => void this.app.jobs.change({ classId: c })}
            >
              ${classText(c)}
            </button>`,
        )}
      </div>`;
  }

  /** One of the person's own can be changed from here. */
  private ownLink(thread: Thread | null) {
    const key = thread && ownKey(thread.id);
    return key ? html`<a class="key left" href="#/threads/own/${key}">${threadsText.ownEdit}</a>` : nothing;
  }

  private chosenView(thread: Thread | null, pitch: Stated) {
    const { job } = this.app;
    const favourite = thread && this.app.settings.favourites.includes(thread.id);
    const classId = thread && classOf(thread, job.classId, job.side);
    const standing = this.app.sheet.get('speed').value?.standing ?? 'unknown';
    const kind = thread ? familyText(thread.family) : threadsText.barePitch;
    const about = [
      kind,
      classId && classText(classId),
      handName[job.hand].toLowerCase(),
      job.side === 'internal' ? sideName.internal.toLowerCase() : '',
    ]
      .filter(Boolean)
      .join(' · ');
    return html`
      <div>
        ${headline(threadName({ thread, pitch }))}
        <p class="label">${about}</p>
      </div>
      ${standingKey('#/speed', standing, ...standingOf(standing, job.rpm))}
      ${thread ? drawing(thread, job, this.app.sheet.get('depth').value) : nothing}
      <div>
        ${this.pitchRows()} ${this.nut()}
        ${thread ? html`${this.depth(job)} ${this.blank(job)} ${this.drill()}` : nothing}
        ${this.app.profile?.driveKind === 'change-gears' ? trainRow(this.app) : this.ratioRow()}
      </div>
      <div class="pair ends by-hand">
        <a class="key" href="#/threads/find">${threadsText.another}</a>
        <a class="key solid" href="#/speed">${threadsText.use}</a>
      </div>
      <h2 class="label">${threadsText.tool}</h2>
      ${thread ? this.nose(job) : nothing}
      ${this.toggle('hand', [
        { value: 'right', label: handName.right },
        { value: 'left', label: handName.left },
      ])}
      ${this.toggle('side', [
        { value: 'external', label: sideName.external },
        { value: 'internal', label: sideName.internal },
      ])}
      <a class="key" href="#/enter/job/starts">${startsText(job.starts)}</a>
      ${links(mistakeLinksAt('threads'))}
      <a class="key left" href="#/threads/held">${heldKey}</a>
      ${
        thread
          ? html`<a class="key left" href="#/threads/limits">${limitsKey}</a>
              <a class="key left" href="#/threads/measure">${measureKey}</a>`
          : nothing
      }
      ${thread ? this.classes(thread, job) : nothing} ${this.ownLink(thread)}
      ${
        thread
          ? html`<button
              class="key"
              aria-pressed=${favourite ? 'true' : 'false'}
              @click=${() => void this.app.toggleFavourite(thread.id)}
            >
              ${favourite ? threadsText.favouriteRemove : threadsText.favouriteAdd}
            </button>`
          : nothing
      }
    `;
  }

  override render() {
    const chosen = this.app.sheet.get('chosen').value;
    if (!chosen)
      return html`<h1>${threadsText.none}</h1>
        <p>${threadsText.noneHelp}</p>
        <div class="grow"></div>
        <a class="key solid big" href="#/threads/find">${threadsText.choose}</a>
        ${
          this.app.settings.choices.first === 'on'
            ? nothing
            : html`<a class="key" href="#/machine/first">${firstRunText.title}: ${firstRunText.about}</a>`
        }`;
    return this.chosenView(chosen.thread, chosen.pitch);
  }
}
