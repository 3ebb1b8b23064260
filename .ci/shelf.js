/**
 * Makes the list of a shelf: `npm run shelf -- FOLDER` reads every machine's file in the folder and writes `index.json`
 * beside them. Without a folder it takes `dist/shelf`. Files of everything, and what can't be read, are named and left out.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const LIST = 'index.json';

/**
 * What the list says of one file; null for one that isn't a single machine.
 * @param {string} file
 * @param {string} text
 */
const entryOf = (file, text) => {
  try {
    const { format, kind, records } = JSON.parse(text);
    const machine = records?.machines?.[0];
    if (format !== 'latheside' || kind !== 'machine' || !machine) return null;
    const { name, workshop } = machine.body.profile;
    return { file, name, workshop, machine: machine.id, rev: machine.rev };
  } catch {
    return null;
  }
};

/**
 * Writes the list of a folder.
 * @param {string} folder
 * @returns the names of the files in the list, and of those left out
 */
export const makeShelf = (folder) => {
  const names = readdirSync(folder).filter((name) => name.endsWith('.json') && name !== LIST);
  const read = names.sort().map((name) => entryOf(name, readFileSync(join(folder, name), 'utf8')) ?? name);
  const files = read.filter((entry) => typeof entry !== 'string');
  const list = { format: 'latheside-shelf', version: 1, files };
  writeFileSync(join(folder, LIST), `${JSON.stringify(list, null, 1)}\n`);
  return { files: files.map((f) => f.file), left: read.filter((entry) => typeof entry === 'string') };
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2] ?? join('dist', 'shelf');
  const { files, left } = makeShelf(folder);
  console.log(`${files.length} files in ${join(folder, LIST)}.`);
  for (const name of left) console.log(`Left out, no file of one machine: ${name}`);
}
