// @ts-check
/*
 * Stands in the page itself. Reading the manifest and its icons takes a start's time from what a person waits for: where a
 * worker answers already, and the browser says by itself when it has found out that the app can be installed, the link comes
 * a moment after the page. Every other browser, and every first visit, has it at once.
 */
{
  const put = () =>
    document.head.append(
      Object.assign(document.createElement('link'), { rel: 'manifest', href: './manifest.webmanifest' }),
    );
  const answered = () => {
    try {
      return navigator.serviceWorker?.controller;
    } catch {
      // A frame that may keep nothing.
      return null;
    }
  };
  if ('onbeforeinstallprompt' in globalThis && answered())
    addEventListener('load', () => setTimeout(put, 1000));
  else put();
}
