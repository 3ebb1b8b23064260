import { css, html, nothing } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { headline, headlineSheet } from '../../elements/headline';
import { ScreenElement } from '../../elements/screen';
import { phaseState, type PhaseState } from '../../core/checks';
import type { PlannedPass } from '../../core/cut/pass';
import { beginNeeds, type BeginNeed } from '../../core/run/begin';
import { classOf, roomOf } from '../../core/figures';
import type { Chosen } from '../../core/figures';
import type { Run } from '../../core/run';
import { cutNumber, cutsInAll } from '../../core/run/progress';
import { cutText as t, needText } from '../../text/cut';
import { angleText, holdingName, infeedName, materialName, toolMaterialName } from '../../text/cut-work';
import { mistakesText } from '../../text/mistakes';
import { pathLabel } from '../../text/paths';
import { noteText } from '../../text/why-notes';
import { decimal, keptName, marked, showStated, statedText, threadName, whole } from '../../text/numbers';
import {
  classText,
  familyText,
  handName,
  noseName,
  nutText,
  sideName,
  startsText,
  threadsText,
} from '../../text/threads';
import { timeOf } from '../../text/time';
import { unitLabel } from '../../text/units';
import type { App } from '../../state';
import { line, lineSheet } from './line';

/** Where a person sees to what is missing. */
const NEED_AT: Readonly<Record<BeginNeed, string>> = {
  plan: '#/cut/plan',
  'speed-not-set': '#/speed',
  'speed-over': '#/speed',
  'speed-unknown': '#/speed',
  'checks-failed': '#/checks',
  checks: '#/checks',
};

/** What the thread is called, or the pitch typed by hand. */

/** Cut: the thread, what is planned for it, what is still missing, and the way into the cut. */
@customElement('ls-cut')
export class CutScreen extends ScreenElement<App> {
  static override styles = [
    ...ScreenElement.styles,
    ...lineSheet,
    headlineSheet,
    css`
      .begin {
        flex-direction: column;
        gap: 4px;
      }
      .begin small {
        font-size: var(--t-label);
        font-weight: 400;
      }
    `,
  ];

  @state() private beginning = false;
  @state() private trouble = '';

  private heading(chosen: Chosen) {
    const { job } = this.app;
    const { thread } = chosen;
    const classId = thread && classOf(thread, job.classId, job.side);
    const about = [
      thread ? familyText(thread.family) : threadsText.barePitch,
      classId && classText(classId),
      handName[job.hand].toLowerCase(),
      job.side === 'internal' ? sideName.internal.toLowerCase() : '',
      job.starts > 1 ? startsText(job.starts) : '',
    ];
    return html`<div>
      ${headline(threadName(chosen))}
      <p class="label">${about.filter(Boolean).join(' · ')}</p>
    </div>`;
  }

  private work() {
    const { job } = this.app;
    const size = job.noseSize && (job.noseKind === 'radius' || job.noseKind === 'flat');
    const tool = [
      job.toolMaterial && toolMaterialName[job.toolMaterial],
      job.noseKind &&
        `${noseName[job.noseKind]}${size && job.noseSize ? ` ${statedText(job.noseSize)}` : ''}`,
    ];
    const work = [
      job.length && t.long(statedText(job.length)),
      job.holding && holdingName[job.holding].toLowerCase(),
    ];
    const notes = [...work, ...tool].filter(Boolean).join(' · ');
    return line({
      label: t.rows.work,
      href: '#/cut/work',
      value: job.material ? materialName[job.material] : t.notKnown,
      open: !job.material,
      notes: [notes || t.workOpen],
    });
  }

  private stop() {
    const { room: kept } = this.app.job;
    const room = roomOf(this.app.sheet.inputs);
    const speed = this.app.sheet.get('speed').value;
    const highest = speed?.job.highest ?? null;
    const at = speed?.atSet?.find((x) => x.limit.id === 'stopping-room')?.standing ?? null;
    return line({
      label: t.rows.stop,
      href: '#/cut/stop',
      value: room ? showStated(room).value : t.notKnown,
      unit: room ? unitLabel[room.unit] : '',
      open: !room,
      standing: room ? at : null,
      notes: [
        kept && !room ? t.roomLapsed : '',
        highest === null ? t.highestUnknown : t.highest(whole(highest)),
      ],
    });
  }

  private nut() {
    const { head, line: how } = nutText(
      this.app.sheet.get('nutRule').value,
      this.app.profile?.threadDial === 'dial',
    );
    return line({ label: t.rows.nut, href: '#/cut/nut', value: head, notes: [how] });
  }

