import { svg, type TemplateResult } from 'lit';
import type { Colour, WireColour } from '../core/wiring/record/colour';

/** How the letter codes look; the letters always stand beside. */
const PAINT: Readonly<Record<Colour, string>> = {
  BK: '#1b1b1b',
  BN: '#6f4123',
  RD: '#c2161c',
  OG: '#e87811',
  YE: '#f2cb05',
  GN: '#1f7d38',
  BU: '#1f5ec2',
  VT: '#6e3f9e',
  GY: '#8b9095',
  WH: '#ffffff',
  PK: '#f0a3ba',
  TQ: '#2ab3ae',
};

/** A length of conductor along a line: its body outlined, the second colour as a stripe; a broken line where it isn't known. */
export const conductor = (colour: WireColour | null, x: number, y: number, to: number): TemplateResult => {
  const d = `M${x} ${y}H${to}`;
  if (!colour) return svg`<path class="edge" d=${d} stroke-width="2.5" stroke-dasharray="9 6" />`;
  const [body, second] = colour.split('/') as [Colour, Colour | undefined];
  return svg`<path class="edge" d=${d} stroke-width="11" /><path d=${d} stroke=${PAINT[body]} stroke-width="8" />${
    second ? svg`<path d=${d} stroke=${PAINT[second]} stroke-width="8" stroke-dasharray="9 15" />` : ''
  }`;
};
