import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ScreenElement } from '../../elements/screen';
import { standingSheet } from '../../elements/standing';
import {
  blankCable,
  endsOf,
  nextName,
  withLayout,
  withThing,
  type LayoutId,
  type WiringRecord,
} from '../../core/wiring/record';
import { fitsWiring } from '../../core/wiring/record/stored';
import { wiringText as t } from '../../text/wiring';
import { changeWiring } from '../../state/wiring';
import { newId, type App } from '../../state';
import { cablePage } from './cable';
import { connectorPage } from './connector';
import { listPage } from './list';
import { sheetPage } from './sheet';
import { wiringStyles } from './styles';
import { wirePage } from './wire';

const makeId = (): string => newId().slice(0, 12);

/** How the machine's low-voltage signals are wired: list and checks, cables, connectors, wires, and a page for the lid. */
@customElement('ls-wiring')
export class WiringScreen extends ScreenElement<App> {
  static override styles = [...ScreenElement.styles, standingSheet, wiringStyles];
  @state() private trouble = '';

  private readonly toList = (): void => this.go('#/machine/wiring');

  private async add(record: WiringRecord, page: string): Promise<void> {
    this.trouble = fitsWiring(record) ? '' : t.full;
    if (this.trouble) return;
    await changeWiring(this.app, record);
    this.go(`#/machine/wiring/${page}`);
  }

  private addEmpty(r: WiringRecord, part: 'cables' | 'connectors'): Promise<void> {
    const id = makeId();
    const name = nextName(r, part);
    return part === 'cables'
      ? this.add(withThing(r, part, id, blankCable(name, 'other')), `cable/${id}`)
      : this.add(withThing(r, part, id, { name, place: 'other', pins: 4 }), `connector/${id}`);
  }

  private addLayout(r: WiringRecord, kind: LayoutId): Promise<void> {
    const { record, cable } = withLayout(r, kind, makeId);
    return this.add(record, `cable/${cable}`);
  }

  /** A new wire goes where the others of its cable go, to pins that aren't known yet. */
  private addWire(r: WiringRecord, cable: string): Promise<void> {
    const id = makeId();
    const [from, to] = (['from', 'to'] as const).map((side) => {
      const [connector] = endsOf(r, cable, side);
      return connector ? { connector, pin: null } : null;
    });
    const wire = { cable, signal: '', colour: null, from: from ?? null, to: to ?? null, pair: null };
    return this.add(withThing(r, 'wires', id, wire), `wire/${id}`);
  }

  private page(r: WiringRecord) {
    const [, kind, id = ''] = this.path;
    if (kind === 'sheet') return sheetPage(this.app);
    if (!kind)
      return html`<h1>${t.title}</h1>
        ${listPage(
          this.app,
          {
            layout: (layout) => void this.addLayout(r, layout),
            empty: (part) => void this.addEmpty(r, part),
          },
          this.trouble,
        )}`;
    const [cable, connector, wire] = [r.cables[id], r.connectors[id], r.wires[id]];
    if (kind === 'cable' && cable)
      return cablePage(this.app, id, cable, () => void this.addWire(r, id), this.toList);
    if (kind === 'connector' && connector) return connectorPage(this.app, id, connector, this.toList);
    if (kind === 'wire' && wire)
      return wirePage(this.app, id, wire, () => this.go(`#/machine/wiring/cable/${wire.cable}`));
    return html`<h1>${t.title}</h1>
      <p>${t.gone}</p>
      <a class="key" href="#/machine/wiring">${t.back}</a>`;
  }

  override render() {
    const { wiring } = this.app;
    if (wiring?.current) return this.page(wiring.value);
    return html`<h1>${t.title}</h1>
      <p>${wiring?.unreadable ? t.unreadable : t.loading}</p>
      <a class="key" href="#/machine">${t.machine}</a>`;
  }
}
