import type { Craft } from '../craft/craft';
import { valueText } from '../craft/value-text';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import type { Figure } from '../figures/figure';
import { type Target, targetOfPath } from './target';

/** Part 5: one column a pack. */
export interface WhichPack {
  readonly id: 'which-pack';
  readonly title: string;
  readonly answer: string;
  readonly columns: readonly string[];
  readonly rows: readonly PackRow[];
  readonly caution: string;
}

export interface PackRow {
  readonly id: string;
  readonly title: string;
  /** One for each column; null where it can't be computed or isn't set. */
  readonly cells: readonly (PackCell | null)[];
}

export interface PackCell {
  readonly text: string;
  readonly figure: Figure | null;
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
  const figures = figureSources.map(({ id, title, from }) => ({
    id,
    title,
    cells: views.map((view) => figureCell(view, id, from)),
  }));
  return {
    id: 'which-pack',
    title: 'Which pack does what?',
    answer:
      columns.length === 0 ? 'no pack set' : columns.length === 1 ? '1 pack' : `${columns.length} packs`,
    columns,
    rows: [...settings, ...figures].filter((row) => row.cells.some((cell) => cell !== null)),
    caution:
      'Lithium packs can burn: charge them watched, never below the cell limit. Estimates are estimates.',
  };
}

function settingCell(view: CraftView, path: string): PackCell | null {
  const parameter = view.catalog.parameter(path)?.parameter;
  const value = view.value(path);
  if (value === null || parameter === undefined) return null;
  return { text: valueText(value, parameter), figure: null, target: targetOfPath(view, path) };
}

function figureCell(view: CraftView, id: string, from: readonly string[]): PackCell | null {
  const figure = figureOf(view, id);
  if (figure === null) return null;
  const target = from.map((path) => targetOfPath(view, path.replace('<name>', view.pack ?? '')));
  return { text: figureText(figure), figure, target: target.find((one) => one !== null) ?? null };
}

/** A figure with as many digits as are known: three, or whole where it is large. */
export function figureText({ likely, unit }: Figure): string {
  const digits =
    Math.abs(likely) >= 100 ? Math.round(likely).toString() : String(Number(likely.toPrecision(3)));
  return unit === '' ? digits : `${digits} ${unit}`;
}
