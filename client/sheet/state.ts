/** What the pilot has changed about the page. The extension keeps it, through hiding, moving and reload. */
export interface PageState {
  /** Folds that stand otherwise than at first. */
  readonly toggled: readonly string[];
  readonly scroll: number;
}

export const untouched: PageState = { toggled: [], scroll: 0 };

/** A state that was kept, also by an older version; untouched if it isn't one. */
export function pageState(kept: unknown): PageState {
  const isState = typeof kept === 'object' && kept !== null && 'toggled' in kept && 'scroll' in kept;
  if (!isState || !Array.isArray(kept.toggled) || typeof kept.scroll !== 'number') return untouched;
  const toggled = kept.toggled.filter((id): id is string => typeof id === 'string');
  return { toggled, scroll: kept.scroll };
}
