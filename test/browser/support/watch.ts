import type { BrowserContext, ConsoleMessage } from 'playwright-core';

/**
 * Collects what no journey may cause: a request to another origin (page or worker), an error on the console
 * (a breach of the policy is one), an exception that nothing caught.
 */
export class Watch {
  /** One line each; a journey ends with `expect(watch.problems).toEqual([])`. */
  readonly problems: string[] = [];
  /** Every address asked for, in order, those the worker answered included. */
  readonly requests: string[] = [];
  private readonly allowed: RegExp[] = [];

  constructor(private readonly origin: () => string) {}

  /** Lets a kind of console error pass, for instance a request failing while the server is stopped. */
  allow(pattern: RegExp): void {
    this.allowed.push(pattern);
  }

  attach(context: BrowserContext): void {
    context.on('request', (request) => {
      const url = request.url();
      this.requests.push(url);
      const { origin, protocol } = new URL(url);
      if (protocol !== 'blob:' && protocol !== 'data:' && origin !== this.origin()) {
        this.problems.push(`request to another origin: ${url}`);
      }
    });
    context.on('console', (message) => {
      this.note(message);
    });
    context.on('weberror', (error) => {
      this.problems.push(`uncaught: ${error.error().stack ?? error.error().message}`);
    });
  }

  private note(message: ConsoleMessage): void {
    const text = message.text();
    const bad = message.type() === 'error' || /Content Security Policy|TrustedScript|violat/i.test(text);
    if (bad && !this.allowed.some((pattern) => pattern.test(text))) this.problems.push(`console: ${text}`);
  }
}
