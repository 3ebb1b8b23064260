/**
 * The sentences of the app are data, not program: the build puts those of the words that come after the first paint into
 * one JSON file, which is read quicker than a script and counted as what it is. In the source they stand where they belong.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

const FOLDER = 'src/text';
/** Words that the first paint shows: those wait for no other file. */
const FIRST = /(app|frame|numbers|pad|paths|settings|speed|threads|typed|units|why-limits|words|time)\.ts$/;
/** Shorter ones cost more as an entry than they save. */
const LEAST = 16;
/** The same for what stands between the values of a template. */
const LEAST_PART = 20;
const MODULE = 'virtual:sentences';

/**
 * Every string that is a sentence by its length and its blanks, where it stands as a value, and every such part of a template.
 * @param {string} code TypeScript
 * @returns {{ from: number, to: number, text: string, part: boolean }[]} in the order of the source
 */
export const sentencesIn = (code) => {
  /** @type {{ from: number, to: number, text: string, part: boolean }[]} */
  const found = [];
  const source = ts.createSourceFile('words.ts', code, ts.ScriptTarget.Latest, true);
  /** @param {ts.Node} node */
  const visit = (node) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) {
      const { parent, text } = node;
      const name = 'name' in parent && parent.name === node;
      if (!name && text.length >= LEAST && text.includes(' '))
        found.push({ from: node.getStart(source), to: node.getEnd(), text, part: false });
      return;
    }
    if (ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node)) {
      const { text } = node;
      // Around the text stand ` or } before it, and ${ or ` after it.
      const after = ts.isTemplateTail(node) ? 1 : 2;
      if (text.length >= LEAST_PART && text.includes(' '))
        found.push({ from: node.getStart(source) + 1, to: node.getEnd() - after, text, part: true });
      return;
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
};

/**
 * The same module with each of those sentences taken from the list.
 * @param {string} code
 * @param {ReadonlyMap<string, number>} places
 */
export const withoutSentences = (code, places) => {
  let out = '';
  let at = 0;
  for (const { from, to, text, part } of sentencesIn(code)) {
    const taken = `sentences[${places.get(text) ?? -1}]`;
    out += code.slice(at, from) + (part ? `\${${taken}}` : taken);
    at = to;
  }
  return at === 0 ? code : `import { sentences } from '${MODULE}';\n${out}${code.slice(at)}`;
};

/** @param {string} file */
const isLater = (file) => file.endsWith('.ts') && !FIRST.test(file);

/** @returns {import('vite').Plugin} */
export const sentencesApart = () => {
  /** @type {Map<string, number>} */
  const places = new Map();
  let json = '';
  let name = '';
  return {
    name: 'latheside-sentences',
    enforce: 'pre',
    apply: 'build',
    buildStart() {
      places.clear();
      for (const file of readdirSync(FOLDER, { recursive: true, encoding: 'utf8' }).filter(isLater).sort())
        for (const { text } of sentencesIn(readFileSync(join(FOLDER, file), 'utf8')))
          if (!places.has(text)) places.set(text, places.size);
      json = JSON.stringify([...places.keys()]);
      name = `sentences-${createHash('sha256').update(json).digest('base64url').slice(0, 8)}.json`;
    },
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
    load(id) {
      if (id !== `\0${MODULE}`) return null;
      return `export const sentences = await (await fetch(new URL(/* @vite-ignore */ './${name}', import.meta.url))).json();`;
    },
    transform(code, id) {
      const [, file] = /[\\/]src[\\/]text[\\/](.*\.ts)$/.exec(id) ?? [];
      return file && isLater(file) ? { code: withoutSentences(code, places), map: null } : null;
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: `assets/${name}`, source: json });
    },
  };
};
