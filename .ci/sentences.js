/**
 * The words of the app are data, not program: the build puts those that come after the first paint, sentences and tables of
 * words, into one JSON file, which is read quicker than a script and counted as what it is. In the source they stand where
 * they belong.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import ts from 'typescript';

const FOLDER = 'src/text';
/** Words that the first paint shows wait for no other file; those of the elements for other pages aren't the app's. */
const FIRST = /(frame|numbers|units|words|standing|embed)\.ts$/;
/** Shorter ones cost more as an entry than they save. */
const LEAST = 16;
/** The same for what stands between the values of a template. */
const LEAST_PART = 20;
const MODULE = 'virtual:sentences';
/** What Vite puts around every import(). */
const HELPER = '\0vite/preload-helper.js';

/** An object or list shorter than this as JSON stays where it is. */
const LEAST_DATA = 24;

/**
 * Plain data: what a literal says, where it says nothing but strings, numbers, and objects and lists of those.
 * @param {ts.Node} node
 * @returns {unknown} undefined for anything else
 */
const dataOf = (node) => {
  if (ts.isAsExpression(node) || ts.isSatisfiesExpression(node)) return dataOf(node.expression);
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (ts.isNumericLiteral(node)) return Number(node.text);
  if (ts.isArrayLiteralExpression(node)) {
    const all = node.elements.map(dataOf);
    return all.includes(undefined) ? undefined : all;
  }
  if (!ts.isObjectLiteralExpression(node)) return undefined;
  const all = node.properties.map(propertyOf);
  return all.includes(undefined) ? undefined : Object.fromEntries(/** @type {Entry[]} */ (all));
};

/** @typedef {readonly [string, unknown]} Entry */

/**
 * A property whose value is plain data.
 * @param {ts.ObjectLiteralElementLike} node
 * @returns {Entry | undefined}
 */
const propertyOf = (node) => {
  if (!ts.isPropertyAssignment(node)) return undefined;
  const { name } = node;
  if (!ts.isIdentifier(name) && !ts.isStringLiteral(name)) return undefined;
  const value = dataOf(node.initializer);
  return value === undefined ? undefined : [name.text, value];
};

/**
 * What of a module is data: strings that are sentences by their length and blanks, where they stand as a value; and outside of
 * functions whole objects and lists. Of an object with functions in it the plain part is one piece, to be spread.
 * @typedef {{ from: number, to: number, data: unknown, spread?: true, gone?: true, part?: true }} Piece
 * @param {string} code TypeScript
 * @returns {Piece[]} in the order of the source; `gone` went with a piece before it, `part` is one of a template
 */
export const sentencesIn = (code) => {
  /** @type {Piece[]} */
  const found = [];
  const source = ts.createSourceFile('words.ts', code, ts.ScriptTarget.Latest, true);
  /** @param {unknown} data */
  const isWorth = (data) => JSON.stringify(data).length >= LEAST_DATA;
  /** @param {ts.ObjectLiteralExpression} node */
  const plainPart = (node) => {
    const { properties } = node;
    // What is spread or computed may have the same name as what stands beside it.
    const isOpen = properties.some(
      (p) => ts.isSpreadAssignment(p) || (p.name && ts.isComputedPropertyName(p.name)),
    );
    const plain = isOpen ? [] : properties.filter((p) => propertyOf(p) !== undefined);
    const data = Object.fromEntries(plain.map((p) => /** @type {Entry} */ (propertyOf(p))));
    if (!isWorth(data)) return false;
    for (const [i, p] of properties.entries()) {
      const from = p.getStart(source);
      if (p === plain[0]) found.push({ from, to: p.getEnd(), data, spread: true });
      else if (plain.includes(p))
        found.push({ from, to: properties[i + 1]?.getFullStart() ?? properties.end, data, gone: true });
      else visit(p, false);
    }
    return true;
  };
  /**
   * @param {ts.Node} node
   * @param {boolean} inFunction
   */
  const visit = (node, inFunction) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) {
      const { parent, text } = node;
      const name = 'name' in parent && parent.name === node;
      if (!name && text.length >= LEAST && text.includes(' '))
        found.push({ from: node.getStart(source), to: node.getEnd(), data: text });
      return;
    }
    if (ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node)) {
      const { text } = node;
      // Around the text stand ` or } before it, and ${ or ` after it.
      const after = ts.isTemplateTail(node) ? 1 : 2;
      if (text.length >= LEAST_PART && text.includes(' '))
        found.push({ from: node.getStart(source) + 1, to: node.getEnd() - after, data: text, part: true });
      return;
    }
    if (!inFunction && (ts.isObjectLiteralExpression(node) || ts.isArrayLiteralExpression(node))) {
      const data = dataOf(node);
      if (data !== undefined && isWorth(data)) {
        found.push({ from: node.getStart(source), to: node.getEnd(), data });
        return;
      }
      if (ts.isObjectLiteralExpression(node) && plainPart(node)) return;
    }
    ts.forEachChild(node, (child) => visit(child, inFunction || ts.isFunctionLike(node)));
  };
  visit(source, false);
  return found;
};

