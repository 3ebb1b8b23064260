import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { links } from '../../elements/links';
import '../../elements/row';
import { WhyEvent } from '../../elements/row';
import '../../elements/standing';
import '../../elements/stop-drawing';
import type { InputPath } from '../../core/context';
import { namedGrooves, type NamedGroove } from '../../core/cut/fits';
import { leadingSide, travelAt } from '../../core/cut/stop';
import {
  MARGIN_NONE,
  roomFrom,
  roomOf,
  standingOf,
  type FigureValues,
  type Standing,
} from '../../core/figures';
import { inputAt } from '../../core/context';
import {
  ENDINGS,
  INFEEDS,
  JOB_FIELDS,
  type Job,
  type JobFieldName,
  type StatedJobField,
} from '../../core/job';
import { equal, inBase, ratio, stated, toNumber, type Ratio } from '../../core/quantity';
import { bothAngles } from '../../core/thread/groove';
import { grooveNames, mmText, stopText as t, wholeName } from '../../text/cut-stop';
import { endingName, infeedName } from '../../text/cut-work';
import { fieldText } from '../../text/machine';
import { decimal, showStated, statedText, whole } from '../../text/numbers';
import { standingWord } from '../../text/standing';
import { unitLabel } from '../../text/units';
import { noteText, pathLabel } from '../../text/why';
import type { NoteCode } from '../../text/why-notes';
import { mistakeLinksAt } from '../../text/mistakes';
import type { App } from '../../state';
import { jobKeys, jobNumber } from './job-lines';
import { line, lineSheet } from './line';
import { dummyPage } from './stop-dummy';
import { fitsOf } from './stop-fits';
import { fadesOf, othersOf } from './stop-others';
import { shapeText, stopShape } from './stop-picture';

/** Where a missing figure is entered; null: chosen further down on this page. */
const entryOf = (path: InputPath): string | null => {
  const [room = '', key = ''] = path.split('.');
  if (room === 'machine') return `#/machine/field/${key}`;
  if (key === 'thread') return '#/threads/find';
  if (key === 'noseKind') return '#/cut/work';
  return Object.hasOwn(JOB_FIELDS, key) ? `#/enter/job/${key as JobFieldName}` : null;
};

