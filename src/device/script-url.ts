interface ScriptUrlPolicy {
  createScriptURL(address: string): unknown;
}
interface PolicyFactory {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): ScriptUrlPolicy;
}

let policy: ScriptUrlPolicy | undefined;

/** The full address, refused unless it lies on the app's own origin. */
function ownAddress(address: string): string {
  const url = new URL(address, document.baseURI);
  if (url.origin !== location.origin) throw new TypeError('not-own-origin');
  return url.href;
}

/**
 * An address that may start a worker under the page's Trusted Types rule. Where the browser has no Trusted Types
 * it is the plain address. The type stays `string`, which is what every caller's API takes on paper.
 * @throws TypeError `not-own-origin` for an address of another origin
 */
export function scriptUrl(address: string): string {
  const factory = (globalThis as { trustedTypes?: PolicyFactory }).trustedTypes;
  if (factory === undefined) return ownAddress(address);
  policy ??= factory.createPolicy('latheside', { createScriptURL: ownAddress });
  return policy.createScriptURL(address) as string;
}
