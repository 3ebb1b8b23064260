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

const ASKED = 'latheside.asked-to-keep';
let asked = false;

/** Asks by itself, once and for all: some browsers ask the person each time, and one answer is enough. */
export async function askOnce(): Promise<void> {
  if (asked) return;
  asked = true;
  try {
    if (localStorage.getItem(ASKED)) return;
    localStorage.setItem(ASKED, 'yes');
  } catch {
    // Where not even that may be kept there is nothing to ask for.
    return;
  }
  await askToPersist();
}
