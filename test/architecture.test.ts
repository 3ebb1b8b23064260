/**
 * Who may import whom, and what may not stand in core. The table is the one in DEVELOPERS.md ("Rooms").
 * Each rule is also run on planted offences, so that none can pass by looking at nothing.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

/** For each room: the rooms it may import, and the packages. A room marked `types` gives types only. */
const TABLE: Record<string, { rooms: string[]; packages: string[] }> = {
  core: { rooms: [], packages: ['valibot'] },
  text: { rooms: ['core'], packages: [] },
  elements: { rooms: ['core', 'text (types)'], packages: ['lit'] },
  storage: { rooms: ['core'], packages: ['idb', 'valibot'] },
  state: { rooms: ['core', 'storage'], packages: [] },
  device: { rooms: [], packages: ['workbox-window'] },
  'service-worker': { rooms: [], packages: ['workbox-precaching'] },
  worker: { rooms: ['core'], packages: ['qr'] },
  embed: { rooms: ['core', 'text', 'elements'], packages: ['lit'] },
  screens: { rooms: ['core', 'text', 'elements', 'state', 'device', 'worker'], packages: ['lit'] },
};
/** The one file that joins the rooms, and the declarations of what the build puts in. */
const DOORS = ['main.ts', 'build.d.ts'];
const DOOR_PACKAGES = ['lit'];

/** Sources by path below src, with forward slashes. */
type Sources = Record<string, string>;
interface Import {
  from: string;
  to: string;
  typesOnly: boolean;
}

function readSources(): Sources {
  const names = readdirSync('src', { recursive: true, encoding: 'utf8' });
  const files = names.map((name) => name.replaceAll('\\', '/')).filter((name) => name.endsWith('.ts'));
  return Object.fromEntries(files.map((name) => [name, readFileSync(join('src', name), 'utf8')]));
}

const parse = (name: string, text: string): ts.SourceFile =>
  ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);

function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => {
    walk(child, visit);
  });
}

/** Every import of a file: static, re-export, dynamic, `import('…')` in a type, and addresses of workers. */
function importsOf(from: string, text: string): Import[] {
  const found: Import[] = [];
  const add = (node: ts.Node | undefined, typesOnly: boolean): void => {
    if (node && ts.isStringLiteralLike(node)) found.push({ from, to: node.text, typesOnly });
  };
  walk(parse(from, text), (node) => {
    if (ts.isImportDeclaration(node)) {
      const bindings = node.importClause?.namedBindings;
      const named = bindings && ts.isNamedImports(bindings) ? bindings.elements : undefined;
      const each = named !== undefined && named.length > 0 && named.every((element) => element.isTypeOnly);
      const typeClause = node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
      add(node.moduleSpecifier, typeClause || (each && node.importClause?.name === undefined));
    } else if (ts.isExportDeclaration(node)) {
      add(node.moduleSpecifier, node.isTypeOnly);
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      add(node.argument.literal, true);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [address] = node.arguments;
      if (address && ts.isStringLiteralLike(address)) add(address, false);
      else found.push({ from, to: '(computed)', typesOnly: false });
    } else if (ts.isNewExpression(node) && node.expression.getText() === 'URL') {
      const [address, base] = node.arguments ?? [];
      if (base?.getText() === 'import.meta.url') add(address, false);
    }
  });
  return found;
}

const roomOf = (path: string): string => path.split('/')[0] ?? '';
/** A screen is what stands first below `screens`: a folder, or a single file. */
const screenOf = (path: string): string => path.split('/')[1] ?? '';
/** Path below src that a relative import names, without regard to its ending. */
const targetOf = ({ from, to }: Import): string =>
  posix.normalize(posix.join(posix.dirname(from), to.replace(/\?.*$/, '')));
const isRelative = ({ to }: Import): boolean => to.startsWith('.');
const packageOf = ({ to }: Import): string =>
  to
    .split('/')
    .slice(0, to.startsWith('@') ? 2 : 1)
    .join('/');

/** What breaks the import table, one line each. */
function importOffences(sources: Sources): string[] {
  return Object.entries(sources).flatMap(([name, text]) => {
    const room = roomOf(name);
    if (!name.includes('/') && !DOORS.includes(name))
      return [`${name}: only ${DOORS.join(', ')} stand in src`];
    if (name.includes('/') && !(room in TABLE)) return [`${name}: unknown room ${room}`];
    return importsOf(name, text).flatMap((one) => {
      const problem = DOORS.includes(name) ? doorProblem(one) : problemOf(room, one);
      return problem === null ? [] : [`${name} imports ${one.to}: ${problem}`];
    });
  });
}

function doorProblem(one: Import): string | null {
  if (isRelative(one)) return targetOf(one).startsWith('..') ? 'outside src' : null;
  return DOOR_PACKAGES.includes(packageOf(one)) ? null : 'package not in the table';
}

