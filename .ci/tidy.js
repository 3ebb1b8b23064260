/** What both builds do to templates. */

const tidy = (/** @type {string} */ sheet) => sheet.replace(/\/\*[^]*?\*\//g, '').replace(/\s+/g, ' ');

/**
 * Style sheets and templates in scripts are text to the minifier: their comments and blanks would go to every phone.
 * @returns {import('vite').Plugin}
 */
export const tidyTemplates = () => ({
  name: 'latheside-tidy-templates',
  enforce: 'pre',
  apply: 'build',
  transform(code, id) {
    if (!/src[\\/](elements|screens|embed)[\\/].*\.ts$/.test(id)) return null;
    // To code indentation is nothing, to a template it is one blank.
    return { code: code.replace(/\bcss`[^`]*`/g, tidy).replace(/\n[ \t]+/g, '\n'), map: null };
  },
});
