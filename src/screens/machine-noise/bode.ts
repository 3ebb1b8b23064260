import { html } from 'lit';
import '../../elements/bode-plot';
import type { BodeData } from '../../elements/bode-layout';
import { sweep } from '../../core/wiring';
import type { Line, LowPassShape } from '../../core/wiring/noise';
import { noiseText as t } from '../../text/noise';
import { amountOf, amountText } from '../../text/noise-amount';

const hertz = (f: number): string => amountText(f, 'Hz');

/** The filter's gain over frequency, with corner and carrier named. */
export const bodePlot = (shape: LowPassShape, lines: readonly Line[]) => {
  const [carrier] = shape.marks;
  const { from, to, low, high, ideal, real } = sweep(shape.f0, shape.part, shape.marks);
  const named = [
    { f: shape.f0, text: t.cornerAt(hertz(shape.f0)) },
    ...(carrier === undefined ? [] : [{ f: carrier, text: t.carrierAt(hertz(carrier)) }]),
  ];
  const data: BodeData = { from, to, low, high, ideal, real, named, marks: shape.marks };
  const top = lines.find((l) => l.code === 'peak');
  const text = [
    t.plot(hertz(from), hertz(to), hertz(shape.f0)),
    top?.value != null && top.at ? t.highest(amountOf(top.value, 'dB').value, hertz(top.at)) : '',
    ...named.slice(1).map((n) => `${n.text}.`),
  ].join(' ');
  return html`<ls-bode-plot .data=${data} .text=${text} .axis=${t.axis} .names=${t.names}></ls-bode-plot>`;
};
