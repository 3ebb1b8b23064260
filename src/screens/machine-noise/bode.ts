import { html } from 'lit';
import '../../elements/bode-plot';
import type { BodeData } from '../../elements/bode-layout';
import { sweep } from '../../core/wiring';
import type { LowPassShape } from '../../core/wiring/noise';
import { noiseText as t } from '../../text/noise';
import { amountOf, amountText } from '../../text/noise-amount';

const hertz = (f: number): string => amountText(f, 'Hz');

/** Without its unit, which the axis names: "10 k". */
const tick = (f: number): string => {
  const { value, unit } = amountOf(f, 'Hz');
  return `${value} ${unit.slice(0, -2)}`.trim();
};

/** The filter's gain over frequency, with corner and carrier named. */
export const bodePlot = (shape: LowPassShape) => {
  const [carrier] = shape.marks;
  const { from, to, low, high, ideal, real } = sweep(shape.f0, shape.part, shape.marks);
  const named = [
    { f: shape.f0, text: t.cornerAt(hertz(shape.f0)) },
    ...(carrier === undefined ? [] : [{ f: carrier, text: t.carrierAt(hertz(carrier)) }]),
  ];
  const data: BodeData = { from, to, low, high, ideal, real, named, marks: shape.marks, tick };
  // How high it goes, and what is left of the carrier, stands in figures below it.
  const text = [t.plot(hertz(from), hertz(to)), ...named.map((n) => `${n.text}.`)].join(' ');
  return html`<ls-bode-plot .data=${data} .text=${text} .axis=${t.axis} .names=${t.names}></ls-bode-plot>`;
};
