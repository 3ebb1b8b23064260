/**
 * The security policy of the built page, in one place: the build writes it into index.html and into `_headers`,
 * and the static server sends it. A policy in a `<meta>` governs neither worker scripts nor framing, so hosts
 * that can should send the headers too.
 */

import { EARLY_HASH, LOOK_HASH } from './in-page.js';

/** Names of the Trusted Types policies the page may make: Lit's own, and ours for worker addresses. */
const POLICIES = 'lit-html latheside';

/** Directives that work in a `<meta>` as well as in a header. */
export const PAGE_POLICY = [
  "default-src 'none'",
  `script-src 'self' ${EARLY_HASH}`,
  `style-src 'self' ${LOOK_HASH}`,
  "worker-src 'self'",
  "manifest-src 'self'",
  "img-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  `trusted-types ${POLICIES}`,
].join('; ');

/** What a host should send with every file. `frame-ancestors` is ignored in a `<meta>`, so it stands here only. */
export const HEADERS = {
  'Content-Security-Policy': `${PAGE_POLICY}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** Only files under `assets/` carry a hash of their content in their name; all others must be asked for anew. */
export const CACHE_HASHED = 'public, max-age=31536000, immutable';
export const CACHE_OTHER = 'no-cache';

/** The headers in the `_headers` form that several static hosts read from the served folder. */
export function headersFile() {
  const lines = (/** @type {Record<string, string>} */ headers) =>
    Object.entries(headers).map(([name, value]) => `  ${name}: ${value}`);
  return [
    '/*',
    ...lines(HEADERS),
    `  Cache-Control: ${CACHE_OTHER}`,
    '/assets/*',
    '  ! Cache-Control',
    `  Cache-Control: ${CACHE_HASHED}`,
    '',
  ].join('\n');
}
