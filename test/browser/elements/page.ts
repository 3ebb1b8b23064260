/** One element at a time, named in the address after "#": the page that the tests of the elements look at. */
import { html, render, type TemplateResult } from 'lit';
import '../../../src/elements/bar';
import '../../../src/elements/gauge';
import '../../../src/elements/pad';
import type { PadInputEvent } from '../../../src/elements/pad';
import '../../../src/elements/row';
import '../../../src/elements/rule';
import '../../../src/elements/sheet';
import '../../../src/elements/standing';
import '../../../src/elements/thread-dial';
import '../../../src/elements/thread-profile';
import '../../../src/elements/wipe-lock';
import { more } from './more';

const places = (['threads', 'speed', 'checks', 'cut', 'machine'] as const).map((id) => ({
  id,
  label: id.charAt(0).toUpperCase() + id.slice(1),
  href: `#${id}`,
}));
const words = { back: 'Correct', space: 'space', mark: 'decimal mark', over: 'over', unit: 'Unit' };
const units = ['mm', 'in', 'tpi'].map((id) => ({ id, label: id }));
// ISO 68-1 for a pitch of 1.5: external depth 0.613435P, pitch line 3H/8 below the crest.
const metric = {
  pitch: 1.5,
  flanks: [30, 30],
  depth: 0.9202,
  pitchDepth: 0.4871,
  crestRadius: 0,
  rootRadius: 0,
} as const;

const pages: Record<string, () => TemplateResult> = {
  ...more,
  pad: () =>
    html`<ls-pad label="Pitch" .words=${words} .units=${units} unit="tpi" understood="= 2.2087 mm">
      <button slot="results">First</button><button slot="results">Second</button>
    </ls-pad>`,
  'pad-two': () =>
    html`<ls-pad label="Pitch" mark="," .words=${words} .units=${units.slice(0, 2)} unit="mm"></ls-pad>`,
  'pad-error': () =>
    html`<ls-pad
      label="Pitch"
      value="11 1/"
      .words=${words}
      .units=${units}
      unit="tpi"
      error="Not finished."
    ></ls-pad>`,
  gauge: () =>
    html`<ls-gauge
      max="800"
      .within=${170}
      .limit=${213}
      .set=${160}
      .speeds=${[80, 160]}
      text="160 of 213"
    ></ls-gauge>`,
  'gauge-unknown': () => html`<ls-gauge max="2000" text="Not known"></ls-gauge>`,
  'gauge-top': () => html`<ls-gauge max="400" .set=${200} text="200"></ls-gauge>`,
  standing: () =>
    html`<ls-standing standing="within" word="OK"></ls-standing
      ><ls-standing standing="near" word="Close"></ls-standing>
      <ls-standing standing="over" word="Too much"></ls-standing
      ><ls-standing word="Not known"></ls-standing>`,
  rows: () =>
    html`<ls-rule></ls-rule><ls-row label="Pitch" value="1.5" unit="mm"></ls-row>
      <ls-row
        label="Highest for this job"
        value="213"
        unit="rpm"
        standing="near"
        word="Close"
        why="Why"
        figure="top"
      ></ls-row>
      <ls-row label="Steps per count" value="12345/67890123" unit="exact" note="from the entries"></ls-row>`,
  row: () => html`<ls-row label="Pitch" value="1.5" unit="mm"></ls-row>`,
  bar: () => html`<ls-bar label="Places" current="speed" .items=${places}></ls-bar>`,
  sheet: () =>
    html`<button
        id="opener"
        @click=${() => document.querySelector('ls-sheet')?.toggleAttribute('open', true)}
      >
        Open
      </button>
      <ls-sheet heading="Why 213" close="Close"><p>Stopping room 4.0 mm</p></ls-sheet>`,
  'sheet-open': () =>
    html`<p>Behind it</p>
      <ls-sheet open heading="Why 213" close="Close"><p>4.0 mm</p></ls-sheet>`,
  wipe: () => html`<ls-wipe-lock seconds="2" label="Wipe lock" text="Wipe it"></ls-wipe-lock>`,
  profile: () =>
    html`<ls-profile
      .shape=${metric}
      .nose=${{ flat: 0.1, depth: 1.05 }}
      pitchText="1.5"
      text="Profile"
    ></ls-profile>`,
  dial: () => html`<ls-thread-dial lines="8" .good=${[0, 2, 4, 6]} text="Any odd line"></ls-thread-dial>`,
};

declare global {
  interface Window {
    /** Events that reached the document. */
    heard: string[];
  }
}
window.heard = [];
for (const type of ['ls-why', 'ls-close', 'ls-unlock', 'ls-written', 'click', 'keydown'])
  document.addEventListener(type, (event) => {
    const { figure, value } = event as Event & { figure?: string; value?: string };
    const said = figure ?? value;
    window.heard.push(said === undefined ? type : `${type} ${said}`);
  });
document.addEventListener('ls-pad-input', (event) => {
  const { value, unit } = event as PadInputEvent;
  window.heard.push(`${value}|${unit}`);
});

const show = () => {
  const page = pages[location.hash.slice(1)];
  render(
    html`<main>
      <h1>Elements</h1>
      ${page?.()}
    </main>`,
    document.body,
  );
};
show();
