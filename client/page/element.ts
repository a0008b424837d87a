type Child = Node | string | null;

interface Attributes {
  readonly [name: string]: string | boolean | ((event: Event) => void);
}

/**
 * Makes an element. Text is always set as text, so that nothing from a script or from data can be markup;
 * an attribute that begins with `on` is a listener, `true` is a bare attribute, `false` is left out.
 */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  fill(made, attributes, children);
  return made;
}

/** The same for drawings. */
export function drawing<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[K] {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  fill(made, attributes, children);
  return made;
}

function fill(made: Element, attributes: Attributes, children: readonly Child[]): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === 'function') made.addEventListener(name.slice(2), value);
    else if (value !== false) made.setAttribute(name, value === true ? '' : value);
  }
  for (const child of children) if (child !== null) made.append(child);
}

/** Wide tables scroll in their own frame, by keys too. */
export function scroller(label: string, table: HTMLElement): HTMLElement {
  return element('div', { class: 'scroller', tabindex: '0', role: 'region', 'aria-label': label }, table);
}

/** With a column for each pack; where there is little room, what a row is about stands above them (`by-pack.css`). */
export function packsTable(packs: number, ...parts: readonly HTMLElement[]): HTMLElement {
  const table = element('table', { class: packs > 1 ? 'by-pack' : false }, ...parts);
  table.style.setProperty('--packs', String(packs));
  return table;
}