/**
 * By what a piece is known in the list.
 * @param {Piece} piece
 */
export const pieceKey = ({ data }) => JSON.stringify(data);

/**
 * The same module with each of those pieces taken from the list.
 * @param {string} code
 * @param {ReadonlyMap<string, number>} places
 */
export const withoutSentences = (code, places) => {
  let out = '';
  let at = 0;
  for (const piece of sentencesIn(code)) {
    const place = `sentences[${places.get(pieceKey(piece)) ?? -1}]`;
    const taken = piece.part ? `\${${place}}` : `${piece.spread ? '...' : ''}${place}`;
    out += `${code.slice(at, piece.from)}${piece.gone ? '' : taken}`;
    at = piece.to;
  }
  return at === 0 ? code : `import { sentences } from '${MODULE}';\n${out}${code.slice(at)}`;
};

/** Style sheets of what comes after the first paint are no program either. */
const STYLED =
  /^(screens\/(?!shell\/(shell|frame-styles|glance))|elements\/(?!row|icons|headline|standing|bar|rule|screen|styles|listen))/;
const SHEET = /\bcss`([^`$]*)`/g;
/** @param {string} sheet */
const tidied = (sheet) =>
  sheet
    .replace(/\/\*[^]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .trim();

/**
 * The style sheets of a module that have no values in them.
 * @param {string} code
 * @returns {string[]}
 */
export const sheetsIn = (code) => [...code.matchAll(SHEET)].map(([, sheet = '']) => tidied(sheet));

/**
 * The same module with its style sheets taken from the list.
 * @param {string} code
 * @param {ReadonlyMap<string, number>} places by what stands in the list, as JSON
 */
export const withoutSheets = (code, places) => {
  if (sheetsIn(code).length === 0) return code;
  const out = code.replace(
    SHEET,
    (_, sheet) => `unsafeCSS(sentences[${places.get(JSON.stringify(tidied(sheet))) ?? -1}])`,
  );
  return `import { unsafeCSS } from 'lit';\nimport { sentences } from '${MODULE}';\n${out}`;
};

/** @param {string} file */
const isLater = (file) => file.endsWith('.ts') && !FIRST.test(file);
/** @param {string} file below src */
const isStyled = (file) => file.endsWith('.ts') && STYLED.test(file.replaceAll('\\', '/'));

/**
 * Vite's helper around every import() made to wait for the list, which the file imported needs at once. The list can't wait
 * by itself, with a top-level await: WebKit hands a module that waits to its second importer before it has run.
 * @param {string} code
 */
export const waitingForSentences = (code) => {
  const CALL = 'return baseModule()';
  if (code.split(CALL).length !== 2)
    throw new Error('The helper of import() has changed: see .ci/sentences.js.');
  return `import { asked } from '${MODULE}';\n${code.replace(CALL, 'return asked().then(baseModule)')}`;
};

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
        for (const piece of sentencesIn(readFileSync(join(FOLDER, file), 'utf8')))
          if (!places.has(pieceKey(piece))) places.set(pieceKey(piece), places.size);
      for (const file of readdirSync('src', { recursive: true, encoding: 'utf8' }).filter(isStyled).sort())
        for (const sheet of sheetsIn(readFileSync(join('src', file), 'utf8')).map((x) => JSON.stringify(x)))
          if (!places.has(sheet)) places.set(sheet, places.size);
      json = `[${[...places.keys()].join(',')}]`;
      name = `sentences-${createHash('sha256').update(json).digest('base64url').slice(0, 8)}.json`;
    },
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
    load(id) {
      if (id !== `\0${MODULE}`) return null;
      // Where the phone writes a comma the sentences do too; of strings without a blank, and of style sheets, nothing is changed.
      return `import { mark, marked } from '${resolve(FOLDER, 'numbers.ts')}';
export const sentences = [];
const said = (_, x) => typeof x === 'string' && / /.test(x) && !/{/.test(x) ? marked(x) : x;
let asking;
export const asked = () => asking ??= fetch(new URL(/* @vite-ignore */ './${name}', import.meta.url))
  .then((answer) => answer.text())
  .then((text) => { sentences.push(...JSON.parse(text, mark() === ',' ? said : undefined)); });`;
    },
    transform(code, id) {
      if (id === HELPER) return { code: waitingForSentences(code), map: null };
      const [, file] = /[\\/]src[\\/]text[\\/](.*\.ts)$/.exec(id) ?? [];
      if (file && isLater(file)) return { code: withoutSentences(code, places), map: null };
      const [, styled] = /[\\/]src[\\/](.*\.ts)$/.exec(id) ?? [];
      return styled && isStyled(styled) ? { code: withoutSheets(code, places), map: null } : null;
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: `assets/${name}`, source: json });
    },
  };
};
