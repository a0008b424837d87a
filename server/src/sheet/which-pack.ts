import type { Craft } from '../craft/craft';
import { CraftView, viewQuery } from '../craft/view';
import { figureOf, figureSource } from '../figures';
import type { Figure, FigureSource } from '../figures/figure';
import { type Target, targetOfPath } from './target';

/** Part 5: one column a pack. */
export interface WhichPack extends FigureTable {
  readonly id: 'which-pack';
  readonly title: string;
  readonly answer: string;
  /** Those that a pilot looks at first; the others stand folded away. */
  readonly key: readonly string[];
  readonly caution: string;
}

/** Figures with a column for each pack. */
export interface FigureTable {
  readonly columns: readonly string[];
  readonly rows: readonly PackRow[];
  /** Figures that no pack changes. */
  readonly shared: readonly SharedRow[];
}

export interface PackRow {
  readonly id: string;
  readonly title: string;
  /** Parameters that it hangs on, by their catalogue names. */
  readonly from: readonly string[];
  /** One for each column; null where it can't be computed or isn't set. */
  readonly cells: readonly (PackCell | null)[];
}

export interface SharedRow {
  readonly id: string;
  readonly title: string;
  readonly from: readonly string[];
  readonly cell: PackCell;
}

export interface PackCell {
  readonly text: string;
  /** From low to high, "30500–32800", where they differ. */
  readonly span: string | null;
  /** Where it holds, for a figure of one of several places: `in the hover, pack full`. */
  readonly place: string | null;
  /** The formula with the numbers put in; null for a setting. */
  readonly why: string | null;
  readonly assumed: readonly string[];
  readonly target: Target | null;
}

/** Settings that a pilot compares packs by, before anything computed. */
const compared = [
  ['chemistry', 'Chemistry', 'pack.<name>.chemistry'],
  ['cells', 'Cells', 'pack.<name>.cells'],
  ['capacity', 'Capacity', 'pack.<name>.capacity'],
  ['warn', 'Warn, a cell', 'power.warn-cell'],
  ['land', 'Land, a cell', 'power.land-cell'],
] as const;

/** What a pilot compares packs by, once it is computed. */
const figures = [
  'flying-mass',
  'hover-throttle',
  'thrust-to-weight',
  'thrust-to-weight-landing',
  'minutes-to-landing',
  'minutes-to-warning',
  'hover-current',
  'full-current',
  'full-motor-current',
  'full-sag',
  'pack-current-limit',
  'pack-full-voltage',
  'pack-nominal-voltage',
  'pack-land-voltage',
  'pack-energy',
  'full-speed',
  'no-load-speed',
  'tip-mach',
  'pitch-speed',
  'disc-loading',
  'divider-at-full-pack',
  'pack-input-limit',
  'current-sensor-limit',
  'battery-lead-drop',
  'air-density',
];

/** Of the figures, what a pilot looks at first. */
const key = figures.slice(0, 13);

export function whichPack(craft: Craft): WhichPack {
  const { columns, rows, shared } = figureTable(craft, figures);
  const views = columns.map((pack) => new CraftView(craft, pack));
  const settings = compared.map(([id, title, path]) => ({
    id,
    title,
    from: [path],
    cells: views.map((view) => settingCell(view, path.replace('<name>', view.pack ?? ''))),
  }));
  return {
    id: 'which-pack',
    title: 'Which pack does what?',
    answer:
      columns.length === 0 ? 'no pack set' : columns.length === 1 ? '1 pack' : `${columns.length} packs`,
    columns,
    rows: [...settings.filter(({ cells }) => cells.some((cell) => cell !== null)), ...rows],
    shared,
    key: [...compared.map(([id]) => id), ...key],
    caution:
      'Lithium packs can burn: charge them watched, never below the cell limit. Estimates are estimates.',
  };
}

