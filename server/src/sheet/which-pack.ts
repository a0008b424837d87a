import type { Craft } from '../craft/craft';
import type { PlacedLine } from '../craft/setting';
import { CraftView, viewQuery } from '../craft/view';
import { figureSource, figuresOf } from '../figures';
import type { Figure, FigureSource } from '../figures/figure';
import { type WayToWrite, type WithheldWithReason, waysToWrite } from './not-known';
import { type Target, targetOfLine, targetOfPath } from './target';
import { type Variant, variantsOf } from './variants';

/** Part 5: one column a pack. */
export interface WhichPack extends FigureTable {
  readonly id: 'which-pack';
  readonly title: string;
  readonly answer: string;
  /** Those that a pilot looks at first; the others stand folded away. */
  readonly key: readonly string[];
  readonly caution: string;
  /** What may be seen side by side with the craft as it is. */
  readonly variants: readonly Variant[];
}

/** Figures with a column for each pack. */
export interface FigureTable {
  readonly columns: readonly string[];
  readonly rows: readonly PackRow[];
  /** Figures that no pack changes. */
  readonly shared: readonly SharedRow[];
  /** Of the figures that a pilot looks at first, those that can't be computed with any pack. */
  readonly withheld: readonly WithheldRow[];
}

export interface WithheldRow {
  readonly id: string;
  readonly title: string;
  readonly from: readonly string[];
  /** Why, and what to write. */
  readonly text: string;
  readonly ways: readonly WayToWrite[];
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
  'thrust-to-weight-full',
  'thrust-to-weight',
  'thrust-to-weight-landing',
  'minutes-to-landing',
  'minutes-to-warning',
  'minutes-to-landing-cold',
  'flying-minutes-to-landing',
  'flying-minutes-to-warning',
  'flying-power',
  'range',
  'reach',
  'top-speed',
  'hover-current',
  'full-current',
  'full-motor-current',
  'full-sag',
  'drop-out-room',
  'pack-current-limit',
  'pack-full-voltage',
  'pack-nominal-voltage',
  'pack-land-voltage',
  'pack-energy',
  'minutes-to-warning-cold',
  'hover-voltage-full',
  'least-voltage',
  'full-speed',
  'no-load-speed',
  'tip-mach',
  'pitch-speed',
  'range-speed',
  'cruise-power',
  'endurance-speed',
  'tilt-speed',
  'turn-back-charge',
  'disc-loading',
  'divider-at-full-pack',
  'pack-input-limit',
  'current-sensor-limit',
  'battery-lead-drop',
  'air-density',
];

/** Of the figures, what a pilot looks at first: those before this one. */
const key = figures.slice(0, figures.indexOf('pack-land-voltage'));

export function whichPack(
  packs: readonly PackColumn[],
  unknown: readonly WithheldWithReason[],
  inView: CraftView,
): WhichPack {
  const { columns, rows, shared, withheld } = figureTable(packs, unknown, figures, key);
  const settings = compared.map(([id, title, path]) => ({
    id,
    title,
    from: [path],
    cells: packs.map(({ view }) =>
      view.pack === null ? null : settingCell(view, path.replace('<name>', view.pack)),
    ),
  }));
  return {
    id: 'which-pack',
    title: 'Which pack does what?',
    answer:
      columns.length === 0 ? 'no pack set' : columns.length === 1 ? '1 pack' : `${columns.length} packs`,
    variants: columns.length === 0 ? [] : variantsOf(inView),
    columns,
    rows: [...settings.filter(({ cells }) => cells.some((cell) => cell !== null)), ...rows],
    shared,
    withheld,
    key: [...compared.map(([id]) => id), ...key],
    caution:
      'Lithium packs can burn: charge them watched, never below the cell limit. Estimates are estimates.',
  };
}

/** A pack with all figures that can be computed with it. */
export interface PackColumn {
  readonly view: CraftView;
  readonly figures: ReadonlyMap<string, Figure>;
}

