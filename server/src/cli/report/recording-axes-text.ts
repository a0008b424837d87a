import { reasonsOf } from '../../sheet/recording-reasons';
import type { AxisRow } from '../../sheet/recording-rows';
import { uncapitalised } from '../../units/capitals';
import { spanText } from './measured-span-text';
import { visible } from './visible';

/** Quantities axis by axis, a line each, and why the others are not told, each reason once. */
export function axisRowLines(rows: readonly AxisRow[]): readonly string[] {
  const axes = rows[0]?.cells.map(({ axis }) => axis) ?? [];
  return [
    ...axes.flatMap((axis) => linesOf(axis, rows)),
    ...reasonsOf(rows).map(({ about, said }) =>
      `  ${about}: not told. ${visible(said.reason)} ${visible(said.advice)}`.trimEnd(),
    ),
  ];
}

function linesOf(axis: string, rows: readonly AxisRow[]): readonly string[] {
  const lines = rows.flatMap(({ name, cells }) => {
    const cell = cells.find((one) => one.axis === axis);
    const measured = cell?.value?.told ?? null;
    if (cell === undefined || measured === null) return [];
    const beside = cell.beside === null ? '' : `; ${visible(cell.beside)}`;
    return [`    ${uncapitalised(name)}: ${spanText(measured)}${beside}`];
  });
  return lines.length === 0 ? [] : [`  ${axis}:`, ...lines];
}
