/** Draws the PNG icons of the manifest from public/icons/icon.svg. Run after changing the drawing; needs Chromium. */
import { readFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findChromium } from './chromium.js';

const drawing = readFileSync('public/icons/icon.svg', 'utf8');
/** A maskable icon fills its square and keeps what matters inside the middle 80 %. */
const square = drawing.replace('rx="88"', '');
const icons = [
  { name: 'icon-192', size: 192, svg: drawing, clear: true },
  { name: 'icon-512', size: 512, svg: drawing, clear: true },
  { name: 'maskable-512', size: 512, svg: square, clear: false },
  { name: 'apple-touch-180', size: 180, svg: square, clear: false },
];

/** The shortcuts of the manifest: the drawings of the bar, light on the icon's ground. */
const drawn = readFileSync('src/elements/icons.ts', 'utf8');
for (const place of ['threads', 'speed', 'checks', 'cut', 'machine']) {
  const [, lines = ''] = new RegExp(`${place}: svg\`([^\`]*)\``).exec(drawn) ?? [];
  if (!lines) throw new Error(`No drawing of ${place} in src/elements/icons.ts.`);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-9 -9 42 42" fill="none" stroke="#fdfcf8" stroke-width="2"><circle cx="12" cy="12" r="21" fill="#0e1216" stroke="none"/>${lines}</svg>`;
  icons.push({ name: `shortcut-${place}`, size: 192, svg, clear: true });
}

const executablePath = findChromium();
if (executablePath === null) throw new Error('No Chromium found; node .ci/chromium.js says what to do.');
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
try {
  for (const { name, size, svg, clear } of icons) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const source = `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
    await page.setContent(
      `<body style="margin:0"><img src="${source}" width="${size}" height="${size}" style="display:block">`,
    );
    await page.screenshot({ path: `public/icons/${name}.png`, omitBackground: clear });
    await page.close();
  }
} finally {
  await browser.close();
}
