import type { Connector, End, Wire, WiringRecord } from '../../core/wiring/record';
import { trade } from '../../text/prove';
import { placeName, wiringText as t } from '../../text/wiring';

/** "X1 · Encoder". */
export const connectorName = (c: Connector): string => `${c.name} · ${trade(placeName[c.place])}`;

/** "X1.3": the connector's name and the pin; what isn't known is a question mark. */
export const endName = (r: WiringRecord, end: End | null): string =>
  end ? `${r.connectors[end.connector]?.name ?? '?'}.${end.pin ?? '?'}` : t.openEnd;

export const signalName = (w: Wire): string => w.signal || t.noSignal;