/** One for each pack; a craft without one has a nameless column. */
export function packColumns(craft: Craft): readonly PackColumn[] {
  return craft.packsOrNone().map((pack) => {
    const view = new CraftView(craft, pack);
    return { view, figures: figuresOf(view) };
  });
}

/**
 * The figures of these ids that can be computed with some pack. `key`: those that keep their rows without. `unknown`:
 * all that are withheld of the craft.
 */
export function figureTable(
  packs: readonly PackColumn[],
  unknown: readonly WithheldWithReason[],
  ids: readonly string[],
  key: readonly string[],
): FigureTable {
  const rows: PackRow[] = [];
  const shared: SharedRow[] = [];
  for (const id of ids) {
    // Most filters that a craft may have it has not: no words are made for them.
    const source = packs.some(({ figures }) => figures.has(id)) ? figureSource(id) : undefined;
    if (source === undefined) continue;
    const { title } = source;
    const { from, cells, isShared } = figureRow(packs, source);
    const [cell = null] = cells;
    if (!isShared) rows.push({ id, title, from, cells });
    else if (cell !== null) shared.push({ id, title, from, cell });
  }
  return {
    columns: packs.flatMap(({ view }) => view.pack ?? []),
    rows,
    shared,
    withheld: withheldRows(unknown, new Set(key)),
  };
}

function withheldRows(
  unknown: readonly WithheldWithReason[],
  key: ReadonlySet<string>,
): readonly WithheldRow[] {
  return unknown.flatMap((figure) => {
    const { id, title, reason } = figure;
    if (figure.packs !== null || !key.has(id)) return [];
    return [{ id, title, from: figureSource(id)?.from ?? [], text: reason, ways: waysToWrite(figure) }];
  });
}

function settingCell(view: CraftView, path: string): PackCell | null {
  const text = view.written(path);
  return text === null
    ? null
    : { text, span: null, place: null, why: null, assumed: [], target: targetOfPath(view, path) };
}

/** What a figure hangs on. */
interface Behind {
  readonly settings: readonly string[];
  /** Whether one of them is a pack's. */
  readonly asksPack: boolean;
  /** The line that sets the first of them that any line sets; where it stands is looked up when it is shown. */
  readonly line: PlacedLine | null;
}

const behindFigure = viewQuery('what a figure hangs on', (view, id: string): Behind => {
  const settings = settingsBehind(view, id);
  const asksPack = settings.some((path) => path.startsWith('pack.'));
  for (const path of settings) {
    const setting = view.setting(path.replace('<name>', () => view.pack ?? ''));
    if (setting !== undefined) return { settings, asksPack, line: setting.origin };
  }
  return { settings, asksPack, line: null };
});

/** The settings of each filter that the craft has before what they have in common. */
function settingsBehind(view: CraftView, id: string): readonly string[] {
  return (figureSource(id)?.from ?? []).flatMap((path) => {
    const [collection, setting] = path.split('.<number>');
    if (collection === undefined || setting === undefined) return [path];
    return [...view.members(collection).map((member) => `${collection}.${member}${setting}`), path];
  });
}

/** A figure for every pack; shared if it asks nothing of a pack and comes to the same for all. */
function figureRow(packs: readonly PackColumn[], { id, tellsPlace = false }: FigureSource) {
  const behind = packs.map(({ view }) => behindFigure(view, id));
  const cells = packs.map(({ figures }, column) => {
    const figure = figures.get(id);
    return figure === undefined ? null : figureCell(figure, behind[column]?.line ?? null, tellsPlace);
  });
  const [first] = behind;
  const isShared = first?.asksPack !== true && cells.every((cell) => cell?.text === cells[0]?.text);
  return { from: first?.settings ?? [], cells, isShared };
}

function figureCell(figure: Figure, line: PlacedLine | null, tellsPlace: boolean): PackCell {
  const { text, span } = rendered(figure);
  const place = tellsPlace ? (figure.place ?? null) : null;
  const target = line === null ? null : targetOfLine(line);
  return { text, span, place, why: figure.why, assumed: figure.assumed, target };
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
