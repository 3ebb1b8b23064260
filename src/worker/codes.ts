import encodeQR from 'qr';
import decodeQR from 'qr/decode.js';
import { drawingOf, type CodeDrawing } from '../core/carry/codes/drawing';

/** Digits to draw as codes, or a picture to look for a code in. */
export type CodesAsk =
  | { readonly id: number; readonly texts: readonly string[] }
  | { readonly id: number; readonly image: ImageData };
export interface CodesAnswer {
  readonly id: number;
  readonly drawings: readonly CodeDrawing[];
  /** What the code in the picture says; none where none was found. */
  readonly read: readonly string[];
}

const draw = (text: string): CodeDrawing => drawingOf(encodeQR(text, 'raw', { ecc: 'medium', border: 0 }));

const read = (image: ImageData): string[] => {
  try {
    return [decodeQR(image)];
  } catch {
    // No code in this picture, or none that can be made out: the next one may have it.
    return [];
  }
};

/** Draws codes and reads them off the main thread: each takes longer than a frame of the screen. */
const port = self as unknown as {
  onmessage: ((e: MessageEvent<CodesAsk>) => void) | null;
  postMessage(answer: CodesAnswer): void;
};
port.onmessage = ({ data }) => {
  const drawings = 'texts' in data ? data.texts.map(draw) : [];
  port.postMessage({ id: data.id, drawings, read: 'image' in data ? read(data.image) : [] });
};
