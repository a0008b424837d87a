/** What keys do in the rows. */
export interface KeyActions {
  /** The row's own press: takes it, or its family. */
  take(row: HTMLElement): void;
  choose(row: HTMLElement): void;
  /** From 0. */
  way(row: HTMLElement, index: number): void;
  unknownScale(row: HTMLElement): void;
  undo(): void;
  /** Draws more rows; false where there are none. */
  more(row: HTMLElement): boolean;
}

/** Rows are gone through with the arrow keys; a press on one of them takes, opens or undoes. */
export function listenToKeys(page: HTMLElement, act: KeyActions): void {
  page.addEventListener('keydown', (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z') {
      if (event.target instanceof HTMLInputElement) return;
      event.preventDefault();
      act.undo();
      return;
    }
    const target = event.target instanceof HTMLElement ? event.target : null;
    const row = target?.closest<HTMLElement>('.row') ?? null;
    if (row === null || target === null || target.matches('input, select')) return;
    if (pressed(event, row, target === row, act)) event.preventDefault();
  });
  page.addEventListener('focusin', ({ target }) => {
    const row = target instanceof HTMLElement ? target.closest<HTMLElement>('.row') : null;
    if (row !== null) makeCurrent(page, row);
  });
}

function pressed(event: KeyboardEvent, row: HTMLElement, isRowItself: boolean, act: KeyActions): boolean {
  switch (event.key) {
    case 'ArrowDown':
      return goBy(row, 1, act);
    case 'ArrowUp':
      return goBy(row, -1, act);
    case 'ArrowRight':
      act.choose(row);
      return true;
    case 'Enter':
      if (!isRowItself) return false;
      act.take(row);
      return true;
    case 'Backspace':
      act.undo();
      return true;
    case '0':
      act.unknownScale(row);
      return true;
    default:
      if (!/^[1-9]$/.test(event.key)) return false;
      act.way(row, Number(event.key) - 1);
      return true;
  }
}

function goBy(row: HTMLElement, step: 1 | -1, act: KeyActions): boolean {
  const next = neighbour(row, step) ?? (step === 1 && act.more(row) ? neighbour(row, step) : undefined);
  next?.focus();
  return true;
}

/** The next row that is shown; undefined at the end. */
export function neighbour(row: HTMLElement, step: 1 | -1): HTMLElement | undefined {
  const all = [...document.querySelectorAll<HTMLElement>('.row')].filter(
    (one) => one.closest('[hidden]') === null,
  );
  return all[all.indexOf(row) + step];
}

/** Of all rows, only this one is reached with the tab key. */
export function makeCurrent(page: HTMLElement, row: HTMLElement): void {
  for (const other of page.querySelectorAll('.row[tabindex="0"]')) other.setAttribute('tabindex', '-1');
  row.setAttribute('tabindex', '0');
}
