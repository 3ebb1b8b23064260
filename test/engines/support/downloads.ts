import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

const PATIENCE_MS = 15_000;

/** Does what makes a file, and gives that file's path once all of it is in the folder. */
export const newFile = async (folder: string, press: () => Promise<void>): Promise<string> => {
  const before = new Set(readdirSync(folder));
  await press();
  let size = -1;
  for (const end = Date.now() + PATIENCE_MS; Date.now() < end; await pause(200)) {
    const names = readdirSync(folder).filter((name) => !before.has(name));
    const [name] = names;
    // While it is written there is another file beside it, or it is empty.
    if (name === undefined || names.length > 1 || /\.(part|wkdownload)$/.test(name)) continue;
    const path = join(folder, name);
    const now = statSync(path).size;
    if (now > 0 && now === size) return path;
    size = now;
  }
  throw new Error(`No file came into ${folder}.`);
};