/** The room to stop in, to scale: how fast it lets the spindle turn, what comes off it, and what would fit. */
@customElement('ls-cut-stop')
export class StopScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    ...lineSheet,
    css`
      .run {
        flex-direction: column;
        font-size: var(--t-figure);
      }
      .run small {
        font-size: var(--t-label);
        font-weight: 400;
      }
      .verdict {
        display: flex;
        align-items: flex-start;
        justify-content: space-between;
        gap: var(--gap);
      }
      .verdict > :first-child {
        flex: 1;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .fit {
        padding-block: 10px;
      }
      .fit strong,
      .fit small {
        display: block;
        font-size: var(--t-label);
      }
      .fit small {
        color: var(--ink-2);
      }
    `,
  ];

  private get grooves(): readonly NamedGroove[] {
    const thread = this.app.sheet.get('chosen').value?.thread;
    return thread ? namedGrooves(thread, this.app.job.side) : [];
  }

  /** Travel at the speed set, with the factor and without; null while something it needs isn't known. */
  private get travel(): { readonly counted: Ratio; readonly plain: Ratio } | null {
    const lead = this.app.sheet.get('lead').value;
    const { rpm } = this.app.job;
    const { wholeStopTime: time, safetyFactor: factor } = this.app.profile ?? {};
    if (!lead || !rpm || !time || !factor) return null;
    const plain = travelAt(lead, rpm, inBase(time));
    return { plain, counted: travelAt(lead, rpm, inBase(time), inBase(factor)) };
  }

  private get standing(): Standing | null {
    const { rpm } = this.app.job;
    const room = this.app.sheet.get('stopRoom').value?.room;
    if (!rpm) return null;
    const { travel } = this;
    if (!room || !travel) return 'unknown';
    return room.usable ? standingOf(travel.counted, room.usable, MARGIN_NONE) : 'over';
  }

  private missing(paths: readonly InputPath[]) {
    return html`<h2 class="label">${t.missing}</h2>
      <div class="stack">
        ${paths.map((p) => {
          const href = entryOf(p);
          return href
            ? html`<a class="key left" href=${href}>${pathLabel(p)}</a>`
            : html`<p class="unknown">${t.below(pathLabel(p))}</p>`;
        })}
      </div>`;
  }

  private headline() {
    const figure = this.app.sheet.get('stopSpeed');
    const room = this.app.sheet.get('stopRoom').value?.room;
    const rpm = figure.value;
    const ask = () => this.dispatchEvent(new WhyEvent('stopSpeed'));
    return html`<div>
        <h1 class="label">${t.highest}</h1>
        ${
          rpm === null
            ? html`<p class="figure unknown">${t.notKnown}</p>
                ${figure.missing.length === 0 ? figure.why.notes.map((n) => html`<p>${noteText[n as NoteCode]}</p>`) : nothing}
                ${room && !room.usable ? html`<p class="over"><strong>${t.none}</strong></p>` : nothing}`
            : rpm > 0n
              ? html`<p><span class="deciding">${whole(rpm)}</span> <span class="unit">rpm</span></p>`
              : html`<p class="figure over">${room?.usable ? t.noneSlow : t.none}</p>`
        }
      </div>
      <div class="verdict">
        ${this.atSet()}
        ${rpm === null ? nothing : html`<button class="key quiet" @click=${ask}>${t.why}</button>`}
      </div>
      ${figure.missing.length > 0 ? this.missing(figure.missing) : nothing}`;
  }

  private atSet() {
    const { rpm } = this.app.job;
    const { standing, travel } = this;
    if (!rpm || !standing)
      return html`<a class="key left" href="#/enter/job/rpm">${t.noRpm}: ${t.setRpm.toLowerCase()}</a>`;
    const factor = this.app.profile?.safetyFactor;
    return html`<div role="status">
      <ls-standing .standing=${standing} .word=${standingWord[standing]}
        >${t.at(decimal(rpm, 1))}</ls-standing
      >
      ${
        travel && factor
          ? html`<p>
              ${t.travels(decimal(travel.counted, 2, 'up'), decimal(factor.value, 2), decimal(travel.plain, 2, 'up'))}
            </p>`
          : nothing
      }
    </div>`;
  }

  private picture(at: FigureValues['stopRoom']) {
    const shape = stopShape(at, this.app.job, this.travel?.counted ?? null);
    return html`<ls-stop-drawing .shape=${shape} .text=${shapeText(shape)}></ls-stop-drawing>`;
  }

  private reckoning({ place, room }: FigureValues['stopRoom']) {
    const shoulder = room.from === 'run-out' ? 0 : place.shoulder ? toNumber(place.shoulder) : 0;
    const { leading } = bothAngles(place.half);
    const one = (deg: number) => decimal(ratio(BigInt(Math.round(deg * 100)), 100), 2);
    return html`<div>
      <ls-row .label=${wholeName[room.from]} .value=${decimal(room.whole, 3)} unit="mm"></ls-row>
      <ls-row
        .label=${t.rows.tool}
        .value=${`− ${mmText(leadingSide(place.depth + shoulder, place.half))}`}
        unit="mm"
        .note=${t.rows.toolNote(mmText(place.depth + shoulder), one(leading))}
      ></ls-row>
      <ls-row
        .label=${t.rows.creep}
        .value=${`− ${mmText(room.creep)}`}
        unit="mm"
        .note=${room.creep > 0 ? t.rows.creepNote(mmText(place.depth), one(place.infeed)) : t.rows.noCreep}
      ></ls-row>
      <ls-row
        .label=${t.rows.margin}
        .value=${`− ${mmText(room.margin)}`}
        unit="mm"
        .note=${room.margin > 0 ? t.rows.marginNote : t.rows.noMargin}
      ></ls-row>
      <ls-row
        .label=${t.rows.usable}
        .value=${room.usable ? decimal(room.usable, 3, 'down') : t.rows.nothing}
        .unit=${room.usable ? 'mm' : ''}
        .standing=${room.usable ? '' : 'over'}
        why="Why"
        figure="stopRoom"
      ></ls-row>
    </div>`;
  }

  /** The room becomes the job's, with what it was worked out from. */
  private take() {
    const { job, sheet } = this.app;
    const usable = sheet.get('stopRoom').value?.room.usable ?? null;
    const holds = roomOf(sheet.inputs);
    const own = job.room && statedText(job.room);
    const taken = holds && job.roomFrom !== null && usable && equal(inBase(holds), usable);
    const words = !own
      ? t.noRoom
      : !holds
        ? t.lapsed(own)
        : job.roomFrom === null
          ? t.typed(own)
          : t.taken(own);
    return html`<p class=${own && !holds ? 'over' : 'note'} role="status">${words}</p>
      ${
        usable && !taken
          ? html`<button
              class="key big solid"
              @click=${() =>
                void this.app.jobs.change({
                  room: stated(usable, 'mm'),
                  roomFrom: roomFrom((path) => inputAt(sheet.inputs, path)),
                })}
            >
              ${t.take(decimal(usable, 3))}
            </button>`
          : nothing
      }
      <a class="key left" href="#/enter/job/room">${t.typeIt}</a>`;
  }

  private keys<K extends keyof Job>(
    key: K,
    label: string,
    options: readonly (Job[K] & string)[],
    name: (o: Job[K] & string) => string,
  ) {
    const heading = html`<h2 class="label" id="of-${key}">${label}</h2>`;
    return jobKeys(this.app, key, heading, options, name);
  }

  private number(key: StatedJobField, label: string, notes: readonly string[] = []) {
    return jobNumber(this.app, key, label, notes);
  }

  private groove() {
    const { job } = this.app;
    const { grooves } = this;
    const now = job.groove && inBase(job.groove);
    const is = (g: NamedGroove): boolean => now !== null && equal(now, g.floor);
    const named = grooves.filter(is).map((g) => grooveNames[g.id]);
    return html`<h2 class="label">${t.groove}</h2>
      <div class="keys">
        ${grooves.map(
          (g) =>
            html`<button
              class="key"
              aria-pressed=${is(g)}
              @click=${() => void this.app.jobs.change({ groove: stated(g.floor, 'mm') })}
            >
              ${grooveNames[g.id]}: ${decimal(g.floor, 3)} mm
            </button>`,
        )}
      </div>
      <p class="note">
        ${grooves.length === 0 ? t.grooveOther : job.side === 'internal' ? t.grooveInside : t.grooveHelp}
      </p>
      <div>${this.number('groove', t.grooveWidth, named.length ? [t.isNamed(named.join(', '))] : [])}</div>`;
  }

  private direction() {
    const { job, profile } = this.app;
    const chuck = profile?.chuckMount ?? null;
    const set = (outwards: boolean) => () => void this.app.jobs.change({ outwards, gap: null });
    return html`<h2 class="label" id="of-way">${t.outwards}</h2>
      <div class="keys" role="group" aria-labelledby="of-way">
        <button class="key" aria-pressed=${!job.outwards} @click=${set(false)}>${t.towards}</button>
        ${
          chuck === 'locked' || job.outwards
            ? html`<button
                class="key ${chuck === 'locked' ? '' : 'dashed'}"
                aria-pressed=${job.outwards}
                @click=${set(true)}
              >
                ${t.away}
              </button>`
            : nothing
        }
      </div>
      <p class=${job.outwards && chuck !== 'locked' ? 'over' : 'note'}>
        ${chuck === 'locked' ? t.awayHelp : chuck === 'screw-on' ? t.awayNever : t.awayAsk}
      </p>
      ${chuck === null ? html`<a class="key left" href="#/machine/field/chuckMount">${t.askChuck}</a>` : nothing}`;
  }

  private choices() {
    const { job } = this.app;
    const byTop = job.infeed === 'flank' || job.infeed === 'modified-flank';
    const shoulder = job.ending !== null && job.ending !== 'through' && !job.outwards;
    const gap = job.outwards || (job.ending !== null && job.ending !== 'groove');
    return html`${this.keys('ending', t.ending, ENDINGS, (o) => endingName[o])}
      ${job.ending === 'groove' && !job.outwards ? this.groove() : nothing}
      <div>
        ${gap ? this.number('gap', t.gap[job.outwards || job.ending === 'groove' ? 'outwards' : (job.ending ?? 'through')]) : nothing}
        ${shoulder ? this.number('shoulder', t.shoulder, [t.shoulderHelp]) : nothing}
      </div>
      ${this.keys('infeed', t.infeed, INFEEDS, (o) => infeedName[o])}
      ${byTop ? html`<div>${this.number('topSlide', t.topSlide())}</div>` : nothing} ${this.direction()}`;
  }

  override render() {
    if (this.path[1] === 'dummy') return dummyPage(this.app);
    const chosen = this.app.sheet.get('chosen').value;
    const at = this.app.sheet.get('stopRoom').value;
    const time = this.app.profile?.wholeStopTime ?? null;
    return html`${this.headline()} ${at ? this.picture(at) : nothing}
      ${chosen && !chosen.thread ? html`<p class="unknown">${t.noForm}</p>` : nothing}
      ${at ? this.reckoning(at) : nothing} ${this.take()} ${at ? fitsOf(this.app, at, this.grooves) : nothing}
      ${this.choices()} ${at ? fadesOf(this.app, at) : nothing}
      <h2>${t.time}</h2>
      <div>
        ${line({
          label: fieldText.wholeStopTime.label,
          href: '#/machine/field/wholeStopTime',
          value: time ? showStated(time).value : t.notKnown,
          unit: time ? unitLabel[time.unit] : '',
          open: !time,
        })}
      </div>
      <a class="key left" href="#/cut/stop/dummy">${t.dummy}</a>
      ${othersOf(this.app)} ${links(mistakeLinksAt('cut/stop'))}
      <h2>${t.cautions}</h2>
      ${t.caution.map((c) => html`<p>${c}</p>`)}
      <a class="key" href="#/cut">${t.back}</a>`;
  }
}
