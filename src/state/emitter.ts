/** Tells whoever listens that something changed. */
export class Emitter {
  private readonly listeners = new Set<() => void>();

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  protected tell(): void {
    for (const listener of [...this.listeners]) listener();
  }
}