/** The figures of these ids that can be computed with some pack; a craft without one has a nameless column. */
export function figureTable(craft: Craft, ids: readonly string[]): FigureTable {
  const views = craft.packsOrNone().map((pack) => new CraftView(craft, pack));
  const figureRows = ids.flatMap((id) => {
    // Most filters that a craft may have it has not: no words are made for them.
    const source = views.some((view) => figureOf(view, id) !== null) ? figureSource(id) : undefined;
    return source === undefined ? [] : [figureRow(views, source)];
  });
  return {
    columns: craft.packs(),
    rows: figureRows.flatMap(({ isShared, ...row }) =>
      !isShared && row.cells.some((cell) => cell !== null) ? [row] : [],
    ),
    shared: figureRows.flatMap(({ id, title, from, cells: [cell], isShared }) =>
      isShared && cell !== undefined && cell !== null ? [{ id, title, from, cell }] : [],
    ),
  };
}

function settingCell(view: CraftView, path: string): PackCell | null {
  const text = view.written(path);
  return text === null
    ? null
    : { text, span: null, place: null, why: null, assumed: [], target: targetOfPath(view, path) };
}

/** The settings that a figure hangs on, with those of each filter that the craft has before what they have in common. */
const settingsBehind = viewQuery('settings behind a figure', (view, id: string): readonly string[] =>
  (figureSource(id)?.from ?? []).flatMap((path) => {
    const [collection, setting] = path.split('.<number>');
    if (collection === undefined || setting === undefined) return [path];
    return [...view.members(collection).map((member) => `${collection}.${member}${setting}`), path];
  }),
);

/** A figure for every pack; shared if it asks nothing of a pack and comes to the same for all. */
function figureRow(views: readonly CraftView[], { id, title, tellsPlace = false }: FigureSource) {
  const [first] = views;
  const from = first === undefined ? [] : settingsBehind(first, id);
  const cells = views.map((view) => {
    const figure = figureOf(view, id);
    return figure === null ? null : figureCell(view, figure, from, tellsPlace);
  });
  const asksPack = from.some((path) => path.startsWith('pack.'));
  const isShared = !asksPack && cells.every((cell) => cell?.text === cells[0]?.text);
  return { id, title, from, cells, isShared };
}

function figureCell(view: CraftView, figure: Figure, from: readonly string[], tellsPlace: boolean): PackCell {
  const { text, span } = rendered(figure);
  const place = tellsPlace ? (figure.place ?? null) : null;
  return { text, span, place, why: figure.why, assumed: figure.assumed, target: firstTarget(view, from) };
}

/** The first of the settings that a figure hangs on that a line sets. */
function firstTarget(view: CraftView, from: readonly string[]): Target | null {
  for (const path of from) {
    const target = targetOfPath(view, path.replace('<name>', view.pack ?? ''));
    if (target !== null) return target;
  }
  return null;
}

/** Most figures are the same objects from one edit to the next: each is put into words once. */
const renderedFigures = new WeakMap<Figure, Pick<PackCell, 'text' | 'span'>>();

function rendered(figure: Figure): Pick<PackCell, 'text' | 'span'> {
  const known = renderedFigures.get(figure);
  if (known !== undefined) return known;
  const words = { text: figureText(figure), span: intervalText(figure) };
  renderedFigures.set(figure, words);
  return words;
}

/** A figure with its unit and as many digits as are known. */
export function figureText({ likely, unit }: Figure): string {
  return unit === '' ? digits(likely) : `${digits(likely)} ${unit}`;
}

/** From low to high, where they differ at three digits; an end without a number in its words. */
export function intervalText({ low, high, lowWords, highWords }: Figure): string | null {
  const [from, to] = [lowWords ?? digits(low), highWords ?? digits(high)];
  if (from === to) return null;
  const isWorded = lowWords !== undefined || highWords !== undefined;
  return low < 0 || isWorded ? `${from} to ${to}` : `${from}–${to}`;
}

/** Three digits; four from a thousand on, where they are still read at a glance. */
function digits(value: number): string {
  return String(Number(value.toPrecision(Math.abs(value) >= 1000 ? 4 : 3)));
}
