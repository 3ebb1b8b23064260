/** `granted`: the browser won't clear what is saved here without being told to by a person. */
export type Persistence = 'granted' | 'denied' | 'unsupported';

/** Whether storage is persistent now, without asking for it. */
export function persistence(): Promise<Persistence> {
  return answer((storage) => storage.persisted());
}

/** Asks the browser to keep what is saved; some ask the person, some decide by themselves. */
export function askToPersist(): Promise<Persistence> {
  return answer((storage) => storage.persist());
}

async function answer(question: (storage: StorageManager) => Promise<boolean>): Promise<Persistence> {
  if (!('storage' in navigator) || !('persist' in navigator.storage)) return 'unsupported';
  try {
    return (await question(navigator.storage)) ? 'granted' : 'denied';
  } catch {
    return 'unsupported';
  }
}

/** Bytes used and bytes allowed to this origin, as the browser estimates them; null where it doesn't say. */
export async function storageRoom(): Promise<{ used: number; allowed: number } | null> {
  if (!('storage' in navigator) || !('estimate' in navigator.storage)) return null;
  try {
    const { usage, quota } = await navigator.storage.estimate();
    return usage === undefined || quota === undefined ? null : { used: usage, allowed: quota };
  } catch {
    return null;
  }
}
