import type { NameResult, Scope } from '../../craft/scope';
import { countNamed, quantityNamed } from '../../craft/value';
import type { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { findDimensionName } from '../../units/dimension-names';
import { isOnScale, toBase, unitOf } from '../../units/unit';

/** Names in a data rule: parameters with their defaults, and `figure.<id>`. There are no constants. */
export function dataScope(view: CraftView): Scope {
  return {
    constant: () => ({ kind: 'missing', near: () => [] }),
    parameter: (path) => (path.startsWith('figure.') ? figure(view, path.slice(7)) : parameter(view, path)),
  };
}

function figure(view: CraftView, id: string): NameResult {
  const found = figureOf(view, id);
  if (found === null) return { kind: 'unknown-value' };
  const unit = unitOf(found.unit);
  const kind = isOnScale(unit) ? 'on-scale' : 'quantity';
  const value = {
    value: toBase(found.likely, unit),
    dimension: unit.dimension,
    unit: found.unit,
    kind,
  } as const;
  return { kind: 'value', value };
}

function parameter(view: CraftView, path: string): NameResult {
  const value = view.value(path);
  const name = view.catalog.parameter(path)?.dimensionName;
  const dimension = name === undefined ? undefined : findDimensionName(name);
  if (value?.kind === 'count') return { kind: 'value', value: countNamed(value.value) };
  if (value?.kind !== 'quantity' || dimension === undefined) return { kind: 'unknown-value' };
  return { kind: 'value', value: quantityNamed(value, dimension) };
}
