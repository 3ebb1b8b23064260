import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { html as staticHtml, unsafeStatic } from 'lit/static-html.js';
import { LsBar } from '../../elements/bar';
import { icon } from '../../elements/icons';
import { Listen } from '../../elements/listen';
import { makeReady } from '../../elements/ready';
import { WhyEvent } from '../../elements/row';
import { LsRule } from '../../elements/rule';
import { LsStanding, standingMark } from '../../elements/standing';
import { shared } from '../../elements/styles';
import { barLabel, colourName, frameText } from '../../text/frame';
import type { App } from '../../state';
import type { OfflineStatus, Updates } from '../../device/updates';
import { Glance } from './glance';
import { PLACES, routeOf, type Route } from './routes';

/** A hint for the first paint; what counts is kept in the database, which a killed browser doesn't lose. */
const KEPT_PLACE = 'latheside.place';

const SOON = 1000;

/** The frame of the app: whose machine this is, the screen, what has to be said, and the places. */
@customElement('ls-app')
export class Shell extends LitElement {
  static override styles = [
    ...shared,
    css`
      :host {
        display: grid;
        grid-template-rows: auto auto minmax(0, 1fr) auto auto;
        block-size: 100dvh;
        box-sizing: border-box;
        padding: env(safe-area-inset-top) env(safe-area-inset-right) env(safe-area-inset-bottom)
          env(safe-area-inset-left);
        background: var(--paper);
        color: var(--ink);
      }
      header {
        display: grid;
        grid-template: auto auto / minmax(0, 1fr) auto;
        column-gap: 8px;
      }
      header > :last-child {
        grid-column: 1 / -1;
      }
      /* Its place is kept until it comes: it is no part of the first paint. */
      ls-wipe {
        min-inline-size: 64px;
        min-block-size: 64px;
      }
      .whose {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 0.75rem;
        min-block-size: 64px;
        overflow-wrap: anywhere;
        padding-inline: max(28px, 50% - 23rem) max(16px, 50% - 23rem);
        background: var(--band) 0 0 / 12px 100% no-repeat;
        print-color-adjust: exact;
        -webkit-print-color-adjust: exact;
        color: inherit;
        text-decoration: none;
        font-size: var(--t-label);
      }
      header strong {
        flex: 1 1 auto;
      }
      /* While a number is typed the line only says whose machine it is; on a low screen the keys need the height. */
      @media (max-height: 739px) {
        .full .whose {
          min-block-size: 32px;
        }
        .full ls-wipe {
          display: none;
        }
      }
      main {
        container-type: size;
        overflow-y: auto;
        overscroll-behavior: contain;
        position: relative;
      }
      main.full {
        overflow: hidden;
      }
      main.full > * {
        block-size: 100%;
        box-sizing: border-box;
      }
      .notice {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 16px;
        padding: 8px 16px;
        border-block-end: 1px solid var(--hair);
        font-size: var(--t-label);
      }
      .notice p {
        flex: 1 1 12rem;
      }
      .notice.bad {
        border: 3px solid var(--over);
      }
      /* The pad needs the height: there the machine's name stands in the pad's own line. */
      @media (max-height: 620px) {
        .full header {
          display: none;
        }
      }
      .paper {
        display: none;
      }
      /* On paper the screen's own page, as long as it is, and of the frame whose machine it is about. */
      @media print {
        :host {
          display: block;
          block-size: auto;
          padding: 0;
        }
        main {
          container-type: normal;
          overflow: visible;
        }
        .whose,
        .full .whose {
          min-block-size: 6mm;
          gap: 0 0.5rem;
          font-size: 9pt;
        }
        header strong {
          flex: none;
        }
        .paper {
          display: inline;
        }
        /* The wall chart says it on each of its pages. */
        .own header,
        ls-rule,
        .notice,
        ls-notices,
        ls-undo,
        ls-wipe,
        ls-bar {
          display: none;
        }
      }
      /* A phone on its side has no height to give away: the places stand at the side away from the hand. */
      @media screen and (orientation: landscape) and (max-height: 500px) {
        :host {
          grid-template:
            'bar head undo' auto 'bar said said' auto 'bar main main' minmax(0, 1fr)
            / auto minmax(0, 1fr) auto;
          direction: var(--hand);
        }
        :host > :not(ls-bar) {
          direction: ltr;
        }
        .head {
          grid-area: head;
        }
        .said {
          grid-area: said;
        }
        main {
          grid-area: main;
          border-block-start: 1px solid var(--ink);
        }
        main.full {
          border: 0;
        }
        .undo {
          grid-area: undo;
          max-inline-size: 42vw;
        }
        ls-bar {
          grid-area: bar;
        }
        ls-rule {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) app: App | null = null;
  @property({ attribute: false }) updates: Updates | null = null;
  @property({ attribute: false }) offline: OfflineStatus | null = null;
  /** Fetches the module of a place; resolves when its elements are defined. */
  @property({ attribute: false }) load: (tag: string) => Promise<void> = () => Promise.resolve();
  @state() private route: Route = routeOf(location.hash, 'threads');
  @state() private defined = new Set<string>();
  @state() private failed: string | null = null;
  @state() private why: string | null = null;
  @state() private undoShown = false;
  @state() private closed = false;
  @state() private waiting = false;
  private readonly listen = new Listen(this);
  private readonly scrolls = new Map<string, number>();

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('hashchange', this.moved);
    this.addEventListener(WhyEvent.type, this.opened as EventListener);
    this.moved();
  }
  override disconnectedCallback(): void {
    removeEventListener('hashchange', this.moved);
    super.disconnectedCallback();
  }

  private readonly opened = (e: WhyEvent): void => {
    this.why = e.figure;
  };

  /** Follows the address; remembers where each screen was scrolled to and where the app was. */
  private readonly moved = (): void => {
    if (location.hash === '') {
      const kept = keptPlace();
      if (kept) history.replaceState(null, '', kept);
    }
    const before = this.route;
    const main = this.renderRoot instanceof ShadowRoot ? this.renderRoot.querySelector('main') : null;
    if (main) this.scrolls.set(before.tag + before.path.join('/'), main.scrollTop);
    const route = routeOf(location.hash, before.place);
    // The way back to the machine before goes along to where one goes on.
    if (route.place !== before.place && before.tag !== 'ls-machines') this.undoShown = false;
    this.why = null;
    this.failed = null;
    this.route = route;
    if (!route.full) this.keep(location.hash);
    void this.ready(route.tag);
  };

  private keep(hash: string): void {
    // At a start it is nothing new, and waits until the first picture is there.
    if (!this.hasUpdated) {
      setTimeout(() => keepPlace(hash), SOON);
      return;
    }
    keepPlace(hash);
    this.app?.keepPlace(hash);
  }

  private async ready(tag: string): Promise<void> {
    if (this.defined.has(tag)) return;
    try {
      await this.load(tag);
      this.defined = new Set([...this.defined, tag]);
    } catch (e) {
      this.failed = tag;
      this.dispatchEvent(new CustomEvent('ls-trouble', { detail: e }));
    }
  }

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('app')) {
      this.listen.to(this.app);
      this.app?.undo.subscribe(() => {
        this.undoShown = this.app?.undo.newest != null;
      });
    }
  }

  override updated(changed: PropertyValues): void {
    if (!changed.has('route')) return;
    const before = changed.get('route') as Route | undefined;
    if (!before || (before.tag === this.route.tag && before.path.join() === this.route.path.join())) return;
    const main = this.renderRoot.querySelector('main');
    const kept = this.scrolls.get(this.route.tag + this.route.path.join('/')) ?? 0;
    // Coming back to a place finds it as it was left; a new page starts at its top.
    if (main) main.scrollTop = PLACES.includes(this.route.tag.slice(3) as 'threads') ? kept : 0;
    main?.focus({ preventScroll: true });
  }

  /** For the moment in which the database has still to answer. */
  static makeReady(): void {
    makeReady([Shell, LsRule, Glance, LsStanding, LsBar], [icon('threads'), standingMark('unknown')]);
  }

  /** A screen that throws leaves the others working. */
  showFailure(): void {
    this.failed = this.route.tag;
  }

  /** Another tab needed the database: this one can't write any more until it is loaded anew. */
  showClosed(): void {
    this.closed = true;
  }

  /** Another tab holds an older database open, and this one can't go on before it lets go. */
  showWaiting(): void {
    this.waiting = true;
  }

  /** Resolves when the screen of the present address is on the page. */
  async shown(): Promise<void> {
    await this.ready(this.route.tag);
    await this.updateComplete;
    const screen = this.renderRoot.querySelector('.screen');
    if (screen instanceof LitElement) await screen.updateComplete;
  }

  /** Whether the head of the screen asked for can be shown before its code is read. */
  get glances(): boolean {
    return this.route.tag === 'ls-threads' && this.route.path.length === 0;
  }

  /** Resolves when that head is on the page; at once where there is none. */
  async glanced(): Promise<boolean> {
    await this.updateComplete;
    const head = this.renderRoot.querySelector<Glance>('ls-glance');
    await head?.updateComplete;
    return head !== null;
  }

  private header(app: App) {
    const m = app.profile;
    const { tag, path, place } = this.route;
    // Whoever changes the machine goes on where the header was touched.
    const from = tag === 'ls-machines' ? (path[1] ?? '') : place;
    const whose = html`<strong>${m ? m.name : frameText.noMachine}</strong
      ><span class="second">${m ? m.workshop || frameText.noWorkshop : ''}</span
      ><span class="second paper">${m?.colour ? colourName[m.colour] : ''}</span>`;
    return html`<header class="by-hand">
      ${
        this.route.full
          ? html`<div class="whose">${whose}</div>`
          : html`<a class="whose" href="#/machine/list/${from}"
              >${whose}<span class="vh">: ${frameText.change}</span></a
            >`
      }
      <ls-wipe></ls-wipe>
      <ls-rule></ls-rule>
    </header>`;
  }

  private screen(app: App) {
    const { tag, path } = this.route;
    if (this.failed === tag)
      return html`<div class="notice bad" role="alert">
        <p><strong>${frameText.failed}.</strong> ${frameText.failedNote}</p>
        <button class="key" @click=${() => location.reload()}>${frameText.reload}</button>
        <a class="key" href="#/settings">${frameText.details}</a>
      </div>`;
    if (!this.defined.has(tag))
      return this.glances && app.machine && app.job.thread
        ? html`<ls-glance class="screen" .app=${app}></ls-glance>`
        : nothing;
    const needsMachine =
      !app.machine &&
      ![
        'ls-machines',
        'ls-new-machine',
        'ls-first-run',
        'ls-settings',
        'ls-carry',
        'ls-codes-read',
        'ls-shelf',
      ].includes(tag);
    if (needsMachine) return html`<ls-first .offline=${this.offline}></ls-first>`;
    const name = unsafeStatic(tag);
    return staticHtml`<${name} class="screen" .app=${app} .path=${path} .updates=${this.updates} .offline=${this.offline}></${name}>`;
  }

  override render() {
    const { app } = this;
    if (!app)
      return this.waiting
        ? html`<div class="notice bad" role="alert">
            <p><strong>${frameText.waiting}</strong> ${frameText.waitingNote}</p>
          </div>`
        : nothing;
    const { full } = this.route;
    return html`
      <div class="head ${full ? 'full' : this.route.tag === 'ls-chart' ? 'own' : ''}">
        ${this.header(app)}
      </div>
      <div class="said">
        ${
          full
            ? nothing
            : html`<ls-notices
                .app=${app}
                .updates=${this.updates}
                .offline=${this.offline}
                .closed=${this.closed}
                .at=${this.route}
                .atCut=${['ls-cut', 'ls-cut-pass'].includes(this.route.tag)}
              ></ls-notices>`
        }
      </div>
      <main class=${full ? 'full' : ''} tabindex="-1">${this.screen(app)}</main>
      <div class="undo">
        ${this.undoShown && !full && (this.route.place !== 'checks' || app.undo.newest?.code === 'machine') ? html`<ls-undo .app=${app}></ls-undo>` : nothing}
      </div>
      ${
        full
          ? nothing
          : html`<ls-bar
              .items=${PLACES.map((id) => ({ id, label: barLabel[id], href: `#/${id}` }))}
              .current=${this.route.place}
              .label=${frameText.places}
            ></ls-bar>`
      }
      <ls-why-sheet .app=${app} .figure=${this.why} @ls-close=${() => (this.why = null)}></ls-why-sheet>
    `;
  }
}

const keptPlace = (): string | null => {
  try {
    return localStorage.getItem(KEPT_PLACE);
  } catch {
    return null;
  }
};
const keepPlace = (hash: string): void => {
  try {
    if (hash) localStorage.setItem(KEPT_PLACE, hash);
  } catch {
    // A browser that forbids it opens at Threads next time.
  }
};
