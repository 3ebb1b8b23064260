import { html, type TemplateResult } from 'lit';

/**
 * Drawn on a 24 × 24 box with 2-unit lines, square ends: the same hand as the keys' outlines. As data: all icons are
 * one template, which is read once at a start.
 */
const DRAWN = {
  /* Two crests of a thread over the pitch line. */
  threads: 'M1 19l4.2-14h2.2l4.6 14 4.6-14h2.2L23 19M1 12h3M10 12h4M20 12h3',
  /* Half dial with a needle. */
  speed: 'M2 18a10 10 0 0 1 20 0M12 18L17 10M5 18h2M17 18h2M12 8v2.4',
  /* A list half worked through. */
  checks: 'M2.5 6l2.2 2.4L8.6 3.6M2.5 17l2.2 2.4 3.9-4.8M12 6.4h10M12 17.4h10',
  /* A threading tool under turned work. */
  cut: 'M1 4h22M1 10h8.5M14.5 10H23M9 21v-7l3-5 3 5v7z',
  /* Headstock with chuck, bed, tailstock. */
  machine: 'M1.5 17V5H8v12M8 8h3v6H8M17 17v-7h5v7M13.5 11.5H17M1 18h22M3.5 18v4M20.5 18v4',
  back: 'M8 4l-7 8 7 8h15V4zM12 9l6 6M18 9l-6 6',
  /* A smear on a phone's screen. */
  wipe: 'M5 1.5h14v21H5zM8 15c1-8 4 2 8-6',
  close: 'M4 4l16 16M20 4L4 20',
} as const;

export type IconName = keyof typeof DRAWN;

/** An own line drawing in the text's colour, hidden from screen readers: the word beside it is the name. */
export const icon = (name: IconName): TemplateResult =>
  html`<svg
    class="icon"
    viewBox="0 0 24 24"
    fill="none"
    stroke="currentColor"
    stroke-width="2"
    aria-hidden="true"
  >
    <path d=${DRAWN[name]} />
  </svg>`;
