import { defineConfig } from 'vite';
import { described, MODULE, ownNames } from './.ci/embed.js';
import { tidyTemplates } from './.ci/tidy.js';

/** The elements for other pages, with the page that shows them: one module, beside the app and no part of it. */
export default defineConfig({
  base: './',
  // The page that shows them goes along as it is.
  publicDir: 'embed',
  define: {
    __VERSION__: '""',
    __RECALL__: '{ "table": [], "words": {} }',
  },
  build: {
    target: 'es2022',
    outDir: 'dist/embed',
    emptyOutDir: true,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: 'src/embed/index.ts',
      preserveEntrySignatures: 'strict',
      output: { entryFileNames: MODULE, codeSplitting: false },
    },
  },
  plugins: [ownNames(), tidyTemplates(), described()],
});
