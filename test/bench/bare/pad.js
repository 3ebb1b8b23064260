// Ten keys and a line of text: the least that any page does at a key.
const line = /** @type {HTMLElement} */ (document.querySelector('p'));
for (const sign of [...'1025346879', 'Correct']) {
  const key = document.createElement('button');
  key.textContent = sign;
  key.addEventListener('click', () => {
    const text = line.textContent ?? '';
    line.textContent = sign === 'Correct' ? text.slice(0, -1) : text + sign;
  });
  document.body.append(key);
}
