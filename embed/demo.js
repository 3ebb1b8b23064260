/** What a page does with the elements: it hears what they tell and hands it on. */

/** @param {string} id */
const by = (id) => /** @type {HTMLElement} */ (document.getElementById(id));
/** @param {string} id @param {string} text */
const say = (id, text) => {
  by(id).textContent = text;
};

document.addEventListener('ls-embed-choose', ({ thread }) => {
  say('chosen', `The page was told: ${thread.id}, pitch ${thread.pitch}.`);
  Object.assign(by('gauge'), { thread: thread.id, fit: '', measured: '' });
  say('verdict', '');
});
document.addEventListener('ls-embed-verdict', ({ measured, verdict }) =>
  say('verdict', `The page was told: ${measured} is ${verdict}.`),
);
document.addEventListener('ls-embed-answer', ({ item, answer, left }) =>
  say('answered', `The page was told: ${item}, ${answer}, ${left} left.`),
);
by('chart').addEventListener('ls-embed-chart', ({ rows }) =>
  say('reckoned', `The page was told the figures of ${rows.length} threads.`),
);

for (const key of document.querySelectorAll('.copy'))
  key.addEventListener('click', async () => {
    const code = key.previousElementSibling;
    try {
      await navigator.clipboard.writeText(code?.textContent ?? '');
      key.textContent = 'Copied';
    } catch {
      // Not every page may write there: what is marked can be copied by hand.
      if (code) getSelection()?.selectAllChildren(code);
      key.textContent = 'Marked: copy it by hand';
    }
  });
