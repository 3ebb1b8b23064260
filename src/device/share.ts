export type Shared = 'shared' | 'cancelled' | 'downloaded';

/** Text to hand on, with a name for the file it becomes where it can't be shared as text. */
export interface ShareText {
  title: string;
  text: string;
  fileName: string;
}

/** Opens the system's share sheet with a text, or downloads it as a file. Call from a tap. */
export function shareText({ title, text, fileName }: ShareText): Promise<Shared> {
  return share({ title, text }, new File([text], fileName, { type: 'text/plain' }));
}

/**
 * Opens the system's share sheet with a file, or downloads it. Call from a tap. Browsers share only some kinds of file: where
 * they don't take its own, it goes as plain text under a name with ".txt" at its end.
 */
export function shareFile(file: File): Promise<Shared> {
  const plain = new File([file], `${file.name}.txt`, { type: 'text/plain' });
  const shared = 'canShare' in navigator && !navigator.canShare({ files: [file] }) ? plain : file;
  return share({ title: file.name, files: [shared] }, file);
}

async function share(data: ShareData, fallback: File): Promise<Shared> {
  if ('canShare' in navigator && navigator.canShare(data)) {
    try {
      await navigator.share(data);
      return 'shared';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled';
    }
  }
  download(fallback);
  return 'downloaded';
}

/** Saves a file through the browser's download. */
export function download(file: File): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  // Some browsers read the address only after the click has been handled.
  setTimeout(() => {
    URL.revokeObjectURL(link.href);
  }, 60_000);
}
