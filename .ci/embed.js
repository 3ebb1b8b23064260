/**
 * What the build of the elements for other pages does beside Vite: names of its own for the parts inside, a manifest and types
 * from the doc comments.
 */
import { brotliCompressSync } from 'node:zlib';
import { manifestOf, typesOf } from './manifest.js';

/** File of the built module, in the output. */
export const MODULE = 'latheside-embed.js';
/** Most bytes of the module, brotli. */
const LIMIT = 120_000;

const DECORATORS = '\0embed:decorators';
/**
 * The page may have the app's own elements, or another copy of this module: the parts inside get names of their own, and a
 * name that is taken is left as it is.
 * @returns {import('vite').Plugin}
 */
export const ownNames = () => ({
  name: 'latheside-own-names',
  enforce: 'pre',
  resolveId: (id, importer) => (id === 'lit/decorators.js' && importer !== DECORATORS ? DECORATORS : null),
  load: (id) =>
    id === DECORATORS
      ? `export { property, query, state } from 'lit/decorators.js';
export const customElement = (tag) => (made) => {
  if (!customElements.get(tag)) customElements.define(tag, made);
};`
      : null,
  transform(code, id) {
    if (!/[\\/]src[\\/](elements|embed)[\\/].*\.ts$/.test(id)) return null;
    return { code: code.replace(/(<\/?|customElement\(')ls-(?!embed-)/g, '$1ls-embed-part-'), map: null };
  },
});

/**
 * Lays the manifest and the types beside the module, and holds that to its size.
 * @returns {import('vite').Plugin}
 */
export const described = () => ({
  name: 'latheside-described',
  generateBundle(_options, bundle) {
    const manifest = manifestOf('src/embed', `./${MODULE}`);
    this.emitFile({
      type: 'asset',
      fileName: 'custom-elements.json',
      source: `${JSON.stringify(manifest, null, 2)}\n`,
    });
    this.emitFile({
      type: 'asset',
      fileName: MODULE.replace('.js', '.d.ts'),
      source: typesOf('src/embed', manifest),
    });
    const made = bundle[MODULE];
    if (made?.type !== 'chunk') throw new Error(`The build made no ${MODULE}.`);
    const size = brotliCompressSync(made.code).length;
    if (size > LIMIT) this.error(`${MODULE} is ${size} bytes (brotli), over ${LIMIT}.`);
    this.info(`${MODULE}: ${(size / 1000).toFixed(1)} kB brotli, within ${LIMIT / 1000} kB`);
  },
});
