/** Pages of elements that draw one thing each, and of those that a person writes or looks at codes with. */
import { html, type TemplateResult } from 'lit';
import type { BodeData } from '../../../src/elements/bode-layout';
import '../../../src/elements/bode-plot';
import type { DrawnCable } from '../../../src/elements/cable-drawing';
import '../../../src/elements/cable-drawing';
import type { PlotData } from '../../../src/elements/chart-layout';
import '../../../src/elements/chart-plot';
import '../../../src/elements/code-loop';
import '../../../src/elements/groove-section';
import type { LimitsShape } from '../../../src/elements/limits-drawing';
import '../../../src/elements/limits-drawing';
import type { StopShape } from '../../../src/elements/stop-drawing';
import '../../../src/elements/stop-drawing';
import '../../../src/elements/trace-plot';
import type { DrawnTrain } from '../../../src/elements/train-drawing';
import '../../../src/elements/train-drawing';
import '../../../src/elements/written-line';

const bode: BodeData = {
  ...{ from: 10, to: 1e6, low: -40, high: 10 },
  ideal: [
    [10, 0],
    [1e4, 0],
    [1e6, -40],
  ],
  real: [
    [10, 0],
    [1e4, -3],
    [1e6, -40],
  ],
  named: [{ f: 1e4, text: 'corner' }],
  marks: [1e3, 1e5],
  tick: (f) => `${f} Hz`,
};
const cable: DrawnCable = {
  blocks: [
    {
      left: ['Encoder'],
      right: ['Controller'],
      wires: [
        { pins: ['1', '4'], signal: 'A', colour: null, pair: 1 },
        { pins: ['2', '5'], signal: 'A−', colour: null, pair: 1 },
        { pins: ['3', '6'], signal: '0 V', colour: null, pair: null },
      ],
    },
  ],
  screen: { name: 'Screen', bonds: ['open', 'direct'], words: ['left open', 'to earth'] },
};
const chart: PlotData = {
  ...{ from: 0.25, to: 6, mark: '.' },
  lines: [
    {
      name: 'Motor speed',
      kind: 'limit',
      points: [
        { lead: 0.25, rpm: 2880 },
        { lead: 6, rpm: 120 },
      ],
    },
  ],
  ceiling: [
    [
      { lead: 0.25, rpm: 2880 },
      { lead: 6, rpm: 120 },
    ],
  ],
  rules: [
    { name: '160', rpm: 160 },
    { name: '420', rpm: 420 },
  ],
  threads: [{ name: 'M10×1.5', lead: 1.5, rpm: 480 }],
  words: ['What the drive follows.'],
  axis: { lead: 'lead, mm', tpi: 'tpi', rpm: 'rpm', own: 'spindle' },
};
// M10×1.5 6g, ISO 965-2, with wires of 0.9.
const limits: LimitsShape = {
  kind: 'external',
  pitch: 1.5,
  flanks: [30, 30],
  most: { major: 9.968, pitch: 8.994, minor: 8.128 },
  least: { major: 9.732, pitch: 8.862, minor: 7.938 },
  wire: 0.9,
};
const stop: StopShape = {
  kind: 'groove',
  ...{ pitch: 1.5, depth: 0.92, leading: 30, trailing: 30, shoulder: 2, wall: 4 },
  ...{ mark: 0.6, furthest: 2, end: 3, over: false, toRight: false, inside: false },
  bars: [{ from: 0.6, to: 2, text: '1.4 mm' }],
};
const train: DrawnTrain = {
  wheels: [
    { x: 0, y: 0, teeth: 40, stage: 0, idler: false, changed: true },
    { x: 100, y: 0, teeth: 60, stage: 0, idler: true, changed: false },
    { x: 180, y: 0, teeth: 20, stage: 0, idler: false, changed: true },
  ],
  shafts: [
    { x: 0, y: 0, name: 'spindle' },
    { x: 180, y: 0, name: 'leadscrew' },
  ],
};
const codes = [0, 1, 2].map((n) => ({ size: 21, path: `M${n} .5h7` }));
const loopText = {
  at: (n: number, of: number): string => `Code ${n} of ${of}`,
  ...{ pause: 'Hold still', go: 'Run', next: 'Next code' },
};

export const more: Record<string, () => TemplateResult> = {
  bode: () =>
    html`<ls-bode-plot
      .data=${bode}
      text="Gain"
      axis="Hz, dB"
      .names=${{ real: 'as it is', ideal: 'ideal', marks: 'steps' }}
    ></ls-bode-plot>`,
  cable: () => html`<ls-cable-drawing .cable=${cable} text="Cable"></ls-cable-drawing>`,
  chart: () => html`<ls-chart-plot .data=${chart} text="Chart"></ls-chart-plot>`,
  codes: () => html`<ls-code-loop .codes=${codes} of="3" .text=${loopText}></ls-code-loop>`,
  groove: () =>
    html`<ls-groove-section
      .tool=${{ left: 30, right: 30, flat: 0.1, radius: 0 }}
      .cuts=${[0.3, 0.6, 0.9].map((depth) => ({ depth, at: 0 }))}
      taken="2"
      left="left"
      right="right"
      text="Groove"
    ></ls-groove-section>`,
  limits: () => html`<ls-limits-drawing .shape=${limits} text="Limits"></ls-limits-drawing>`,
  stop: () => html`<ls-stop-drawing .shape=${stop} text="Stop"></ls-stop-drawing>`,
  trace: () =>
    html`<ls-trace-plot
      .shape=${{ min: [-1, -2, -1], max: [1, 2, 1], mean: [0, 0.5, 0] }}
      .high=${2}
      .low=${-2}
      top="+2 µm"
      bottom="−2 µm"
      start="0"
      end="20 mm"
      text="Trace"
    ></ls-trace-plot>`,
  train: () => html`<ls-train-drawing .train=${train} text="Train"></ls-train-drawing>`,
  written: () =>
    html`<ls-written-line
      label="Workshop"
      value="Shed"
      keep="Keep"
      most="8"
      long="Too long."
    ></ls-written-line>`,
};
