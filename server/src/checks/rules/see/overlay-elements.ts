import type { CraftView } from '../../../craft/view';

/** An overlay element with its place and its usual length. */
export interface Element {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** Characters that it takes, beginning at its column. */
  readonly width: number;
  readonly shownIn: readonly string[];
}

export function elements(view: CraftView): readonly Element[] {
  const widths = new Map(view.catalog.members('overlay').map((one) => [one.name, one.characters]));
  return view.members('overlay').flatMap((name) => {
    const place = view.place(`overlay.${name}.place`);
    if (place === null) return [];
    const width = name === 'name' ? nameLength(view) : (widths.get(name) ?? 1);
    return [{ name, ...place, width, shownIn: view.words(`overlay.${name}.shown-in`) ?? [] }];
  });
}

/** The craft's name is shown as it stands in the script. */
function nameLength(view: CraftView): number {
  return Math.max(1, [...(view.text('craft.name') ?? '')].length);
}

/** The grid of the picture's standard; the larger one where the standard isn't known. */
export function overlayGrid(view: CraftView): { readonly rows: number; readonly columns: number } | null {
  if (view.isSet('video.standard')) return view.catalog.grid(view.word('video.standard') ?? '') ?? null;
  const all = [...view.catalog.grids.values()];
  if (all.length === 0) return null;
  return {
    rows: Math.max(...all.map(({ rows }) => rows)),
    columns: Math.max(...all.map(({ columns }) => columns)),
  };
}
