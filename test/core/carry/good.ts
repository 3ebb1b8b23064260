import { writeDocument, type Content } from '../../../src/core/carry';
import { canonical } from '../../../src/core/carry/canonical';
import { crc32 } from '../../../src/core/carry/crc';
import { storeProfile } from '../../../src/core/machine';
import { EXAMPLES } from '../../../src/core/machine/examples';
import { version } from './support';

const machine = { ...version('2-a', ['1-a'], storeProfile(EXAMPLES.heron())), id: 'm1' };
const record = { id: 'e1', schema: 1, kind: 'test', machine: 'm1', at: 5, device: 'a', takenBack: 6 };
const content: Content = {
  kind: 'everything',
  made: '2026-11-27T14:32:00.000Z',
  app: '0.1.0',
  records: {
    machines: [machine],
    evidence: [{ ...record, body: { n: 1 } }],
    meta: [{ id: 'value/readings', value: { wire: { n: '1', d: '2', unit: 'mm' } } }],
  },
  earlier: [],
};

/** The text of a file with a row of each shape. */
export const GOOD = writeDocument(content).text;

/** The text of a document with a checksum that is right for it, reckoned by the words of the schema. */
export const again = (document: object): string => {
  const { checksum: _, ...rest } = document as { checksum?: unknown };
  return JSON.stringify({ ...rest, checksum: crc32(canonical(rest)) });
};
