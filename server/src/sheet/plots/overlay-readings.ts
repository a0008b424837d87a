import type { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';

type OverlayReading = (view: CraftView) => string | null;

/** What elements show that hang on the pack: in the hover, with a full one. */
const readings: ReadonlyMap<string, OverlayReading> = new Map<string, OverlayReading>([
  ['name', (view) => view.text('craft.name')?.toUpperCase() ?? null],
  ['pack-voltage', (view) => reading(view, 'pack-full-voltage', 1, 'V')],
  ['cell-voltage', (view) => cellVoltage(view)],
  ['current', (view) => reading(view, 'hover-current', 1, 'A')],
  ['throttle', (view) => reading(view, 'hover-throttle', 0, '%')],
]);

/** What an element shows on this craft with the pack in view; null where the craft gives it no number. */
export function readingOf(view: CraftView, element: string): string | null {
  return readings.get(element)?.(view) ?? null;
}

/** Whether what an element shows is this craft's alone: an invented reading would be taken for it. */
export function isOfCraft(element: string): boolean {
  return readings.has(element);
}

function reading(view: CraftView, id: string, decimals: number, unit: string): string | null {
  const figure = figureOf(view, id);
  return figure === null ? null : `${figure.likely.toFixed(decimals)}${unit}`;
}

function cellVoltage(view: CraftView): string | null {
  const pack = figureOf(view, 'pack-full-voltage');
  const cells = view.pack === null ? null : view.count(`pack.${view.pack}.cells`);
  return pack === null || cells === null || cells === 0 ? null : `${(pack.likely / cells).toFixed(2)}V`;
}
