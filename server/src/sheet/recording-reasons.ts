import { listed } from '../checks/report/listed';
import type { MeasuredAnswer, MeasuredSpan } from '../recording/report';
import { capitalised, uncapitalised } from '../units/capitals';
import type { AxisRow } from './recording-rows';

/** Something that is said of some quantities of some axes. */
export interface SaidOfQuantities<T> {
  /** "Crossover and phase margin about roll" */
  readonly about: string;
  readonly said: T;
}

/** Why quantities are withheld, each reason once; what to do for several of them stands with the last. */
export function reasonsOf(
  rows: readonly AxisRow[],
): readonly SaidOfQuantities<{ readonly reason: string; readonly advice: string }>[] {
  const all = together(rows, (value) =>
    'reason' in value ? { key: `${value.reason}\n${value.advice}`, said: value } : null,
  );
  return all.map(({ about, said: { reason, advice } }, at) => {
    const isSaidAgain = all.slice(at + 1).some(({ said }) => said.advice === advice);
    return { about, said: { reason, advice: isSaidAgain ? '' : advice } };
  });
}

/** What the others rest on. */
export function basesOf(rows: readonly AxisRow[]): readonly SaidOfQuantities<string>[] {
  return together(rows, (value) => ('basis' in value ? { key: value.basis, said: value.basis } : null));
}

interface AxisQuantity {
  readonly name: string;
  readonly axis: string;
}

function together<T>(
  rows: readonly AxisRow[],
  of: (value: MeasuredAnswer<MeasuredSpan>) => { readonly key: string; readonly said: T } | null,
): readonly SaidOfQuantities<T>[] {
  const found = new Map<string, { readonly said: T; readonly places: AxisQuantity[] }>();
  for (const { name, cells } of rows)
    for (const { axis, value } of cells) {
      const one = value === null ? null : of(value);
      if (one === null) continue;
      const known = found.get(one.key) ?? { said: one.said, places: [] };
      known.places.push({ name, axis });
      found.set(one.key, known);
    }
  return [...found.values()].map(({ said, places }) => ({ about: placesText(places, rows.length), said }));
}

function placesText(places: readonly AxisQuantity[], rows: number): string {
  const byAxes = new Map<string, string[]>();
  for (const name of new Set(places.map((place) => place.name))) {
    const axes = listed(places.filter((place) => place.name === name).map(({ axis }) => axis));
    byAxes.set(axes, [...(byAxes.get(axes) ?? []), name]);
  }
  const parts = [...byAxes].map(([axes, names]) => {
    const isAll = names.length > 1 && names.length === rows;
    return `${isAll ? 'all of this' : listed(names.map(uncapitalised))} about ${axes}`;
  });
  return capitalised(parts.join('; '));
}
