/**
 * The modules of the first paint as one classic script. Chromium compiles a classic script while the service worker stores
 * it, and has the result at every start; modules it compiles anew each time, also those that come from a worker's cache.
 */
import ts from 'typescript';

/** Where the first script puts what the modules after it take. */
const SHARED = 'lathesideFirst';
/** Stands for `import.meta`, which a classic script doesn't have. */
const META = 'lathesideMeta';

/** @typedef {{ from: number, to: number, text: string }} Edit */

/**
 * @param {string} code
 * @param {readonly Edit[]} edits
 */
const edited = (code, edits) =>
  [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((out, { from, to, text }) => out.slice(0, from) + text + out.slice(to), code);

const NAME = '/chunk.js';

/** @param {string} code */
const parsed = (code) => ts.createSourceFile(NAME, code, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS);

/**
 * Tells which names mean the same variable.
 * @param {ts.SourceFile} source
 */
const checkerOf = (source) => {
  const host = {
    ...ts.createCompilerHost({}),
    getSourceFile: (/** @type {string} */ file) => (file === NAME ? source : undefined),
    fileExists: (/** @type {string} */ file) => file === NAME,
  };
  const options = { allowJs: true, noLib: true, noResolve: true, target: ts.ScriptTarget.ESNext };
  return ts.createProgram([NAME], options, host).getTypeChecker();
};

/**
 * @param {ts.Node} node
 * @param {(node: ts.Node) => void} see
 */
const walk = (node, see) => {
  see(node);
  ts.forEachChild(node, (child) => walk(child, see));
};

/** @param {ts.SourceFile} source */
const exportsOf = (source) => source.statements.filter(ts.isExportDeclaration);

/** @param {ts.ExportDeclaration} statement */
const namesOf = ({ exportClause, moduleSpecifier }) => {
  if (moduleSpecifier || !exportClause || !ts.isNamedExports(exportClause))
    throw new Error('A way to export that .ci/classic.js does not know.');
  return [...exportClause.elements];
};

/** @param {ts.Node} node the one that is assigned to, if any */
const assignedIn = (node) => {
  if (ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)) return node.operand;
  if (!ts.isBinaryExpression(node)) return null;
  const { kind } = node.operatorToken;
  return kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment ? node.left : null;
};

/**
 * Exported names that a function may give another value. Who took such a name from a classic script would keep the old one.
 * @param {string} code
 */
export const changedLater = (code) => {
  const source = parsed(code);
  const checker = checkerOf(source);
  const exported = new Set(
    exportsOf(source)
      .flatMap(namesOf)
      .map((name) => checker.getExportSpecifierLocalTargetSymbol(name)),
  );
  /** @type {Set<string>} */
  const found = new Set();
  walk(source, (node) => {
    const target = assignedIn(node);
    if (!target || !ts.isIdentifier(target) || !ts.findAncestor(node, ts.isFunctionLike)) return;
    const symbol = checker.getSymbolAtLocation(target);
    if (symbol && exported.has(symbol)) found.add(target.text);
  });
  return [...found];
};

/**
 * A module with what it imports from `file` taken from the first script.
 * @param {string} code
 * @param {string} file
 */
export const takingFrom = (code, file) => {
  const source = parsed(code);
  const edits = source.statements.filter(ts.isImportDeclaration).flatMap((statement) => {
    const { importClause, moduleSpecifier } = statement;
    if (!ts.isStringLiteralLike(moduleSpecifier) || moduleSpecifier.text !== `./${file}`) return [];
    const names = importClause?.namedBindings;
    if (!names || !ts.isNamedImports(names) || importClause.name)
      throw new Error('A way to import that .ci/classic.js does not know.');
    const taken = names.elements.map(({ name, propertyName }) =>
      propertyName ? `${propertyName.text}:${name.text}` : name.text,
    );
    return [
      { from: statement.getStart(), to: statement.getEnd(), text: `const{${taken.join()}}=${SHARED};` },
    ];
  });
  return edited(code, edits);
};

/**
 * Asks the browser to compile all of the script at once: what a first visit doesn't call would otherwise be compiled bit by bit at
 * the start after it. A comment to browsers that don't know it.
 */
const HINT = '//# allFunctionsCalledOnLoad\n';

/**
 * Both files as one classic script.
 * @param {string} first what the first paint needs, a module that imports nothing
 * @param {string} entry what starts the app; it imports nothing but `file`
 * @param {string} file name of the first one
 */
export const classicOf = (first, entry, file) => {
  const changed = changedLater(first);
  if (changed.length > 0) throw new Error(`Exported, and given another value later: ${changed.join(', ')}`);
  const edits = exportsOf(parsed(first)).map((statement) => ({
    from: statement.getStart(),
    to: statement.getEnd(),
    text: `globalThis.${SHARED}={${namesOf(statement)
      .map(({ name, propertyName }) => `${name.text}:${(propertyName ?? name).text}`)
      .join()}};`,
  }));
  const whole = `(${META}=>{"use strict";${edited(first, edits)};(()=>{${takingFrom(entry, file)}})()})({url:document.currentScript.src});`;
  /** @type {Edit[]} */
  const metas = [];
  walk(parsed(whole), (node) => {
    if (ts.isMetaProperty(node) && node.keywordToken === ts.SyntaxKind.ImportKeyword)
      metas.push({ from: node.getStart(), to: node.getEnd(), text: META });
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node))
      throw new Error('The first script imports more than itself.');
  });
  return edited(whole, metas);
};

/** @returns {import('vite').Plugin} */
export const classicStart = () => ({
  name: 'latheside-classic-start',
  apply: 'build',
  enforce: 'post',
  generateBundle(_, bundle) {
    const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
    const entry = chunks.find((chunk) => chunk.isEntry);
    const first = chunks.find((chunk) => chunk.name === 'first');
    if (!entry || !first) throw new Error('The build has no entry, or nothing for the first paint.');
    const file = first.fileName.replace(/^.*\//, '');
    entry.code = HINT + classicOf(first.code, entry.code, file);
    for (const chunk of chunks)
      if (chunk !== entry && chunk !== first) chunk.code = takingFrom(chunk.code, file);
    delete bundle[first.fileName];
  },
  transformIndexHtml: {
    order: 'post',
    handler: (page) => {
      // `crossorigin` stays: without it the script knows no address in a frame that has no origin, and imports nothing there.
      const out = page
        .replace(/\s*<link rel="modulepreload"[^>]*>/g, '')
        .replace('<script type="module" crossorigin src=', '<script defer crossorigin src=');
      if (!out.includes('<script defer crossorigin src='))
        throw new Error('The page starts its script in another way.');
      return out;
    },
  },
});
