import { readDocument, writeDocument, type Content, type ReadResult } from '../core/carry';
import { Pieces, piecesOf, type CarryAnswer, type CarryAsk } from './carry-messages';

const say = (answer: CarryAnswer): void => postMessage(answer);

/** The text of a file; null for bytes that are no UTF-8. */
const textOf = async (file: Blob): Promise<string | null> => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return null;
  }
};

const send = (result: ReadResult): void => {
  if (!result.ok) return say({ kind: 'read', result });
  for (const piece of piecesOf(result.document)) say(piece);
  say({ kind: 'read', result: { ok: true, document: { ...result.document, records: {}, earlier: [] } } });
};

/** As bytes: the page has nothing more to do with a large text. */
const write = (content: Content): void => {
  const { text, left } = writeDocument(content);
  say({ kind: 'written', file: new Blob([text]), left });
};

const given = new Pieces();

addEventListener('message', ({ data }: MessageEvent<CarryAsk>) => {
  if (data.kind === 'rows') return given.add(data);
  if (data.kind === 'write') {
    const { records, earlier } = given;
    return write({ ...data.head, records, earlier });
  }
  void textOf(data.file).then((text) =>
    send(text === null ? { ok: false, code: 'encoding', params: {} } : readDocument(text)),
  );
});