function problemOf(room: string, one: Import): string | null {
  if (one.to === '(computed)') return 'an address that can only be known when it runs';
  const allowed = TABLE[room];
  if (!isRelative(one)) {
    const name = packageOf(one);
    if (name === 'fraction.js') return one.from.startsWith('core/quantity/') ? null : 'only core/quantity';
    return allowed?.packages.includes(name) ? null : 'package not in the table';
  }
  const target = targetOf(one);
  const to = roomOf(target);
  if (!(to in TABLE)) return 'no room of src';
  if (to === room) {
    // One file joins the screens that are loaded together.
    return room === 'screens' &&
      one.from !== 'screens/rest.ts' &&
      screenOf(one.from).replace(/\.ts$/, '') !== screenOf(target)
      ? 'a screen imports no other screen'
      : null;
  }
  if (allowed?.rooms.includes(to)) return null;
  if (allowed?.rooms.includes(`${to} (types)`)) return one.typesOnly ? null : 'types only';
  return `${room} may not import ${to}`;
}

/** Folder a file belongs to, `core/drive` or `device`; what lies deeper is a part of that folder. */
const folderOf = (path: string): string => posix.dirname(path).split('/').slice(0, 2).join('/');

/** A cycle of folders that import values from one another, or null. */
function folderCycle(sources: Sources): string[] | null {
  const edges = new Map<string, Set<string>>();
  for (const [name, text] of Object.entries(sources)) {
    for (const one of importsOf(name, text)) {
      if (!isRelative(one)) continue;
      const target = targetOf(one);
      const to = folderOf(`${target}/index.ts` in sources ? `${target}/index.ts` : target);
      const from = folderOf(name);
      if (from === to || from === '.') continue;
      edges.set(from, (edges.get(from) ?? new Set()).add(to));
    }
  }
  const done = new Set<string>();
  function visit(folder: string, path: string[]): string[] | null {
    const at = path.indexOf(folder);
    if (at >= 0) return [...path.slice(at), folder];
    if (done.has(folder)) return null;
    for (const next of edges.get(folder) ?? []) {
      const cycle = visit(next, [...path, folder]);
      if (cycle) return cycle;
    }
    done.add(folder);
    return null;
  }
  for (const folder of edges.keys()) {
    const cycle = visit(folder, []);
    if (cycle) return cycle;
  }
  return null;
}

const MAKERS = ['ratio', 'add', 'sub', 'mul', 'div', 'lead'];

/** Exact numbers made outside their one gate, or from a number with a fractional part. */
function exactnessOffences(sources: Sources): string[] {
  return Object.entries(sources).flatMap(([name, text]) => {
    const found: string[] = [];
    walk(parse(name, text), (node) => {
      if (!ts.isCallExpression(node) && !ts.isNewExpression(node)) return;
      const called = node.expression.getText();
      if (called === 'Fraction' && !name.startsWith('core/quantity/')) {
        found.push(`${name}: ${node.getText()}`);
      }
      const fractional = node.arguments?.some(
        (argument) => ts.isNumericLiteral(argument) && !Number.isInteger(Number(argument.text)),
      );
      if (MAKERS.includes(called) && fractional) found.push(`${name}: ${node.getText()}`);
    });
    return found;
  });
}

/** Three words in a row: something a person would read, which belongs to src/text. */
const WORDS = /[A-Za-z]{2,} [a-z]{2,} [a-z]{2,}/;

/** Text of a person's language in core. Errors, sources of figures and words to search by aren't read by anyone. */
function sentenceOffences(sources: Sources): string[] {
  return Object.entries(sources).flatMap(([name, text]) => {
    if (!name.startsWith('core/')) return [];
    const found: string[] = [];
    walk(parse(name, text), (node) => {
      const isText =
        ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node);
      if (isText && WORDS.test(node.text) && !isForUs(node)) found.push(`${name}: ${node.text}`);
    });
    return found;
  });
}

const UNREAD = ['source', 'words'];

function isForUs(node: ts.Node): boolean {
  for (let up: ts.Node | undefined = node; up; up = up.parent) {
    if (ts.isNewExpression(up) && /Error$/.test(up.expression.getText())) return true;
    if (ts.isPropertyAssignment(up) && UNREAD.includes(up.name.getText())) return true;
    if (ts.isVariableDeclaration(up) && /SOURCE/.test(up.name.getText())) return true;
  }
  return false;
}

const sources = readSources();

