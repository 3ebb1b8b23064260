import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import encodeQR from 'qr';

/** What a camera sees of a code held in front of it. */
export interface Shot {
  readonly text: string;
  /** Degrees the phone is turned. */
  readonly turned: number;
  /** Standard deviation of the blur, pixels. */
  readonly blur: number;
  /** How much larger one side of the code looks than the other, 0.05 for 5 %. */
  readonly tilted: number;
}

const WIDE = 1280;
const HIGH = 720;
/** The code with its quiet zone takes this much of the picture's height. */
const FILLS = 0.85;
const QUIET = 4;
const ROOM = 90;

/** Brightness of the picture from 0 to 255, a row after another: the code on white on a grey bench, lit from one side. */
const brightness = ({ text, turned, blur, tilted }: Shot): Float32Array => {
  const rows = encodeQR(text, 'raw', { ecc: 'medium', border: 0 });
  const size = rows.length + 2 * QUIET;
  const scale = (HIGH * FILLS) / size;
  const [cos, sin] = [Math.cos((turned * Math.PI) / 180), Math.sin((turned * Math.PI) / 180)];
  const at = (px: number, py: number): number => {
    const [x, y] = [px - WIDE / 2, py - HIGH / 2];
    const [u, v] = [(cos * x + sin * y) / scale, (cos * y - sin * x) / scale];
    const away = 1 + (tilted * u) / size;
    const [column, row] = [Math.floor(u / away + size / 2), Math.floor(v / away + size / 2)];
    if (column < 0 || row < 0 || column >= size || row >= size) return ROOM;
    return rows[row - QUIET]?.[column - QUIET] ? 30 : 225;
  };
  const sharp = new Float32Array(WIDE * HIGH);
  // Four points in each pixel.
  for (let y = 0; y < HIGH; y += 1)
    for (let x = 0; x < WIDE; x += 1)
      sharp[y * WIDE + x] =
        (at(x + 0.25, y + 0.25) + at(x + 0.75, y + 0.25) + at(x + 0.25, y + 0.75) + at(x + 0.75, y + 0.75)) /
        4;
  return blurred(blurred(sharp, blur, 1), blur, WIDE);
};

/** One direction of a Gaussian blur; what lies outside counts as the nearest pixel of the film. */
const blurred = (from: Float32Array, sigma: number, step: number): Float32Array => {
  if (sigma === 0) return from;
  const reach = Math.ceil(2.5 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((a, b) => a + b);
  return from.map((_, i) => {
    let all = 0;
    weights.forEach((weight, w) => {
      const there = Math.min(from.length - 1, Math.max(0, i + (w - reach) * step));
      all += weight * (from[there] ?? 0);
    });
    return all / sum;
  });
};

/** A film that Chromium plays as a camera, over and over: YUV4MPEG2, without colour. Remove its folder afterwards. */
export const filmOf = (shots: readonly Shot[], perSecond: number): { path: string; remove: () => void } => {
  const folder = mkdtempSync(join(tmpdir(), 'latheside-film-'));
  const grey = Buffer.alloc((WIDE * HIGH) / 2, 128);
  const frames = shots.flatMap((shot) => {
    const light = brightness(shot).map((v, i) => v * (1 - (0.2 * (i % WIDE)) / WIDE));
    return [Buffer.from('FRAME\n'), Buffer.from(Uint8Array.from(light)), grey];
  });
  const head = `YUV4MPEG2 W${WIDE} H${HIGH} F${perSecond}:1 Ip A1:1 C420jpeg\n`;
  const path = join(folder, 'camera.y4m');
  writeFileSync(path, Buffer.concat([Buffer.from(head), ...frames]));
  return { path, remove: () => rmSync(folder, { recursive: true, force: true }) };
};

/** Flags under which Chromium plays a film as its camera and allows it unasked. */
export const cameraFlags = (path: string): string[] => [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  `--use-file-for-fake-video-capture=${path}`,
];
