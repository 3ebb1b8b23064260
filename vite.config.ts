import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { VitePWA } from 'vite-plugin-pwa';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { minify } from 'terser';
import { classicStart } from './.ci/classic.js';
import { EARLY, LOOK } from './.ci/in-page.js';
import { headersFile, PAGE_POLICY } from './.ci/policy.js';
import { sentencesApart } from './.ci/sentences.js';
import { tidyTemplates } from './.ci/tidy.js';

/** `LATHESIDE_UNREGISTER=1 npm run build` makes the way out: a build whose worker removes itself and our caches. */
const unregister = process.env.LATHESIDE_UNREGISTER === '1';

const packageFile = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };

/** Tests of the update build the same source under two versions. */
const version = process.env.LATHESIDE_VERSION ?? packageFile.version;

/**
 * What changed, newest version first. It goes out as a file of its own, so that the worker of a version that waits can say
 * what that brings. Tests put their own versions before it.
 */
const changes = [
  ...(JSON.parse(process.env.LATHESIDE_CHANGES ?? '[]') as unknown[]),
  ...(JSON.parse(readFileSync('src/text/changes.json', 'utf8')) as unknown[]),
];

/** The date of the source, not of the build: the same source gives the same files, so a rebuild is no update. */
function sourceDate(): string {
  try {
    return execFileSync('git', ['log', '-1', '--format=%cs'], { encoding: 'utf8', stdio: 'pipe' }).trim();
  } catch {
    return '';
  }
}

/** Behind the page's encoding, and before everything that is asked for, which would keep it waiting. */
const EARLY_PLACE = '<!-- early scripts -->';
const LOOK_PLACE = '<!-- theme.css -->';

/** While it is developed the style sheet is a file of its own. */
function lookApart(): Plugin {
  return {
    name: 'latheside-look-apart',
    apply: 'serve',
    transformIndexHtml: {
      order: 'pre',
      handler: (page) => page.replace(LOOK_PLACE, '<link rel="stylesheet" href="/src/elements/theme.css" />'),
    },
  };
}

/**
 * Puts the policy into the built page only, with the script and the style sheet that stand in the page and the policy names: the
 * development server needs inline styles and scripts of its own. Beside it lie the headers and what changed.
 */
function contentPolicy(): Plugin {
  return {
    name: 'latheside-content-policy',
    apply: 'build',
    transformIndexHtml: (page) => ({
      html: page
        .replace(EARLY_PLACE, () => `<script>${EARLY}</script>`)
        .replace(LOOK_PLACE, () => `<style>${LOOK}</style>`),
      tags: [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: PAGE_POLICY },
          injectTo: 'head-prepend',
        },
      ],
    }),
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: '_headers', source: headersFile() });
      this.emitFile({ type: 'asset', fileName: 'changes.json', source: JSON.stringify(changes) });
    },
  };
}

/** The page puts the link to its manifest where it stands by itself (device/early-manifest.js). */
function manifestLater(): Plugin {
  return {
    name: 'latheside-manifest-later',
    apply: 'build',
    // Behind the plugin that puts it there.
    enforce: 'post',
    transformIndexHtml: {
      order: 'post',
      handler: (page) => {
        const without = page.replace(/\s*<link rel="manifest"[^>]*>/, '');
        if (without === page) throw new Error('The page has no link to its manifest.');
        return without;
      },
    },
  };
}

/** The places a long press on the icon offers; the words stand on the bar too. */
const shortcuts = ['Threads', 'Speed', 'Checks', 'Cut', 'Machine'].map((name) => ({
  name,
  url: `./#/${name.toLowerCase()}`,
  icons: [{ src: `icons/shortcut-${name.toLowerCase()}.png`, sizes: '192x192', type: 'image/png' }],
}));

/** What a phone or a computer shows before it installs the app: `npm run pictures` takes them. */
const picture = (form_factor: 'narrow' | 'wide', name: string, label: string) => ({
  src: `pictures/${name}.png`,
  sizes: form_factor === 'narrow' ? '390x844' : '1280x800',
  type: 'image/png',
  form_factor,
  label,
});
const screenshots = [
  picture('narrow', 'threads', 'A thread with its profile, half-nut rule and depth'),
  picture('narrow', 'speed', 'The highest speed for a job, and what binds'),
  picture('narrow', 'checks', 'One pre-start check fills the screen'),
  picture('narrow', 'cut', 'What is planned for a thread, and what is still missing'),
  picture('narrow', 'machine', 'What follows from the machine’s figures'),
  picture('wide', 'wide-threads', 'A thread, on a wide screen'),
  picture('wide', 'wide-chart', 'The wall chart of speeds over leads'),
];

/** A second minifier before the build's own: together they make the scripts 1.3 % smaller than either alone. */
function minifyTwice(): Plugin {
  return {
    name: 'latheside-minify-twice',
    apply: 'build',
    async renderChunk(code) {
      const made = await minify(code, { module: true, ecma: 2020, compress: { passes: 3 } });
      return { code: made.code ?? code, map: null };
    },
  };
}

let outDir = 'dist';

/**
 * Every precached file carries a hash of its bytes, so a host that answers a missing file with another page, or
 * half a deployment, makes the installation fail and leaves the old version working.
 */
