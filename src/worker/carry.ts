import { readDocument, writeDocument, type ReadResult } from '../core/carry';
import { PIECE, type CarryAnswer, type CarryAsk } from './carry-messages';

const say = (answer: CarryAnswer): void => postMessage(answer);

/** The text of a file; null for bytes that are no UTF-8. */
const textOf = async (file: Blob): Promise<string | null> => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
};

/** The rows go in pieces: whoever takes them in is never busy with all of them at once. */
const send = (result: ReadResult): void => {
  if (!result.ok) return say({ kind: 'read', result });
  const { records, earlier, ...head } = result.document;
  const all = [...Object.entries(records), ['', earlier] as const];
  for (const [store, rows] of all)
    for (let at = 0; at === 0 || at < rows.length; at += PIECE)
      say({ kind: 'rows', store, rows: rows.slice(at, at + PIECE) });
  say({ kind: 'read', result: { ok: true, document: { ...head, records: {}, earlier: [] } } });
};

addEventListener('message', ({ data }: MessageEvent<CarryAsk>) => {
  if (data.kind === 'write') return say({ kind: 'written', ...writeDocument(data.content) });
  void textOf(data.file).then((text) =>
    send(text === null ? { ok: false, code: 'encoding', params: {} } : readDocument(text)),
  );
});
