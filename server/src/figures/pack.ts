import type { CraftView } from '../craft/view';
import { packEnergy, ratedCurrent, seriesVoltage } from '../physics/cells';
import type { Computed, FigureSource } from './figure';
import { fullCell, nominalCell, packCount, packQuantity } from './pack-in-view';

/** Labels promise more than cells bear: what a careful tester finds of the printed rating. Common practice. */
const leastOfRating = 0.6;

export const packFigures: readonly FigureSource[] = [
  {
    id: 'pack-full-voltage',
    title: 'Voltage of the full pack',
    unit: 'V',
    from: ['pack.<name>.cells', 'pack.<name>.chemistry', 'pack.<name>.full-cell'],
    compute: (view) => inSeries(view, fullCell(view)),
  },
  {
    id: 'pack-nominal-voltage',
    title: 'Nominal voltage of the pack',
    unit: 'V',
    from: ['pack.<name>.cells', 'pack.<name>.chemistry'],
    compute: (view) => inSeries(view, nominalCell(view)),
  },
  {
    id: 'pack-land-voltage',
    title: 'Voltage of the pack at which to land',
    unit: 'V',
    from: ['power.land-cell', 'pack.<name>.cells'],
    compute: (view) => inSeries(view, view.quantity('power.land-cell')),
  },
  {
    id: 'pack-energy',
    title: 'Energy of the pack',
    unit: 'Wh',
    from: ['pack.<name>.capacity', 'pack.<name>.cells', 'pack.<name>.chemistry'],
    compute: energy,
  },
  {
    id: 'pack-current-limit',
    title: 'Lasting current by the rating of the pack',
    unit: 'A',
    from: ['pack.<name>.discharge', 'pack.<name>.capacity'],
    compute: currentLimit,
  },
];

function inSeries(view: CraftView, cell: number | null): Computed | null {
  const cells = packCount(view, 'cells');
  if (cells === null || cell === null) return null;
  return { likely: seriesVoltage(cells, cell), why: `${cells} cells × ${view.short(cell, 'V')}` };
}

function energy(view: CraftView): Computed | null {
  const voltage = inSeries(view, nominalCell(view));
  const charge = packQuantity(view, 'capacity');
  if (voltage === null || charge === null) return null;
  const joules = packEnergy(voltage.likely, charge);
  return {
    likely: joules / 3600,
    why: `${voltage.why} × ${view.short(charge, 'Ah')}`,
  };
}

function currentLimit(view: CraftView): Computed | null {
  const charge = packQuantity(view, 'capacity');
  const rating = packQuantity(view, 'discharge');
  if (charge === null || rating === null) return null;
  const likely = ratedCurrent(rating, charge);
  return {
    likely,
    low: leastOfRating * likely,
    high: likely,
    why: `${view.short(charge, 'Ah')} × ${view.short(rating, 'C')}`,
    assumed: ['a pack may bear only three fifths of its printed rating'],
  };
}
