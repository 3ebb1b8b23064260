/**
 * The custom-elements manifest (schema 2.1.0) and the types of the elements for other pages, read from their sources: what
 * stands in the doc comments and in the declarations beside them, and nothing that would have to be kept up by hand.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** @typedef {import('custom-elements-manifest/schema').Package} Package */
/** @typedef {import('custom-elements-manifest/schema').CustomElementDeclaration} Declared */
/** @typedef {{ name: string, type: string, text: string }} Tag */

const SCHEMA = '2.1.0';

/** @param {string} folder */
const sourcesOf = (folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) =>
      ts.createSourceFile(name, readFileSync(join(folder, name), 'utf8'), ts.ScriptTarget.Latest, true),
    );

/** @param {ts.Node} node */
const docOf = (node) => /** @type {{ jsDoc?: ts.JSDoc[] }} */ (node).jsDoc?.at(-1);
/** @param {string | ts.NodeArray<ts.JSDocComment> | undefined} comment */
const plain = (comment) => (ts.getTextOfJSDocComment(comment) ?? '').replace(/\s+/g, ' ').trim();
/** @param {ts.Node} node */
const description = (node) => plain(docOf(node)?.comment);

/**
 * Tags of one kind: `{type} name - text`.
 * @param {ts.Node} node
 * @param {string} kind
 * @returns {Tag[]}
 */
const tags = (node, kind) =>
  (docOf(node)?.tags ?? [])
    .filter((tag) => tag.tagName.text === kind)
    .map((tag) => {
      // What TypeScript makes of a tag differs from tag to tag: the words themselves don't.
      const words = tag
        .getText()
        .replace(/\n\s*\*/g, ' ')
        .replace(/\s+/g, ' ')
        .trim();
      const [, type = '', name = '', text = ''] =
        /^@\w+ (?:\{([^}]*)\} )?(\S+)(?: - (.*))?$/.exec(words) ?? [];
      return { name, type, text };
    });

/** @param {ts.ClassDeclaration | ts.PropertyDeclaration} node @param {string} name */
const decorator = (node, name) =>
  ts
    .getDecorators(node)
    ?.map((d) => d.expression)
    .find((e) => ts.isCallExpression(e) && e.expression.getText() === name);

/** @param {ts.Expression | undefined} value */
const typeOfValue = (value) => {
  if (value && ts.isStringLiteral(value)) return 'string';
  if (value && ts.isNumericLiteral(value)) return 'number';
  const word = value?.kind;
  return word === ts.SyntaxKind.TrueKeyword || word === ts.SyntaxKind.FalseKeyword ? 'boolean' : 'unknown';
};

/** @param {ts.HasModifiers} node */
const isPublic = (node) =>
  !ts
    .getModifiers(node)
    ?.some((m) =>
      [ts.SyntaxKind.PrivateKeyword, ts.SyntaxKind.ProtectedKeyword, ts.SyntaxKind.StaticKeyword].includes(
        m.kind,
      ),
    );

/** What a property says in its decorator: `{ attribute: 'screw-pitch', reflect: true }`. @param {ts.Expression} call */
const options = (call) => {
  const [given] = ts.isCallExpression(call) ? call.arguments : [];
  const list = given && ts.isObjectLiteralExpression(given) ? given.properties : [];
  return Object.fromEntries(
    [...list].filter(ts.isPropertyAssignment).map((p) => [p.name.getText(), p.initializer.getText()]),
  );
};

/** @param {ts.ClassDeclaration} node */
const membersOf = (node) =>
  node.members.flatMap((m) => {
    if (ts.isGetAccessor(m) && isPublic(m))
      return [
        {
          kind: /** @type {const} */ ('field'),
          name: m.name.getText(),
          type: { text: m.type?.getText() ?? 'unknown' },
          description: description(m),
          readonly: true,
        },
      ];
    const call = ts.isPropertyDeclaration(m) ? decorator(m, 'property') : undefined;
    if (!call || !ts.isPropertyDeclaration(m)) return [];
    const name = m.name.getText();
    const said = options(call);
    const attribute = said.attribute?.replace(/^'|'$/g, '') ?? name.toLowerCase();
    return [
      {
        kind: /** @type {const} */ ('field'),
        name,
        type: { text: m.type?.getText() ?? typeOfValue(m.initializer) },
        description: description(m),
        default: m.initializer?.getText() ?? 'undefined',
        attribute,
        ...(said.reflect === 'true' ? { reflects: true } : {}),
      },
    ];
  });

/** @param {ts.ClassDeclaration} node @returns {Declared} */
const elementOf = (node) => {
  const members = membersOf(node);
  const attributes = members.flatMap(({ attribute, name, type, description: text, default: value }) =>
    attribute ? [{ name: attribute, fieldName: name, type, description: text, default: value }] : [],
  );
  /** @param {string} kind */
  const named = (kind) => tags(node, kind).map(({ name, text }) => ({ name, description: text }));
  return {
    kind: 'class',
    customElement: true,
    name: node.name?.text ?? '',
    tagName: tags(node, 'element')[0]?.name ?? '',
    description: description(node),
    superclass: { name: 'HTMLElement', package: 'global:' },
    members,
    attributes,
    events: tags(node, 'fires').map(({ name, type, text }) => ({
      name,
      type: { text: type },
      description: text,
    })),
    slots: named('slot'),
    cssParts: named('csspart'),
    cssProperties: named('cssprop'),
  };
};

