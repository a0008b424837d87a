import type { Catalog, FoundParameter } from '../../catalog/catalog';
import type { BenchStep } from '../../catalog/model/bench-card';
import { membershipsIn } from '../../craft/memberships';
import { uncapitalised } from '../../units/capitals';
import type { CardReading } from './card';
import type { StepView } from './step-words';

/** Room to write down what the script leaves open. `told`: what earlier steps asked for, which is not asked for again. */
export function askedOf(
  { asks = [] }: BenchStep,
  looked: readonly StepView[],
  id: string,
  told: Set<string>,
): readonly CardReading[] {
  const catalog = looked[0]?.view.catalog;
  return asks.flatMap((path) => {
    const found = catalog?.parameter(path);
    if (catalog === undefined || found === undefined || !looked.every(({ view }) => view.isMissing(path)))
      return [];
    if (told.has(path)) return [];
    told.add(path);
    const words = `${titleOf(path, found, catalog)} (${path})`;
    return [{ id: `${id} ${path}`, words, unit: unitOf(found), isWords: false, setting: null, script: path }];
  });
}

/** "Arm: channel of a switch function": what all members have does not say by itself whose it is. */
function titleOf(path: string, { parameter: { title } }: FoundParameter, catalog: Catalog): string {
  const [found] = membershipsIn(path, catalog);
  const member = catalog.members(found?.collection ?? '').find(({ name }) => name === found?.member);
  return member === undefined ? title : `${member.title}: ${uncapitalised(title)}`;
}

function unitOf({ parameter }: Pick<FoundParameter, 'parameter'>): string {
  return parameter.kind === 'quantity' || parameter.kind === 'range' ? parameter.unit : '';
}
