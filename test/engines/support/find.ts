/** What is looked for on the page: plain data, so that it can be handed to any engine. */
export interface Wanted {
  readonly kind: 'button' | 'link' | 'field' | 'heading' | 'pad' | 'busy';
  /** The whole name, or a regular expression for a part; null: any. */
  readonly name: string | null;
  readonly part: boolean;
}

export interface Found {
  /** How many there are; exactly one can be touched. */
  readonly count: number;
  /** Why it can't be touched now; empty where it can. */
  readonly trouble: string;
  /** A key that stays down. */
  readonly pressed: boolean;
  readonly x: number;
  readonly y: number;
}

export const NOTHING: Found = { count: 0, trouble: 'not looked for', pressed: false, x: 0, y: 0 };

export const wanted = (kind: Wanted['kind'], name: string | RegExp | null): Wanted => ({
  kind,
  name: name instanceof RegExp ? name.source : name,
  part: name instanceof RegExp,
});

/**
 * Runs in the page: looks through every shadow root for what can be seen and has this kind and name, brings it to the
 * middle of the screen, waits two frames, and says where a touch would reach it.
 */
export const find = async ({ kind, name, part }: Wanted): Promise<Found> => {
  const KINDS = {
    button: 'button, summary, [role=button]',
    link: 'a[href]',
    field: 'input, textarea',
    heading: 'h1, h2, h3',
    pad: 'ls-pad',
    // A list that doesn't follow yet, a key that takes nothing for a moment.
    busy: '.resting, [aria-busy]',
  };
  const all = (root: ParentNode): Element[] =>
    [...root.querySelectorAll('*')].flatMap((e) => (e.shadowRoot ? [e, ...all(e.shadowRoot)] : [e]));
  const text = (node: Node): string => {
    if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
    if (!(node instanceof Element) || node.matches('style, [aria-hidden=true]')) return '';
    const said = node.getAttribute('aria-label');
    if (said !== null) return said;
    const inside =
      node instanceof HTMLSlotElement
        ? node.assignedNodes({ flatten: true })
        : [...(node.shadowRoot ?? node).childNodes];
    return inside.map(text).join(' ');
  };
  const label = (e: Element): string =>
    e instanceof HTMLInputElement || e instanceof HTMLTextAreaElement
      ? (e.getAttribute('aria-label') ?? [...(e.labels ?? [])].map(text).join(' '))
      : text(e);
  const plain = (words: string): string => words.replace(/\s+/g, ' ').trim();
  const fits = (e: Element): boolean => {
    const said = plain(label(e));
    return name === null || (part ? new RegExp(name).test(said) : said === name);
  };
  const seen = (e: Element): boolean => {
    const { width, height } = e.getBoundingClientRect();
    return width > 0 && height > 0 && e.checkVisibility({ visibilityProperty: true });
  };
  const up = (node: Node): Node | null =>
    (node as Element).assignedSlot ?? node.parentNode ?? (node as ShadowRoot).host ?? null;
  const under = (node: Node | null, test: (e: Element) => boolean): boolean => {
    for (let at = node; at; at = up(at)) if (at instanceof Element && test(at)) return true;
    return false;
  };

  const list = all(document).filter((e) => e.matches(KINDS[kind]) && seen(e) && fits(e));
  const [one] = list;
  if (!one || list.length > 1)
    return { count: list.length, trouble: `${list.length} of it`, pressed: false, x: 0, y: 0 };
  if (kind === 'heading' || kind === 'pad' || kind === 'busy')
    return { count: 1, trouble: '', pressed: false, x: 0, y: 0 };

  one.scrollIntoView({ block: 'center' });
  const frames = (): Promise<void> =>
    new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())));
  await frames();
  const before = one.getBoundingClientRect();
  await frames();
  const box = one.getBoundingClientRect();
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  let hit = document.elementFromPoint(x, y);
  for (let deeper = hit; deeper?.shadowRoot;) {
    deeper = deeper.shadowRoot.elementFromPoint(x, y);
    if (!deeper || deeper === hit) break;
    hit = deeper;
  }
  const trouble = !one.isConnected
    ? 'gone'
    : before.left !== box.left || before.top !== box.top
      ? 'moving'
      : under(one, (e) => e.matches(KINDS.busy))
        ? 'resting'
        : under(hit, (e) => e === one)
          ? ''
          : `covered by ${hit?.localName ?? 'nothing'}`;
  return { count: 1, trouble, pressed: one.getAttribute('aria-pressed') === 'true', x, y };
};
