import type { Backing } from './backing';

/** Small housekeeping values by name. */
export class Meta {
  constructor(private readonly backing: Backing) {}

  async get(name: string): Promise<unknown> {
    const row = await this.backing.run('readonly', ['meta'], (w) => w.get('meta', `value/${name}`));
    return (row as { value?: unknown } | undefined)?.value;
  }

  async set(name: string, value: unknown): Promise<void> {
    await this.backing.run('readwrite', ['meta'], async (w) => {
      w.put('meta', { id: `value/${name}`, value });
      return Promise.resolve();
    });
  }
}
