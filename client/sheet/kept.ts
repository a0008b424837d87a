/** What was drawn under each name, and what it shows. */
const drawn = new Map<string, { readonly shows: string; readonly made: HTMLElement }>();

/** The element of a name, drawn anew only when it shows something else than before. */
export function kept(name: string, shows: string, draw: () => HTMLElement): HTMLElement {
  const last = drawn.get(name);
  if (last?.shows === shows) return last.made;
  const made = draw();
  drawn.set(name, { shows, made });
  return made;
}

/** What links say depends on the script that is shown: of another one nothing is kept. */
export function drawAnew(): void {
  drawn.clear();
}

/** Gives an element these children. Those that it has already stay where they are, with their focus and scroll. */
export function hold(parent: Element, children: readonly Node[]): void {
  for (const child of [...parent.childNodes]) if (!children.includes(child)) child.remove();
  let next = parent.firstChild;
  for (const child of children) {
    if (child === next) next = child.nextSibling;
    else parent.insertBefore(child, next);
  }
}

/** Draws on a page. Where that takes away what has the keys, what then stands in its place gets them. */
export function keepingFocus(page: HTMLElement, draw: () => void): void {
  const focused = document.activeElement;
  const around = focused?.closest<HTMLElement>('details.part') ?? page;
  const at = page.contains(focused) ? [...reachable(around)].indexOf(focused as HTMLElement) : -1;
  draw();
  if (at >= 0 && !page.contains(focused)) reachable(around)[at]?.focus({ preventScroll: true });
}

/** What the Tab key stops at. */
function reachable(piece: HTMLElement): NodeListOf<HTMLElement> {
  return piece.querySelectorAll<HTMLElement>('button, summary, [tabindex]');
}
