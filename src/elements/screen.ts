import { LitElement, css, type PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import { Listen, type Source } from './listen';
import { shared } from './styles';

let low: MediaQueryList | null = null;
/** Whether the header has no room (as in the shell's style). To read the window's height would lay the page out. */
const isLow = (): boolean => (low ??= matchMedia('(max-height: 620px)')).matches;

/** A screen could not be drawn. */
export class ScreenFailedEvent extends Event {
  static readonly type = 'ls-screen-failed';
  constructor(readonly error: unknown) {
    super(ScreenFailedEvent.type, { bubbles: true, composed: true });
  }
}

/**
 * What every screen has in common: the app's state, which it renders again on change, and the rest of the address
 * below its own place. Subclasses name the state's type.
 */
export abstract class ScreenElement<A extends Source> extends LitElement {
  static override styles = [
    ...shared,
    css`
      :host {
        display: flex;
        flex-direction: column;
        gap: 12px;
        padding: 12px var(--edge, 16px) 24px;
        box-sizing: border-box;
        min-block-size: 100%;
      }
      /* On a tablet what belongs together stays together, and lines stay short enough to read. */
      @media screen {
        :host {
          inline-size: 100%;
          max-inline-size: var(--widest, 48rem);
          margin-inline: auto;
        }
      }
      .grow {
        flex: 1;
      }
      .grid3 {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(6.2rem, 1fr));
        gap: var(--gap, 8px);
      }
      .grid2 {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr));
        gap: var(--gap, 8px);
      }
      .stack {
        display: flex;
        flex-direction: column;
        gap: var(--gap, 8px);
      }
      .stack > .key {
        inline-size: 100%;
      }
      .left {
        justify-content: flex-start;
        text-align: start;
      }
      .quiet.left {
        padding-inline: 0;
      }
      .note {
        font-size: var(--t-label);
        color: var(--ink-2);
      }
      .alert {
        border: 3px solid var(--over);
        padding: 12px;
      }
      .pair {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 8.4rem), 1fr));
        gap: var(--gap, 8px);
      }
    `,
  ];

  @property({ attribute: false }) app!: A;
  /** What follows the place in the address, e.g. ["family", "iso-coarse"]. */
  @property({ attribute: false }) path: readonly string[] = [];
  private readonly listen = new Listen(this);

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('app')) this.listen.to(this.app);
  }

  /** A screen that throws says so and leaves the others working. */
  protected override performUpdate(): void {
    try {
      super.performUpdate();
    } catch (error) {
      this.dispatchEvent(new ScreenFailedEvent(error));
    }
  }

  /** A question's label; where the height leaves no room for the header it carries the machine's name. */
  protected named(label: string, machine: string): string {
    return isLow() && machine ? `${machine} · ${label}` : label;
  }

  /** Leads on from what was done here; nowhere once a person has gone elsewhere meanwhile. */
  protected go(hash: string): void {
    if (this.isConnected) location.hash = hash;
  }
}
