import type { ReactiveController, ReactiveControllerHost } from 'lit';

export interface Source {
  subscribe(listener: () => void): () => void;
}

/** Renders its host again whenever a source tells that it changed, while the host is on the page. */
export class Listen implements ReactiveController {
  private source: Source | null = null;
  private stop: () => void = () => undefined;

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  to(source: Source | null | undefined): void {
    if (this.source === (source ?? null)) return;
    this.stop();
    this.source = source ?? null;
    this.listen();
  }

  hostConnected(): void {
    this.listen();
  }
  hostDisconnected(): void {
    this.stop();
    this.stop = () => undefined;
  }

  private listen(): void {
    this.stop();
    if (this.source) this.stop = this.source.subscribe(() => this.host.requestUpdate());
  }
}
