import { html } from 'lit';
import { standingMark } from '../../elements/standing';
import { toNumber } from '../../core/quantity';
import { wiringFindings, type Finding, type Missing, type WiringRecord } from '../../core/wiring/record';
import { fieldText } from '../../text/machine';
import { significant } from '../../text/numbers';
import { trade } from '../../text/prove';
import { findingText, missingName, wiringText as t } from '../../text/wiring';
import type { App } from '../../state';
import { endName, signalName } from './names';

export const findingsNow = (app: App, r: WiringRecord): readonly Finding[] =>
  app.profile ? wiringFindings(r, app.profile) : [];

/** In the middle of a sentence. */
const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const missingText = (m: Missing): string =>
  lower(m.of === 'machine' ? fieldText[m.field].label : missingName[m.field]);

/** What a finding is about: cable, connector with pin, signals. */
const where = (r: WiringRecord, f: Finding, here: string): string => {
  const cable = f.cable === null || here ? undefined : r.cables[f.cable]?.name;
  const at = f.connector === null ? undefined : endName(r, { connector: f.connector, pin: f.pin });
  const signals = f.wires.flatMap((id) => (r.wires[id] ? [signalName(r.wires[id])] : []));
  return [cable, f.pin === null ? at?.replace('.?', '') : at, [...signals, ...f.names].join(', ')]
    .filter(Boolean)
    .join(' · ');
};

const say = (f: Finding): string => {
  const text = trade(findingText[f.code]);
  if (f.missing.length > 0)
    return `${text}: ${[...new Set(f.missing.map(missingText))].join(', ')} ${lower(t.notKnown)}.`;
  const { drop, allowed, length, reach, rate } = f.values;
  if (!length || !reach) return text;
  const write = (x: Parameters<typeof toNumber>[0]): string => significant(toNumber(x), 3);
  const parts = [
    ...(drop && allowed ? [t.lost(write(drop), write(allowed))] : []),
    t.upTo(write(length), write(reach)),
    ...(rate
      ? [t.rate(significant(toNumber(rate) / 1000, 3))]
      : f.code === 'reach-single'
        ? [trade(t.practice)]
        : []),
  ];
  return `${text}: ${parts.join('; ')}.`;
};

/** A figure that is missing is asked for on the cable's own page; the list only counts those. */
export const isOnlyMissing = (f: Finding): boolean => f.missing.length > 0;

/** The page on which a finding can be put right. */
const pageOf = (f: Finding): string | null => {
  const [wire] = f.wires;
  if (wire && f.wires.length === 1) return `wire/${wire}`;
  if (f.cable !== null) return `cable/${f.cable}`;
  return f.connector === null ? null : `connector/${f.connector}`;
};

/** One finding on its line, which leads to where it can be put right unless that is `here`. */
export const findingLine = (r: WiringRecord, f: Finding, here = '') => {
  const page = pageOf(f);
  const about = where(r, f, here);
  const body = html`<span class=${f.standing}>${standingMark(f.standing)}</span
    ><span>${about ? html`<strong>${about}</strong><br />` : ''}${say(f)}</span>`;
  return page === null || page === here || f.standing === 'within'
    ? html`<div class="line">${body}</div>`
    : html`<a class="line" href="#/machine/wiring/${page}">${body}</a>`;
};
