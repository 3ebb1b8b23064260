import { css, html, nothing } from 'lit';
import { customElement } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import type { KeepClosed } from '../../core/cut';
import {
  alongTheBed,
  byCounts,
  byNut,
  byTopSlide,
  slotAngle,
  slotError,
  turnAfter,
  turnBefore,
  type Turn,
} from '../../core/cut/starts';
import type { Holding } from '../../core/job';
import { div, inBase, leadNumber, type Lead } from '../../core/quantity';
import { plain, significant, whole } from '../../text/numbers';
import { nutPage, startsPage as t } from '../../text/nut';
import { turnOf } from '../../core/run/progress';
import { pathLabel } from '../../text/paths';
import type { App } from '../../state';
import { errorText, keep, kept, lengthText } from './nut-kept';

const WAYS = ['counts', 'top', 'nut', 'slots'] as const;
type Way = (typeof WAYS)[number];
const TURN = 'cut.start';
const WAY = 'cut.way';

/** Work that a faceplate drives, so that it can be moved on by a slot. */
const SLOTTED: readonly Holding[] = ['between-centres', 'faceplate'];

/** Why a nut that stays closed while the spindle turns may still be moved along with all at rest. */
const AT_REST: readonly KeepClosed[] = ['no-dial', 'gear-misses', 'no-line'];

/** What has to be set for one start, how far off that is, and what else is to be said of it. */
interface Setting {
  readonly start: number;
  readonly value: string;
  readonly notes: readonly string[];
}
interface Shown {
  readonly how: readonly string[];
  readonly settings: readonly Setting[];
  /** Fields to be entered for more. */
  readonly missing: readonly ('topDivision' | 'topDivisions' | 'topScale')[];
}