/** Fields of an event: the parameters of its constructor. @param {ts.ClassDeclaration} node */
const carried = (node) =>
  node.members
    .filter(ts.isConstructorDeclaration)
    .flatMap((c) => [...c.parameters])
    .map((p) => ({
      kind: /** @type {const} */ ('field'),
      name: p.name.getText(),
      type: { text: p.type?.getText() ?? 'unknown' },
      description: description(p),
      readonly: true,
    }));

/** @param {ts.SourceFile} source */
const classesOf = (source) => source.statements.filter(ts.isClassDeclaration);
/** @param {ts.ClassDeclaration} node */
const parent = (node) => node.heritageClauses?.[0]?.types[0]?.expression.getText();

/**
 * @param {string} folder with the sources
 * @param {string} module path of the built module
 * @returns {Package}
 */
export const manifestOf = (folder, module) => {
  const path = module.replace(/^\.\//, '');
  const classes = sourcesOf(folder).flatMap(classesOf);
  const elements = classes.filter((node) => decorator(node, 'customElement')).map(elementOf);
  const events = classes
    .filter((node) => parent(node) === 'Event')
    .map((node) => ({
      kind: /** @type {const} */ ('class'),
      name: node.name?.text ?? '',
      description: description(node),
      superclass: { name: 'Event', package: 'global:' },
      members: carried(node),
    }));
  const declarations = [...elements, ...events];
  return {
    schemaVersion: SCHEMA,
    modules: [
      {
        kind: 'javascript-module',
        path,
        declarations,
        exports: [
          ...declarations.map(({ name }) => ({
            kind: /** @type {const} */ ('js'),
            name,
            declaration: { name, module: path },
          })),
          ...elements.map(({ name, tagName }) => ({
            kind: /** @type {const} */ ('custom-element-definition'),
            name: tagName ?? '',
            declaration: { name, module: path },
          })),
        ],
      },
    ],
  };
};

/** @param {string | undefined} text @param {string} indent */
const comment = (text, indent = '') => (text ? `${indent}/** ${text} */\n` : '');
/** @param {{ name: string, members?: unknown[], description?: string | undefined }} declared @param {string} base */
const classText = ({ name, members = [], description: text }, base) => {
  const fields = /** @type {import('custom-elements-manifest/schema').ClassField[]} */ (members);
  return `${comment(text)}export declare class ${name} extends ${base} {
${fields.map((f) => `${comment(f.description, '  ')}  ${f.readonly ? 'readonly ' : ''}${f.name}: ${f.type?.text};\n`).join('')}}
`;
};

/** Plain types and functions that the module gives away, as they stand in the sources. @param {string} folder */
const plainTypes = (folder) => {
  const sources = sourcesOf(folder);
  const index = sources.find(({ fileName }) => fileName === 'index.ts');
  /** @param {string} name */
  const isGiven = (name) => new RegExp(`\\b${name}\\b`).test(index?.text ?? '');
  return sources.flatMap((source) =>
    source.statements.flatMap((node) => {
      if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node))
        return isGiven(node.name.text) ? [node.getFullText().trim()] : [];
      const [one] = ts.isVariableStatement(node) ? node.declarationList.declarations : [];
      const made = one?.initializer;
      if (!one || !made || !ts.isArrowFunction(made) || !isGiven(one.name.getText())) return [];
      const given = made.parameters.map((p) => p.getText()).join(', ');
      return [
        `${comment(description(node))}export declare const ${one.name.getText()}: (${given}) => ${made.type?.getText()};`,
      ];
    }),
  );
};

/**
 * Types of the built module, for whoever writes a page in TypeScript.
 * @param {string} folder with the sources
 * @param {Package} manifest
 */
export const typesOf = (folder, manifest) => {
  const declared = manifest.modules.flatMap(({ declarations = [] }) => declarations);
  const elements = declared.filter((d) => 'customElement' in d).map((d) => /** @type {Declared} */ (d));
  const events = declared.filter((d) => !('customElement' in d));
  /** @param {(e: Declared) => string} of */
  const each = (of) => elements.map(of).join('');
  return `${plainTypes(folder).join('\n')}
${events.map((e) => classText(/** @type {Declared} */ (e), 'Event')).join('')}${each((e) => classText(e, 'HTMLElement'))}
declare global {
  interface HTMLElementTagNameMap {
${each((e) => `    '${e.tagName}': ${e.name};\n`)}  }
  interface GlobalEventHandlersEventMap {
${each((e) => (e.events ?? []).map(({ name, type }) => `    '${name}': ${type.text};\n`).join(''))}  }
}
`;
};