function withIntegrity<Entry extends { url: string }>(entries: Entry[]): { manifest: Entry[] } {
  const hashed = entries.map((entry) => {
    const bytes = readFileSync(join(outDir, entry.url));
    return { ...entry, integrity: `sha256-${createHash('sha256').update(bytes).digest('base64')}` };
  });
  return { manifest: hashed };
}

/** Modules of the first paint, in one file; by themselves those that others use too would be a score of small ones. */
const FIRST_PAINT = new RegExp(
  [
    'storage/(?!mirror|notes|copied|restore|carry|shelf)',
    'state/(app|runs|own-threads|live|ended-runs|records|machines|jobs|readings|undo|clock|merge|emitter)',
    'screens/shell/(index|shell|routes|glance)',
    'core/(quantity|context|job)/',
    'core/machine/(?!examples|asked|gears)',
    'core/thread/(families|own|profiles|catalogue|number|starts)',
    'core/drive/(gearing|rates|torque|whip|curve|trains/written)',
    'core/figures/(define|standing|why|evidence|gearing|limit|load|basis|verdict|first|course|room-from)',
    'core/run/(run|stored|changes|progress)',
    'elements/(row|ready|icons|headline|standing|bar|rule|screen|listen)',
    'device/(log|edge-colour|cutting-lock|wake-lock|vibrate|script-url)',
    'text/(frame|words|numbers|units|standing)',
  ]
    .map((part) => `/src/${part}`)
    .join('|')
    .replaceAll('/', '[\\\\/]'),
);

export default defineConfig({
  base: './',
  define: {
    __VERSION__: JSON.stringify(version),
    __SOURCE_DATE__: JSON.stringify(sourceDate()),
    __UNREGISTER__: JSON.stringify(unregister),
    // Which formulas were corrected is in core/recall; journeys of a recall add one.
    __RECALL__: process.env.LATHESIDE_RECALL ?? '{ "table": [], "words": {} }',
  },
  build: {
    target: 'es2022',
    // The polyfill is an inline script in older engines and of no use in those we support.
    // The one script that would be preloaded is a classic one (.ci/classic.js).
    modulePreload: { polyfill: false, resolveDependencies: () => [] },
    rolldownOptions: {
      output: {
        // What the first paint needs in one file, and all that follows in another: much smaller than a score of files.
        codeSplitting: {
          groups: [
            { name: 'first', test: FIRST_PAINT, priority: 1 },
            { name: 'rest', test: /[\\/](src|node_modules)[\\/](?!main\.ts)[^]*\.[jt]s$/ },
          ],
        },
      },
    },
    // A data: address in a style sheet or script would need a wider policy.
    assetsInlineLimit: 0,
  },
  plugins: [
    contentPolicy(),
    lookApart(),
    sentencesApart(),
    minifyTwice(),
    tidyTemplates(),
    classicStart(),
    {
      name: 'latheside-out-dir',
      configResolved(config) {
        outDir = config.build.outDir;
      },
    },
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src/service-worker',
      filename: 'worker.ts',
      injectRegister: null,
      includeManifestIcons: false,
      scope: './',
      manifest: {
        name: 'Latheside',
        short_name: 'Latheside',
        description:
          'Threads, speeds and checks for a lathe with an encoder-driven leadscrew. Works offline.',
        // No `id`: one would be resolved against the origin, giving two copies under different paths of one
        // host the same identity. Left out, the identity is `start_url`, which includes the path.
        start_url: './',
        scope: './',
        display: 'standalone',
        // No orientation is asked for: a phone is laid down on the headstock either way.
        display_override: ['standalone', 'minimal-ui'],
        lang: 'en',
        dir: 'ltr',
        background_color: '#fdfcf8',
        theme_color: '#fdfcf8',
        categories: ['utilities'],
        icons: [
          { src: 'icons/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
          { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
          { src: 'icons/maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
        shortcuts,
        screenshots,
        file_handlers: [{ action: './#/machine/carry', accept: { 'application/json': ['.json'] } }],
      },
      injectManifest: {
        // The way out precaches nothing, so it has no place to put the list.
        injectionPoint: unregister ? '' : 'self.__WB_MANIFEST',
        rollupFormat: 'iife',
        globPatterns: ['**/*.{js,css,html,woff2,svg,png,json,webmanifest}'],
        globIgnores: ['worker.js', 'icons/shortcut-*', 'pictures/**', 'schemas/**', 'shelf/**', 'embed/**'],
        manifestTransforms: [withIntegrity],
      },
    }),
    manifestLater(),
  ],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          environment: 'node',
          include: ['test/**/*.test.ts'],
          exclude: ['test/browser/**', 'test/bench/**', 'test/engines/**'],
          // Nothing is timed here: on a busy machine a sweep takes longer than the usual five seconds.
          testTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['test/browser/**/*.test.ts'],
          globalSetup: ['test/browser/support/setup.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // Nothing is timed: what is waited for may take its time on a busy machine.
          expect: { poll: { timeout: 15_000 } },
          // After the core, two at a time: each waits much for its browser. Nothing in them is timed.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