/** A thread of several starts: which comes next, and what brings the tool from one into the other. */
@customElement('ls-nut-starts')
export class NutStartsScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    css`
      .now {
        border-inline-start: 8px solid var(--ink);
        padding-inline-start: 10px;
      }
    `,
  ];

  /** The turn by the run that is open, which counts what was taken; null where none is. */
  private get ofRun(): Turn | null {
    const run = this.app.runs.current?.run;
    return run && run.job.starts === this.app.job.starts ? turnOf(run) : null;
  }

  private get turn(): Turn {
    const { ofRun } = this;
    if (ofRun) return ofRun;
    const [round = NaN, start = NaN] = (kept(this.app, TURN) ?? '').split('.').map(Number);
    const fits = Number.isInteger(round) && Number.isInteger(start) && round > 0 && start > 0;
    return fits && start <= this.app.job.starts ? { round, start } : { round: 1, start: 1 };
  }
  private toTurn({ round, start }: Turn): void {
    keep(this.app, TURN, `${round}.${start}`);
  }

  private get counts() {
    return this.app.sheet.get('countsPerRev').value;
  }
  private get way(): Way {
    const usual = this.counts ? 'counts' : 'top';
    return WAYS.find((w) => w === kept(this.app, WAY)) ?? usual;
  }

  private off(um: number): string {
    return Math.abs(um) < 1e-6 ? t.on : t.off(errorText(this.app, um));
  }

  private byCounts(lead: Lead): Shown {
    const { counts } = this;
    const { starts } = this.app.job;
    if (!counts) return { how: [t.noCounts], settings: [], missing: [] };
    return {
      how: [t.countsHow(plain(counts))],
      settings: byCounts({ lead, starts }, counts).map(({ start, exact, nearest, off }) => ({
        start,
        value: whole(nearest),
        notes: exact.d === 1n ? [t.on] : [t.exact(plain(exact)), this.off(off)],
      })),
      missing: [],
    };
  }

  private byTop(lead: Lead): Shown {
    const m = this.app.profile;
    const { starts } = this.app.job;
    const division = m?.topDivision ? inBase(m.topDivision) : null;
    const perTurn = m?.topDivisions ? Number(m.topDivisions.value.n) : null;
    const angle = m?.topScale ? t.topAngle(`${alongTheBed(m.topScale)}°`) : '';
    return {
      how: [t.topHow(angle), ...(angle ? [] : [t.topScaleUnknown]), t.topBacklash, t.topInfeed],
      settings: byTopSlide({ lead, starts }, division && { division, perTurn }).map(({ start, mm, dial }) => {
        const along = lengthText(this.app, mm, 5);
        if (!dial) return { start, value: along, notes: [] };
        const divisions = t.divisions(whole(dial.divisions));
        const turned = dial.turns ? t.turns(whole(dial.turns), t.divisions(whole(dial.past))) : '';
        return { start, value: turned || divisions, notes: [turned && divisions, along, this.off(dial.off)] };
      }),
      missing: [
        ...(m?.topScale ? [] : (['topScale'] as const)),
        ...(division ? [] : (['topDivision'] as const)),
        ...(perTurn ? [] : (['topDivisions'] as const)),
      ],
    };
  }

  private byNut(lead: Lead): Shown {
    const m = this.app.profile;
    const rule = this.app.sheet.get('nutRule').value;
    const screw = this.app.sheet.get('screwLead').value;
    const { starts } = this.app.job;
    const inStep = rule?.kind !== 'keep-closed' || AT_REST.includes(rule.reason);
    if (!rule || !inStep || !screw || !m?.screwStarts) return { how: [t.noNut], settings: [], missing: [] };
    const dial =
      m.threadDial === 'dial' && m.dialTeeth && m.dialLines
        ? { teeth: Number(m.dialTeeth.value.n), lines: Number(m.dialLines.value.n) }
        : null;
    const all = byNut({ lead, starts }, div(screw, m.screwStarts.value), dial) ?? [];
    const never = all.filter((s) => s.pitches === null).map((s) => t.startNo(s.start));
    return {
      how: never.length
        ? [t.nutNeverWhy(never, whole(rule.b ?? 0n))]
        : [t.nutHow, ...(rule.kind === 'keep-closed' ? [t.nutAtRest] : [])],
      settings: never.length
        ? []
        : all.map(({ start, pitches, lines }) => ({
            start,
            value: t.pitches(whole(pitches ?? 0n)),
            notes: [lines.length > 0 && lines.length < 9 ? t.nutOrLine(lines.join(' ')) : ''],
          })),
      missing: [],
    };
  }

  private bySlots(lead: Lead): Shown {
    const { starts, holding } = this.app.job;
    if (holding && !SLOTTED.includes(holding)) return { how: [t.slotsNot], settings: [], missing: [] };
    const angle = slotAngle(starts);
    const off = slotError(leadNumber(lead), 0.1, 60);
    return {
      how: [
        t.slotsHow(starts, `${plain(angle)}°`),
        off === null ? '' : t.slotsOff(errorText(this.app, off)),
      ].filter(Boolean),
      settings: Array.from({ length: starts }, (_, i) => ({
        start: i + 1,
        value: `${significant(i * (360 / starts), 6)}°`,
        notes: [],
      })),
      missing: [],
    };
  }

  private shown(lead: Lead): Shown {
    switch (this.way) {
      case 'counts':
        return this.byCounts(lead);
      case 'top':
        return this.byTop(lead);
      case 'nut':
        return this.byNut(lead);
      case 'slots':
        return this.bySlots(lead);
    }
  }

  private now(turn: Turn, setting: Setting | undefined) {
    const { starts } = this.app.job;
    const begun = turn.round > 1 || turn.start > 1;
    return html`<p class="label">${t.round(turn.round)}</p>
      <p class="deciding">${t.start(turn.start, starts)}</p>
      ${
        setting && turn.start > 1
          ? html`<div>
              <ls-row
                .label=${t.ways[this.way]}
                .value=${setting.value}
                .note=${setting.notes.filter(Boolean).join(' · ')}
              ></ls-row>
            </div>`
          : nothing
      }
      <p>${turn.start > 1 ? t.same : turn.round > 1 ? t.deeper : t.order(starts)}</p>
      ${this.ofRun ? html`<a class="key solid big" href="#/cut/pass">${t.toPass}</a>` : this.turnKeys(turn, begun)}`;
  }

  /** With no run open, a person counts the starts here. */
  private turnKeys(turn: Turn, begun: boolean) {
    const { starts } = this.app.job;
    return html`<button class="key solid big" @click=${() => this.toTurn(turnAfter(turn, starts))}>
        ${t.next}
      </button>
      ${
        begun
          ? html`<button class="key" @click=${() => this.toTurn(turnBefore(turn, starts))}>
              ${t.backOne}
            </button>`
          : nothing
      }
      <p class="note">${t.keptNote}</p>`;
  }

  override render() {
    const { app } = this;
    const { starts } = app.job;
    const lead = app.sheet.get('lead').value;
    const back = html`<a class="key" href="#/cut/nut">${nutPage.backNut}</a>`;
    const chosen = app.sheet.get('chosen').value;
    if (!lead || !chosen || chosen.kind === 'feed' || starts < 2)
      return html`<h1>${t.title}</h1>
        <p>${!lead || !chosen ? nutPage.noThread : chosen.kind === 'feed' ? t.feed : t.one}</p>
        ${back}`;
    const { turn, way } = this;
    const { how, settings, missing } = this.shown(lead);
    return html`<h1>${t.title}</h1>
      ${this.now(turn, settings[turn.start - 1])}
      <h2>${t.way}</h2>
      <p>${t.oneWay}</p>
      <div class="pair" role="group" aria-label=${t.way}>
        ${WAYS.map(
          (w) =>
            html`<button class="key" aria-pressed=${way === w} @click=${() => keep(app, WAY, w)}>
              ${t.ways[w]}
            </button>`,
        )}
      </div>
      ${how.map((line) => html`<p>${line}</p>`)}
      <div>
        ${settings.map(
          ({ start, value, notes }) =>
            html`<ls-row
              class=${start === turn.start ? 'now' : ''}
              .label=${start === turn.start ? t.startNow(start) : t.startNo(start)}
              .value=${value}
              .note=${start === 1 ? t.first : notes.filter(Boolean).join(' · ')}
            ></ls-row>`,
        )}
      </div>
      ${missing.map(
        (f) =>
          html`<a class="key left" href="#/machine/field/${f}"
            >${nutPage.enter(pathLabel(`machine.${f}`))}</a
          >`,
      )}
      ${
        this.ofRun
          ? nothing
          : html`<button class="key apart" @click=${() => this.toTurn({ round: 1, start: 1 })}>
              ${t.afresh}
            </button>`
      }
      ${back}`;
  }
}
