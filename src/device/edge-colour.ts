/** Colours of the phone's own edge above the app, as the page's head gives them: bright, then dark. */
let papers: readonly string[] | null = null;

/** The phone's edge takes the app's paper: as the phone has it, or the one theme that a person chose. */
export const colourEdge = (theme: 'auto' | 'bright' | 'dark'): void => {
  const metas = [...document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')];
  papers ??= metas.map(({ content }) => content);
  const [bright = '', dark = ''] = papers;
  for (const [at, meta] of metas.entries()) {
    const paper = (theme === 'auto' ? papers[at] : theme === 'dark' ? dark : bright) ?? '';
    // Also the same one would be told to the phone again.
    if (meta.content !== paper) meta.content = paper;
  }
};
