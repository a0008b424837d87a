import type { CraftView } from '../../../craft/view';
import type { CodeRule, RuleFinding } from '../../rule';
import { type Element, elements, overlayGrid } from './overlay-elements';

/** Where overlay elements stand: on the grid, whole, and beside each other. */
export const overlayPlaceRules: readonly CodeRule[] = [
  {
    ids: ['see/off-grid', 'see/text-past-edge'],
    scope: 'craft',
    check(view, report) {
      const grid = overlayGrid(view);
      if (grid === null) return;
      for (const element of elements(view)) {
        if (element.row >= grid.rows || element.column >= grid.columns) report(offGrid(view, element, grid));
        else if (element.column + element.width > grid.columns) report(pastEdge(element, grid));
      }
    },
  },
  {
    ids: ['see/element-overlap'],
    scope: 'craft',
    check(view, report) {
      const all = elements(view);
      for (const [index, other] of all.entries()) {
        for (const one of all.slice(0, index)) {
          if (areOver(one, other)) report(overlap(one, other, freePlace(view, all, other)));
        }
      }
    },
  },
];

type OverlayGrid = NonNullable<ReturnType<typeof overlayGrid>>;

function offGrid(view: CraftView, element: Element, { rows, columns }: OverlayGrid): RuleFinding {
  const { name, row, column, width } = element;
  const best = `[${Math.min(row, rows - 1)}, ${Math.min(column, Math.max(0, columns - width))}]`;
  const standard = view.word('video.standard');
  return {
    id: 'see/off-grid',
    at: `overlay.${name}.place`,
    values: {
      element: name,
      place: `[${row}, ${column}]`,
      standard: standard === null ? '' : ` over a picture of ${standard}`,
      rows: String(rows - 1),
      columns: String(columns - 1),
    },
    related: [{ at: 'video.standard', message: 'The standard.' }],
    fixes: [{ title: 'Move it to {to}', set: `overlay.${name}.place`, to: best }],
  };
}

function pastEdge({ name, row, column, width }: Element, { columns }: OverlayGrid): RuleFinding {
  const best = Math.max(0, columns - width);
  return {
    id: 'see/text-past-edge',
    at: `overlay.${name}.place`,
    values: {
      element: name,
      column: String(column),
      width: String(width),
      last: String(columns - 1),
      best: String(best),
    },
    fixes:
      width > columns
        ? []
        : [
            {
              title: 'Begin in column {column}',
              values: { column: String(best) },
              set: `overlay.${name}.place`,
              to: `[${row}, ${best}]`,
            },
          ],
  };
}

/** Elements that are never shown at the same time may share their cells. The tilt line is drawn about its mark. */
function areOver(one: Element, other: Element): boolean {
  const pair = [one.name, other.name];
  if (pair.includes('tilt-line') && pair.includes('centre-mark')) return false;
  if (one.row !== other.row || !one.shownIn.some((phase) => other.shownIn.includes(phase))) return false;
  return one.column < other.column + other.width && other.column < one.column + one.width;
}

interface CharacterPlace {
  readonly row: number;
  readonly column: number;
}

/** A character of the overlay is half as tall again as it is wide: 12 by 18 points. Common practice. */
const tallness = 1.5;

/** The place nearest to an element's own where it stands whole and over nothing; null where the grid is full. */
function freePlace(view: CraftView, all: readonly Element[], moved: Element): CharacterPlace | null {
  const grid = overlayGrid(view);
  if (grid === null) return null;
  const others = all.filter(({ name }) => name !== moved.name);
  let best: (CharacterPlace & { readonly far: number }) | null = null;
  for (let row = 0; row < grid.rows; row += 1) {
    for (let column = 0; column + moved.width <= grid.columns; column += 1) {
      const far = Math.hypot(tallness * (row - moved.row), column - moved.column);
      if (best !== null && far >= best.far) continue;
      if (others.some((other) => areOver(other, { ...moved, row, column }))) continue;
      best = { row, column, far };
    }
  }
  return best;
}

function overlap(one: Element, other: Element, free: CharacterPlace | null): RuleFinding {
  const to = free === null ? '' : `[${free.row}, ${free.column}]`;
  const set = `overlay.${other.name}.place`;
  return {
    id: 'see/element-overlap',
    at: set,
    values: {
      one: one.name,
      other: other.name,
      row: String(one.row),
      first: columnsOf(one),
      second: columnsOf(other),
    },
    related: [{ at: `overlay.${one.name}.place`, message: '{one} stands here.', values: { one: one.name } }],
    fixes:
      free === null ? [] : [{ title: 'Move {element} to {to}', values: { element: other.name }, set, to }],
  };
}

function columnsOf({ column, width }: Element): string {
  return width === 1 ? String(column) : `${column} to ${column + width - 1}`;
}
