import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { Listen } from '../../elements/listen';
import { ScreenElement } from '../../elements/screen';
import '../../elements/row';
import type { CarryKind } from '../../core/carry';
import { shareFile } from '../../device/share';
import { storageText, undoText } from '../../text/app';
import {
  backedUpText,
  carryText as t,
  changesText,
  kindText,
  outcomeText,
  refusedFile,
} from '../../text/carry';
import { codesKeys } from '../../text/codes';
import { shelfText } from '../../text/shelf';
import { isoTime } from '../../text/records';
import type { App } from '../../state';
import { carryOf, type CarryState, type Plan, type Stage } from '../../state/carry';
import { shelfOf } from '../../state/shelf';
import { choicesOf, choiceStyles } from './choices';
import { readFile, writeFile } from './files';
import { changesAnything, countKinds, machineOf } from './summary';

/** Names in a list; what is beyond is counted. */
const SHOWN = 60;
const ENDING = '.json,.txt,application/json,text/plain';

interface LaunchQueue {
  setConsumer(take: (params: { files?: readonly { getFile(): Promise<File> }[] }) => void): void;
}

/** Files out and in: share the machine, back everything up, and open what came from elsewhere. */
@customElement('ls-carry')
export class CarryScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, choiceStyles];
  /** What became of the last file that was made. */
  @state() private said = '';
  private readonly files = new Listen(this);
  private readonly shelf = new Listen(this);

  private get carry(): CarryState {
    return carryOf(this.app);
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    if (!changed.has('app')) return;
    this.files.to(this.carry);
    void this.carry.look();
    this.shelf.to(shelfOf(this.app));
    void shelfOf(this.app).look();
    // The system opened the app with a file.
    (window as { launchQueue?: LaunchQueue }).launchQueue?.setConsumer(({ files }) => {
      const [handle] = files ?? [];
      if (handle) void handle.getFile().then((file) => this.open(file));
    });
  }

  constructor() {
    super();
    this.addEventListener('dragover', (e) => e.preventDefault());
    this.addEventListener('drop', (e) => {
      e.preventDefault();
      this.open(e.dataTransfer?.files[0]);
    });
  }

  /** Who comes back later begins anew; what is being looked at or written stays. */
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (['done', 'refused'].includes(this.carry.stage.kind)) this.carry.close();
  }

  private open(file: File | undefined): void {
    if (file) void this.carry.open(file.name, readFile(file));
  }

  private async share(kind: CarryKind): Promise<void> {
    this.said = t.preparing;
    try {
      const name = kind === 'machine' ? (this.app.profile?.name ?? '') : t.everythingName;
      const content = await this.carry.content(kind, __VERSION__);
      const { file: made, left } = await writeFile(content);
      const day = isoTime(Date.now()).slice(0, 10);
      const file = new File([made], t.fileName(name, day), { type: 'application/json' });
      const how = await shareFile(file);
      if (kind === 'everything' && how !== 'cancelled') await this.carry.noteBackUp();
      this.said = [t[how], t.unreadable(content.unreadable - left), t.left(left)].join(' ');
    } catch {
      this.said = t.notMade;
    }
  }

  private opener(label: string): TemplateResult {
    const pick = (e: Event): void => {
      const input = e.target as HTMLInputElement;
      this.open(input.files?.[0]);
      input.value = '';
    };
    return html`<input id="file" type="file" accept=${ENDING} hidden @change=${pick} />
      <button class="key" @click=${() => this.renderRoot.querySelector<HTMLInputElement>('#file')?.click()}>
        ${label}
      </button>`;
  }

  private out(): TemplateResult {
    const { backedUp } = this.carry;
    const name = this.app.profile?.name;
    const shelved = shelfOf(this.app).files?.length ?? 0;
    return html`<h1>${t.heading}</h1>
      ${
        name === undefined
          ? nothing
          : html`<h2>${t.shareHeading}</h2>
              <p>${t.shareNote}</p>
              <button class="key solid" @click=${() => void this.share('machine')}>${t.share(name)}</button>
              <a class="key" href="#/machine/carry/show">${codesKeys.show}</a>`
      }
      <h2>${t.backHeading}</h2>
      <p>${t.backNote}</p>
      <p>${backedUp ? backedUpText(backedUp.at, backedUp.changes) : ''}</p>
      <button class="key" @click=${() => void this.share('everything')}>${t.backUp}</button>
      <p role="status"><strong>${this.said}</strong></p>
      <h2>${t.openHeading}</h2>
      <p>${t.openNote}</p>
      <div class="stack">
        ${this.opener(t.open)}
        <a class="key" href="#/machine/carry/read">${codesKeys.read}</a>
        ${
          shelved ? html`<a class="key" href="#/machine/carry/shelf">${shelfText.link(shelved)}</a>` : nothing
        }
      </div>
      <p class="note">${t.drop}</p>
      ${this.wayBack()}`;
  }

  /** The key under the screen goes with the place; what a file brought can be taken back here as long as it came last. */
  private wayBack(): TemplateResult | typeof nothing {
    const { newest } = this.app.undo;
    return newest?.code === 'import'
      ? html`<div class="apart stack">
          <button class="key" @click=${() => void this.app.takeBack()}>${undoText(newest)}</button>
        </div>`
      : nothing;
  }

  private contents(plan: Plan): TemplateResult {
    const machines = plan.rows.filter((r) => r.store === 'machines');
    const more = machines.length - SHOWN;
    const { leftOut } = plan;
    const named = leftOut.slice(0, SHOWN).map((l) => l.name);
    if (leftOut.length > SHOWN) named.push(t.more(leftOut.length - SHOWN));
    return html`${machines.length ? html`<h2>${t.machines}</h2>` : nothing}
      <div>
        ${machines.slice(0, SHOWN).map(({ theirs, outcome, conflicts }) => {
          const { profile } = ('body' in theirs ? theirs.body : {}) as { profile?: { workshop?: string } };
          return html`<ls-row
            .label=${profile?.workshop ?? ''}
            .note=${conflicts.length ? t.toChoose(conflicts.length) : outcomeText[outcome]}
            ><span class="figure">${this.carry.nameOf(theirs)}</span></ls-row
          >`;
        })}
      </div>
      ${more > 0 ? html`<p>${t.more(more)}</p>` : nothing}
      <h2>${t.rest}</h2>
      <div>
        ${countKinds(plan).map(
          (k) =>
            html`<ls-row
              .label=${kindText(k.kind)}
              .value=${`${k.fresh + k.changed + k.same}`}
              .note=${changesText(k.fresh, k.changed, k.same)}
            ></ls-row>`,
        )}
      </div>
      ${leftOut.length ? html`<p class="alert" role="alert">${t.leftOut(named.join(', '))}</p>` : nothing}`;
  }

  private opened({ document, plan }: Stage & { kind: 'opened' }): TemplateResult {
    const left = this.carry.choices.filter((c) => c.chosen === null).length;
    const bring = html`<button
      class="key solid big"
      ?disabled=${left > 0}
      @click=${() => void this.carry.bringIn()}
    >
      ${left ? t.chooseFirst(left) : t.bring}
    </button>`;
    return html`<h1>${t.title[document.kind]}</h1>
      <p>${t.made(document.made, document.app)}</p>
      ${choicesOf(this.carry, document.made)} ${this.contents(plan)}
      <div class="grow"></div>
      ${changesAnything(plan) ? bring : html`<p><strong>${t.nothing}</strong></p>`}
      <button class="key" @click=${() => this.carry.close()}>${t.leave}</button>`;
  }

  private done({ document, plan }: Stage & { kind: 'done' }): TemplateResult {
    const id = machineOf(document);
    const machine = this.app.machines.find(id);
    const tests = plan.rows.some((r) => r.store === 'evidence' && r.outcome === 'new');
    const use = async (): Promise<void> => {
      if (id !== null && id !== this.app.machine?.id) await this.app.useMachine(id);
      this.carry.close();
      this.go('#/machine');
    };
    return html`<div role="status"><h1>${t.done}</h1></div>
      <p>${t.doneNote}</p>
      ${tests ? html`<p>${t.newChecks}</p>` : nothing} ${this.contents(plan)}
      <button class="key solid" @click=${() => void use()}>
        ${machine ? t.use(machine.value.profile.name) : t.back}
      </button>`;
  }

  private trouble(): TemplateResult | typeof nothing {
    const { trouble } = this.carry;
    if (trouble === null) return nothing;
    const words = trouble === 'changed' ? t.changed : storageText[trouble].what;
    return html`<p class="alert" role="alert">${words}</p>`;
  }

  private stage(): TemplateResult {
    const { stage } = this.carry;
    if (stage.kind === 'none') return this.out();
    if (stage.kind === 'opened') return this.opened(stage);
    if (stage.kind === 'done') return this.done(stage);
    if (stage.kind !== 'refused')
      return html`<div role="status"><h1>${stage.kind === 'reading' ? t.reading : t.writing}</h1></div>`;
    return html`<h1>${t.refused}</h1>
      <p class="label">${stage.name}</p>
      <p class="alert" role="alert">${refusedFile[stage.result.code]}</p>
      ${this.opener(t.another)}
      <button class="key" @click=${() => this.carry.close()}>${t.leave}</button>`;
  }

  override render() {
    return html`${this.trouble()} ${this.stage()}`;
  }
}
