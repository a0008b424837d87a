import type { Addition } from '../catalog/model/addition';
import type { Bundle } from '../catalog/model/bundle';
import type { Choice, Parameter, ParameterFile } from '../catalog/model/parameter';
import type { Concept } from '../catalog/model/trade-words';
import { capitalised } from '../units/capitals';

/** The built-in data with what a workspace adds; of equal names the later one counts. */
export function merged(bundle: Bundle, additions: readonly Addition[]): Bundle {
  return additions.reduce(withAddition, bundle);
}

function withAddition(bundle: Bundle, addition: Addition): Bundle {
  const parameters = withChoices(
    inGroups(bundle.parameters, addition.parameters, groupOfName, newGroup, withParameters),
    addition.choices,
  );
  return {
    ...bundle,
    parameters: withReturns(parameters, addition.parameters),
    checks: inGroups(
      bundle.checks,
      addition.checks,
      ({ id }) => id.slice(0, id.indexOf('/')),
      (group) => ({ group, checks: [] }),
      (file, checks) => ({ ...file, checks: replaced(file.checks, checks, ({ id }) => id) }),
    ),
    links: replaced(bundle.links, addition.links, nameOf),
    chemistries: replaced(bundle.chemistries, addition.chemistries, nameOf),
    regions: replaced(bundle.regions, addition.regions, nameOf),
    tradeWords: { ...bundle.tradeWords, concepts: withWords(bundle.tradeWords.concepts, addition.words) },
  };
}

/** Words of a concept that there is come beside its own: nothing that is known by a word becomes unknown. */
function withWords(concepts: readonly Concept[], added: readonly Concept[]): Concept[] {
  const all = new Map(concepts.map((one) => [one.concept, one]));
  for (const one of added) {
    const known = all.get(one.concept);
    all.set(one.concept, known === undefined ? one : joinedConcept(known, one));
  }
  return [...all.values()];
}

function joinedConcept(known: Concept, { words, short = [], near = [] }: Concept): Concept {
  const languages = new Set([...Object.keys(known.words), ...Object.keys(words)]);
  const both = [...languages].map((language) => [
    language,
    [...(known.words[language] ?? []), ...(words[language] ?? [])],
  ]);
  return {
    ...known,
    words: Object.fromEntries(both),
    short: [...(known.short ?? []), ...short],
    near: [...(known.near ?? []), ...near],
  };
}

function nameOf({ name }: { readonly name: string }): string {
  return name;
}

function groupOfName({ name }: { readonly name: string }): string {
  return name.slice(0, name.indexOf('.'));
}

/** Later rows stand in the place of those with the same key; the others follow at the end. */
function replaced<T>(rows: readonly T[], later: readonly T[], keyOf: (row: T) => string): T[] {
  const all = new Map(rows.map((row) => [keyOf(row), row]));
  for (const row of later) all.set(keyOf(row), row);
  return [...all.values()];
}

/** Sorts rows into the files of their groups. */
function inGroups<F extends { readonly group: string }, T>(
  files: readonly F[],
  rows: readonly T[],
  groupOf: (row: T) => string,
  made: (group: string) => F,
  joined: (file: F, rows: readonly T[]) => F,
): F[] {
  const all = new Map(files.map((file) => [file.group, file]));
  for (const group of new Set(rows.map(groupOf))) {
    const own = rows.filter((row) => groupOf(row) === group);
    all.set(group, joined(all.get(group) ?? made(group), own));
  }
  return [...all.values()];
}

function newGroup(group: string): ParameterFile {
  const title = capitalised(group).replaceAll('-', ' ');
  return { group, title, summary: 'Settings that this workspace adds.', parameters: [] };
}

function withParameters(file: ParameterFile, parameters: readonly Parameter[]): ParameterFile {
  return { ...file, parameters: replaced(file.parameters, parameters, nameOf) };
}

function mapParameters(
  files: readonly ParameterFile[],
  change: (parameter: Parameter) => Parameter,
): ParameterFile[] {
  return files.map((file) => ({ ...file, parameters: file.parameters.map(change) }));
}

type AddedChoice = Addition['choices'][number];

function withChoices(files: readonly ParameterFile[], added: readonly AddedChoice[]): ParameterFile[] {
  if (added.length === 0) return [...files];
  return mapParameters(files, (parameter) => {
    const own = added.filter((one) => one.parameter === parameter.name).map(asChoice);
    if (own.length === 0 || (parameter.kind !== 'word' && parameter.kind !== 'words')) return parameter;
    return { ...parameter, choices: replaced(parameter.choices ?? [], own, nameOf) };
  });
}

function asChoice({ parameter: _, ...choice }: AddedChoice): Choice {
  return choice;
}

/** What is related leads both ways. */
function withReturns(files: readonly ParameterFile[], added: readonly Parameter[]): ParameterFile[] {
  return mapParameters(files, (parameter) => {
    const returns = added
      .filter(({ name, related }) => name !== parameter.name && related.includes(parameter.name))
      .map(nameOf);
    if (returns.every((name) => parameter.related.includes(name))) return parameter;
    return { ...parameter, related: [...new Set([...parameter.related, ...returns])] };
  });
}
