/** What each piece of the page shows now, so that only what changed is drawn again. */
const shown = new Map<string, string>();

/** Empties the page, for something else to be shown. */
export function clear(page: HTMLElement, ...instead: readonly Node[]): void {
  shown.clear();
  page.replaceChildren(...instead);
}

/** Takes pieces away that are not wanted any more. */
export function keepOnly(page: HTMLElement, ids: readonly string[]): void {
  if (shown.size === 0) page.replaceChildren();
  for (const id of shown.keys()) {
    if (ids.includes(id)) continue;
    shown.delete(id);
    document.getElementById(id)?.remove();
  }
}

/** Puts a piece in its place, unless it shows the same already. Keys keep their focus through it. */
export function place(page: HTMLElement, id: string, content: unknown, make: () => HTMLElement): void {
  const text = JSON.stringify(content);
  if (shown.get(id) === text) return;
  shown.set(id, text);
  const made = make();
  made.id = id;
  const old = document.getElementById(id);
  if (old === null) {
    page.append(made);
    return;
  }
  const focused = reachable(old).indexOf(document.activeElement as HTMLElement);
  old.replaceWith(made);
  if (focused >= 0) reachable(made)[focused]?.focus({ preventScroll: true });
}

/** What the Tab key stops at. */
function reachable(piece: HTMLElement): readonly HTMLElement[] {
  return [...piece.querySelectorAll<HTMLElement>('button, summary, [tabindex]')];
}
