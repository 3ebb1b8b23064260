import { LitElement, css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { Listen } from '../../elements/listen';
import { shared } from '../../elements/styles';
import { TICK, vibrate } from '../../device/vibrate';
import { appText, undoText } from '../../text/app';
import type { App } from '../../state';

/** The last change, and the key that takes it back. */
@customElement('ls-undo')
export class UndoBar extends LitElement {
  static override styles = [
    ...shared,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 16px;
        padding: 8px max(16px, 50% - 23rem);
        border-block-start: 1px solid var(--hair);
      }
      p {
        flex: 1 1 4rem;
      }
      /* There it stands beside the machine's name. */
      @media (orientation: landscape) and (max-height: 500px) {
        div {
          padding: 4px 16px;
          border: 0;
        }
      }
    `,
  ];
  @property({ attribute: false }) app: App | null = null;
  private readonly listen = new Listen(this);

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('app')) this.listen.to(this.app?.undo);
  }

  private takeBack(): void {
    vibrate(TICK);
    void this.app?.takeBack();
  }

  override render() {
    const entry = this.app?.undo.newest;
    if (!this.app || !entry) return nothing;
    return html`<div class="by-hand" role="status">
      <p>${undoText(entry)}</p>
      <button class="key" @click=${this.takeBack}>${appText.undo}</button>
    </div>`;
  }
}
