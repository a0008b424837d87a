import { profileFaults } from '../../src/board/profile/profile-faults';
import type { Catalog } from '../../src/catalog/catalog';
import type { Bundle } from '../../src/catalog/model/bundle';
import type { DataCheck } from '../../src/catalog/model/check';
import type { Parameter } from '../../src/catalog/model/parameter';
import { isPermutation } from '../../src/catalog/permutation';
import { neverTriggers } from '../../src/checks/data/never';
import { ruleFaults, stepFaults } from '../../src/checks/data/rule-faults';
import { asLines, placedParameters, repeated } from './places';

/** What can only be looked up in the whole catalogue: the names in rules, and the words assumed for settings. */
export function checkProblems(bundle: Bundle, catalog: Catalog): readonly string[] {
  const ids = bundle.checks.flatMap(({ checks }) => checks.map(({ id }) => id));
  return [
    ...repeated(ids).map((id) => `${id}: two checks have this id`),
    ...bundle.checks.flatMap(({ group, checks }) =>
      checks.flatMap((check) => {
        const at = `schemas/checks/${group}.json: ${check.id}`;
        const misplaced = check.id.startsWith(`${group}/`) ? [] : [`${at}: must begin with "${group}/"`];
        return check.by === 'data' ? [...misplaced, ...ruleProblems(at, check, catalog)] : misplaced;
      }),
    ),
    ...placedParameters(bundle).flatMap(({ at, parameter }) => assumedWord(at, parameter, catalog)),
    ...boardProblems(bundle, catalog),
    ...repeated(bundle.steps.map(({ id }) => id)).map((id) => `bench-card.json: two steps are called ${id}`),
    ...bundle.steps.flatMap((step) =>
      asLines(`schemas/bench-card.json: ${step.id}`, stepFaults(step, catalog)),
    ),
  ];
}

function ruleProblems(at: string, check: DataCheck, catalog: Catalog): readonly string[] {
  const faults = asLines(at, ruleFaults(check, catalog));
  if (faults.length > 0 || !neverTriggers(check, catalog)) return faults;
  return [`${at}: no script can trigger it`];
}

/** What a board writes must be names, words and numbers that the catalogue knows. */
function boardProblems(bundle: Bundle, catalog: Catalog): readonly string[] {
  return bundle.boards.flatMap((board) =>
    asLines(`schemas/boards/${board.name}.json`, profileFaults(board, catalog)),
  );
}

function assumedWord(at: string, parameter: Parameter, catalog: Catalog): readonly string[] {
  const value = parameter.default?.value;
  if (value === undefined) return [];
  const allowed = allowedWords(parameter, catalog);
  if (allowed === undefined) return [];
  const given = parameter.kind === 'words' ? value.replace(/^\[|\]$/g, '').split(',') : [value];
  return given
    .map((word) => word.trim())
    .filter((word) => word !== '' && !allowed(word))
    .map((word) => `${at}.default: "${word}" is not among its words`);
}

function allowedWords(parameter: Parameter, catalog: Catalog): ((word: string) => boolean) | undefined {
  if (parameter.kind === 'flag') return (word) => word === 'on' || word === 'off';
  if (parameter.kind !== 'word' && parameter.kind !== 'words') return undefined;
  const letters = parameter.kind === 'word' ? parameter.permutationOf : undefined;
  const words = new Set(catalog.choices(parameter).map((choice) => choice.name));
  return (word) => words.has(word) || (letters !== undefined && isPermutation(word, letters));
}
