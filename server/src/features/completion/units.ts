import type { ScriptLine } from '../../language/script-line';
import { dimensionNames, findDimensionName } from '../../units/dimension-names';
import type { Snapshot } from '../snapshot';
import { parameterOf } from './context';
import { type CompletionItem, completionItem } from './item';
import type { ValueContext } from './value-context';

interface UnitOffer {
  readonly unit: string;
  readonly phrase: string;
}

/** Units that fit the parameter, the preferred one first; behind a constant's number, every unit. */
export function unitItems(
  snapshot: Snapshot,
  line: ScriptLine,
  { range, lead, side }: ValueContext,
): readonly CompletionItem[] {
  return offers(snapshot, line, side).map(({ unit, phrase }) =>
    completionItem({
      label: unit,
      kind: 'unit',
      detail: phrase,
      range,
      insertText: `${lead}${unit}`,
      filterText: unit,
    }),
  );
}

function offers(snapshot: Snapshot, line: ScriptLine, side: ValueContext['side']): readonly UnitOffer[] {
  const found = parameterOf(snapshot, line);
  if (line.statement.kind === 'constant') return withoutRepeats(dimensionNames.flatMap(unitsOf));
  if (found?.parameter.kind === 'curve' && side === 'across') {
    const { dimension, unit } = found.parameter.across;
    return fitting(dimension, unit);
  }
  return found?.dimensionName === undefined ? [] : fitting(found.dimensionName, found.unit ?? '');
}

function fitting(dimensionName: string, preferred: string): readonly UnitOffer[] {
  const name = findDimensionName(dimensionName);
  if (name === undefined) return [];
  const rest = unitsOf(name);
  const first = preferred === '' ? [] : [{ unit: preferred, phrase: name.phrase }];
  return withoutRepeats([...first, ...rest]);
}

function unitsOf({ units, phrase }: (typeof dimensionNames)[number]): readonly UnitOffer[] {
  return units.map((unit) => ({ unit, phrase }));
}

function withoutRepeats(list: readonly UnitOffer[]): readonly UnitOffer[] {
  return [...new Map(list.toReversed().map((offer) => [offer.unit, offer])).values()].toReversed();
}
