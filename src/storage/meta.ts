import type { Backing } from './backing';
import { nextStamp } from './versioned';

/** Whether a value is of no use without the database it belongs to. */
export const isHousekeeping = (id: string): boolean =>
  /^(chain\/|value\/(place|undo)$|value\/import\/)/.test(id);

/** Small housekeeping values by name. */
export class Meta {
  constructor(private readonly backing: Backing) {}

  async get(name: string): Promise<unknown> {
    const row = await this.backing.run('readonly', ['meta'], (w) => w.get('meta', `value/${name}`));
    return (row as { value?: unknown } | undefined)?.value;
  }

  async set(name: string, value: unknown): Promise<void> {
    await this.backing.run('readwrite', ['meta'], async (w) => {
      const id = `value/${name}`;
      // By the number of the last change the copy beside the database knows that it has fallen behind.
      if (!isHousekeeping(id)) await nextStamp(w);
      w.put('meta', { id, value });
    });
  }
}
