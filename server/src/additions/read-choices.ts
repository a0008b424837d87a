import type { Catalog } from '../catalog/catalog';
import type { Fault } from '../catalog/faults/fault';
import {
  type ChosenLevel,
  type WorkspaceChoices,
  workspaceChoices,
} from '../catalog/model/workspace-choices';
import { suggestWord } from '../catalog/suggest';
import type { AdditionProblem } from './problem';
import { problemsAt, readShape } from './read-addition';

/** A file of choices that could be read; or the reasons why it could not be used. */
export type ReadChoices =
  | { readonly kind: 'read'; readonly choices: WorkspaceChoices }
  | { readonly kind: 'broken'; readonly problems: readonly AdditionProblem[] };

/** Longer than this, nobody wrote it by hand. */
const longest = 100_000;

/** Reads what a workspace chooses about the checks of a catalogue, as its own levels stand. */
export function readChoices(text: string, catalog: Catalog): ReadChoices {
  const shaped = readShape(text, workspaceChoices, { longest, mayHaveComments: true });
  if (shaped.kind === 'broken') return shaped;
  const { data, tree } = shaped;
  const problems = Object.entries(data.levels).flatMap(([id, chosen]) =>
    problemsOf(id, chosen, catalog).flatMap(([kind, fault]) => problemsAt(kind, [fault], tree)),
  );
  return problems.length > 0 ? { kind: 'broken', problems } : { kind: 'read', choices: data };
}

function problemsOf(
  id: string,
  chosen: ChosenLevel,
  catalog: Catalog,
): readonly (readonly [AdditionProblem['id'], Fault])[] {
  const at = ['levels', id];
  const check = catalog.check(id);
  if (check === undefined) {
    const near = suggestWord(catalog.checks.keys(), id);
    const instead = near.length === 0 ? '' : `; did you mean ${near.join(' or ')}?`;
    return [['addition/reference', { at, message: `there is no check ${id}${instead}` }]];
  }
  const message = refusal(id, check.level, chosen);
  return message === null ? [] : [['addition/value', { at, message }]];
}

/** Why a check may not have this level; null where it may. */
function refusal(id: string, before: ChosenLevel, chosen: ChosenLevel): string | null {
  if (before === 'must-fix' && chosen !== 'must-fix') return `${id} is a must-fix, and stays one`;
  if (before !== 'risk' || chosen === 'risk' || chosen === 'must-fix') return null;
  return `${id} is a risk: it may become a must-fix; a risk that is taken is accepted on its line, with a reason`;
}