describe('who may import whom', () => {
  it('looks at the sources there are', () => {
    expect(Object.keys(sources)).toContain('core/quantity/ratio.ts');
    const all = Object.entries(sources).flatMap(([name, text]) => importsOf(name, text));
    expect(all.length).toBeGreaterThan(20);
  });

  it('keeps to the table', () => {
    expect(importOffences(sources)).toEqual([]);
  });

  it('has no cycle of folders', () => {
    expect(folderCycle(sources)).toBeNull();
  });

  it.each<[string, string, string]>([
    ['core/drive/x.ts', `import { html } from 'lit';`, 'package not in the table'],
    ['core/drive/x.ts', `export * from '../../text/words';`, 'core may not import text'],
    ['core/drive/x.ts', `type A = import('../../state/job').Job;`, 'core may not import state'],
    ['core/drive/x.ts', `import Fraction from 'fraction.js';`, 'only core/quantity'],
    ['core/drive/x.ts', `const a = await import('../../device/share');`, 'core may not import device'],
    ['core/drive/x.ts', 'const a = await import(`${name}`);', 'only be known when it runs'],
    ['core/drive/x.ts', `import '../../../.ci/policy.js';`, 'no room of src'],
    ['elements/x.ts', `import { words } from '../text/words';`, 'types only'],
    ['elements/x.ts', `import '../storage/open';`, 'elements may not import storage'],
    ['embed/x.ts', `import type { App } from '../state';`, 'embed may not import state'],
    ['embed/x.ts', `import '../screens/checks/asked';`, 'embed may not import screens'],
    ['embed/x.ts', `import '../device/share';`, 'embed may not import device'],
    ['screens/speed/x.ts', `import '../../storage/open';`, 'screens may not import storage'],
    ['screens/speed/x.ts', `import { a } from '../checks/list';`, 'a screen imports no other screen'],
    [
      'screens/speed/x.ts',
      `new Worker(new URL('../../storage/w.ts', import.meta.url));`,
      'not import storage',
    ],
    ['state/x.ts', `import { vibrate } from '../device/vibrate';`, 'state may not import device'],
    ['device/x.ts', `import type { Ratio } from '../core/quantity';`, 'device may not import core'],
    ['helpers/x.ts', ``, 'unknown room helpers'],
    ['util.ts', ``, 'stand in src'],
    ['main.ts', `import 'left-pad';`, 'package not in the table'],
  ])('refuses in %s: %s', (name, text, why) => {
    const offences = importOffences({ [name]: text });
    expect(offences).toHaveLength(1);
    expect(offences[0]).toContain(why);
  });

  it.each<[string, string]>([
    ['elements/x.ts', `import type { Words } from '../text/words';`],
    ['elements/x.ts', `import { type Words, type Other } from '../text/words';`],
    ['core/quantity/x.ts', `import Fraction from 'fraction.js';`],
    ['screens/speed/x.ts', `import { a } from './parts/dial';\nimport '../../state/job';`],
    ['main.ts', `import './storage/open';\nawait import('./screens/speed/speed');`],
  ])('allows in %s: %s', (name, text) => {
    expect(importOffences({ [name]: text })).toEqual([]);
  });

  it('finds a cycle through an index and a plain file', () => {
    const cycle = folderCycle({
      'core/a/index.ts': `export * from './x';`,
      'core/a/x.ts': `import { b } from '../b/y';`,
      'core/b/y.ts': `import { x } from '../a';`,
    });
    expect(cycle).toEqual(['core/a', 'core/b', 'core/a']);
  });
});

describe('core is exact and speaks no language', () => {
  it('makes exact numbers in one place, from whole numbers', () => {
    expect(exactnessOffences(sources)).toEqual([]);
  });

  it.each(['new Fraction(1n, 2n)', 'ratio(0.5)', 'mul(a, 1.25)'])('refuses %s', (text) => {
    expect(exactnessOffences({ 'core/drive/x.ts': text })).toHaveLength(1);
  });

  it('holds no sentences', () => {
    expect(sentenceOffences(sources)).toEqual([]);
  });

  it.each([
    `const a = 'The drive keeps up.';`,
    'const a = `highest rpm is ${n}`;',
    'const a = `${n} is too high to cut`;',
  ])('refuses %s', (text) => {
    expect(sentenceOffences({ 'core/drive/x.ts': text })).toHaveLength(1);
  });

  it('leaves errors and sources alone', () => {
    const text = `throw new RangeError('not a whole number'); const a = { source: 'see the printed table' };`;
    expect(sentenceOffences({ 'core/drive/x.ts': text })).toEqual([]);
  });

  it('is compiled without a DOM or Node', () => {
    const { config } = ts.readConfigFile('src/core/tsconfig.json', (path) => readFileSync(path, 'utf8')) as {
      config: object;
    };
    const { options } = ts.parseJsonConfigFileContent(config, ts.sys, 'src/core');
    expect(options.lib?.length).toBeGreaterThan(0);
    for (const lib of options.lib ?? []) expect(lib).toMatch(/^lib\.es\d+\.d\.ts$/);
    expect(options.types).toEqual([]);
  });
});
