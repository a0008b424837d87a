import type { Craft } from '../craft/craft';
import { valueText } from '../craft/value-text';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import type { Figure, FigureSource } from '../figures/figure';
import { type Target, targetOfPath } from './target';

/** Part 5: one column a pack. */
export interface WhichPack {
  readonly id: 'which-pack';
  readonly title: string;
  readonly answer: string;
  readonly columns: readonly string[];
  readonly rows: readonly PackRow[];
  /** Figures that no pack changes. */
  readonly shared: readonly SharedRow[];
  readonly caution: string;
}

export interface PackRow {
  readonly id: string;
  readonly title: string;
  /** One for each column; null where it can't be computed or isn't set. */
  readonly cells: readonly (PackCell | null)[];
}

export interface SharedRow {
  readonly id: string;
  readonly title: string;
  readonly cell: PackCell;
}

export interface PackCell {
  readonly text: string;
  /** From low to high, "30500–32800", where they differ. */
  readonly span: string | null;
  /** The formula with the numbers put in; null for a setting. */
  readonly why: string | null;
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

export function whichPack(craft: Craft): WhichPack {
  const columns = craft.packs();
  const views = columns.map((pack) => new CraftView(craft, pack));
  const settings = compared.map(([id, title, path]) => ({
    id,
    title,
    cells: views.map((view) => settingCell(view, path.replace('<name>', view.pack ?? ''))),
  }));
  const figures = figureSources.map((source) => figureRow(views, source));
  return {
    id: 'which-pack',
    title: 'Which pack does what?',
    answer:
      columns.length === 0 ? 'no pack set' : columns.length === 1 ? '1 pack' : `${columns.length} packs`,
    columns,
    rows: [...settings, ...figures.filter(({ isShared }) => !isShared)].filter(({ cells }) =>
      cells.some((cell) => cell !== null),
    ),
    shared: figures.flatMap(({ id, title, cells: [cell], isShared }) =>
      isShared && cell !== undefined && cell !== null ? [{ id, title, cell }] : [],
    ),
    caution:
      'Lithium packs can burn: charge them watched, never below the cell limit. Estimates are estimates.',
  };
}

function settingCell(view: CraftView, path: string): PackCell | null {
  const parameter = view.catalog.parameter(path)?.parameter;
  const value = view.value(path);
  if (value === null || parameter === undefined) return null;
  return { text: valueText(value, parameter), span: null, why: null, target: targetOfPath(view, path) };
}

/** A figure for every pack; shared if it asks nothing of a pack and comes to the same for all. */
function figureRow(views: readonly CraftView[], { id, title, from }: FigureSource) {
  const cells = views.map((view) => figureCell(view, id, from));
  const asksPack = from.some((path) => path.startsWith('pack.'));
  const isShared = !asksPack && cells.every((cell) => cell?.text === cells[0]?.text);
  return { id, title, cells, isShared };
}

function figureCell(view: CraftView, id: string, from: readonly string[]): PackCell | null {
  const figure = figureOf(view, id);
  if (figure === null) return null;
  const targets = from.map((path) => targetOfPath(view, path.replace('<name>', view.pack ?? '')));
  const target = targets.find((one) => one !== null) ?? null;
  return { text: figureText(figure), span: spanText(figure), why: figure.why, target };
}

/** A figure with its unit and as many digits as are known. */
export function figureText({ likely, unit }: Figure): string {
  return unit === '' ? digits(likely) : `${digits(likely)} ${unit}`;
}

/** From low to high, where they differ at three digits. */
export function spanText({ low, high }: Figure): string | null {
  return digits(low) === digits(high) ? null : `${digits(low)}–${digits(high)}`;
}

/** Three digits; four from a thousand on, where they are still read at a glance. */
function digits(value: number): string {
  return String(Number(value.toPrecision(Math.abs(value) >= 1000 ? 4 : 3)));
}
