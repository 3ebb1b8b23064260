import { systemDetector } from '../../device/detector';
import type { CodeWorker } from './codes-talk';

/**
 * Pixels of a picture's side at most, in turn: five and more for each module of the largest code where it fills most of
 * the picture. And every other picture is turned a quarter. Patterns of a code's own that look like its corners hide
 * one in thirty from the library for as long as a picture stays the same; another size or the other direction shows it.
 */
const SIDES = [720, 600, 480];
/** Between two pictures, so that the screen has its turn. */
const REST_MS = 30;

/** The middle square of what the camera shows, where a person holds the code. */
const pictureOf = (video: HTMLVideoElement, canvas: HTMLCanvasElement, turn: number): ImageData | null => {
  const whole = Math.min(video.videoWidth, video.videoHeight);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (whole === 0 || !context) return null;
  const side = Math.min(whole, SIDES[turn % SIDES.length] ?? 0);
  canvas.width = canvas.height = side;
  if (turn % 2 === 1) context.setTransform(0, 1, -1, 0, side, 0);
  const [x, y] = [(video.videoWidth - whole) / 2, (video.videoHeight - whole) / 2];
  context.drawImage(video, x, y, whole, whole, 0, 0, side, side);
  return context.getImageData(0, 0, side, side);
};

/** Looks for codes in what a camera shows, picture after picture, until it is stopped; gives the function that stops it. */
export const watchCodes = (
  video: HTMLVideoElement,
  worker: CodeWorker,
  onText: (text: string) => void,
): (() => void) => {
  const canvas = document.createElement('canvas');
  let on = true;
  const pause = (): Promise<unknown> => new Promise((done) => setTimeout(done, REST_MS));
  const look = async (): Promise<void> => {
    let system = await systemDetector();
    for (let turn = 0; on; turn += 1, await pause()) {
      const image = document.hidden ? null : pictureOf(video, canvas, turn);
      if (!image) continue;
      let found: readonly string[] = [];
      try {
        found = system ? await system(image) : await worker.read(image);
      } catch {
        // A detector that has no service behind it says so only when asked.
        system = null;
      }
      for (const text of found) if (on) onText(text);
    }
  };
  void look();
  return () => {
    on = false;
  };
};