  private plan() {
    const { value, standing, missing, why } = this.app.sheet.get('plan');
    const notes = value
      ? [
          `${infeedName[value.infeed]}${value.scale === null ? '' : `, ${t.angle(angleText(value.scale))}`}`,
          this.app.job.starts > 1 ? t.inStarts(this.app.job.starts, value.passes.length) : '',
          value.time ? t.minutes(Math.ceil(value.time.inAll / 60)) : '',
        ]
      : missing.length > 0
        ? [t.needs(missing.map(pathLabel).join(', '))]
        : why.notes.map((n) => noteText[n as keyof typeof noteText]);
    return line({
      label: t.rows.plan,
      href: '#/cut/plan',
      value: value ? t.passes(value.passes.length) : t.notPlanned,
      open: !value,
      standing: standing === 'over' ? standing : null,
      notes,
    });
  }

  private speed() {
    const { rpm } = this.app.job;
    return line({
      label: t.rows.speed,
      href: '#/speed',
      value: rpm ? decimal(rpm, 1) : t.notSet,
      unit: rpm ? 'rpm' : '',
      open: !rpm,
      standing: rpm && (this.app.sheet.get('speed').value?.standing ?? 'unknown'),
    });
  }

  private checks(p: PhaseState) {
    const failed = p.failed.length;
    return line({
      label: t.rows.checks,
      href: '#/checks',
      value: p.allRecordedAt === null ? t.left(p.left) : t.allRecorded(timeOf(p.allRecordedAt)),
      standing: failed > 0 ? 'over' : null,
      notes: [failed > 0 ? t.failed(failed) : ''],
    });
  }

  private beginKey(needs: readonly BeginNeed[]) {
    const [first] = needs;
    if (first)
      return html`<a class="key big dashed begin" href=${NEED_AT[first]}
        ><span>${t.begin}</span><small>${t.first(needText[first])}</small></a
      >`;
    return html`<button class="key big solid" ?disabled=${this.beginning} @click=${() => void this.begin()}>
        ${t.begin}
      </button>
      ${this.trouble ? html`<p class="over" role="alert">${this.trouble}</p>` : nothing}`;
  }

  /** Those of a plan that holds. */
  private passes(): readonly PlannedPass[] | null {
    const { value, standing } = this.app.sheet.get('plan');
    return value && standing !== 'over' ? value.passes : null;
  }

  /** The plan as it is now becomes a run; the pass is shown when it is on the disk. */
  private async begin(): Promise<void> {
    const { app } = this;
    const passes = this.passes();
    const chosen = app.sheet.get('chosen').value;
    if (!passes || !chosen || !app.profile || this.beginning) return;
    this.beginning = true;
    const { name, workshop } = app.profile;
    const begun = await app.runs
      .begin(passes, { machineName: name, workshop, threadName: keptName(chosen) })
      .catch(() => null);
    this.beginning = false;
    this.trouble = begun?.ok ? '' : t.beginNotSaved;
    if (begun?.ok) this.go('#/cut/pass');
  }

  /** A cut is under way: the next pass before anything else. */
  private running(run: Run) {
    const [n, of] = [cutNumber(run), cutsInAll(run)];
    return html`<p class="label">${t.running}</p>
      ${headline(marked(run.threadName))}
      <a class="key big solid" href="#/cut/pass">${n > of ? t.goOnAfter : t.goOn(n, of)}</a>
      <a class="key" href="#/cut/pass/stopped">${t.recovery}</a>
      <div>${this.nut()} ${this.speed()}</div>
      <p class="note">${t.caution}</p>
      ${this.links()}`;
  }

  private feed() {
    return html`<h1>${t.none}</h1>
      <p>${t.feed}</p>
      <div class="stack">
        <a class="key solid" href="#/threads/find">${threadsText.choose}</a>
        <a class="key" href="#/speed/feed">${t.feedKey}</a>
        <a class="key" href="#/cut/records">${t.records}</a>
      </div>`;
  }

  private links() {
    return html`<div class="pair">
        <a class="key" href="#/cut/measure">${t.measure}</a>
        <a class="key" href="#/cut/records">${t.records}</a>
      </div>
      <a class="key" href="#/cut/ways">${t.ways}</a>
      <a class="key" href="#/cut/mistakes">${mistakesText.title}</a>`;
  }

  override render() {
    const open = this.app.runs.current;
    if (open) return this.running(open.run);
    const chosen = this.app.sheet.get('chosen').value;
    if (chosen?.kind === 'feed') return this.feed();
    if (!chosen)
      return html`<h1>${t.none}</h1>
        <p>${t.noneHelp}</p>
        <div class="grow"></div>
        <a class="key solid big" href="#/threads/find">${threadsText.choose}</a>
        <a class="key" href="#/cut/records">${t.records}</a>`;
    const p = phaseState('before', this.app.sheet);
    const needs = beginNeeds({
      passes: this.passes()?.length ?? null,
      speed: this.app.job.rpm && (this.app.sheet.get('speed').value?.standing ?? 'unknown'),
      checksLeft: p.left,
      checksFailed: p.failed.length,
    });
    return html`${this.heading(chosen)}
      <div>${this.work()} ${this.stop()} ${this.nut()} ${this.plan()} ${this.speed()} ${this.checks(p)}</div>
      ${this.beginKey(needs)}
      <p class="note">${t.caution}</p>
      ${this.links()}`;
  }
}
