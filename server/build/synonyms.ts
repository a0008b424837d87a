import type { ParameterFile, Synonyms, WrittenParameterFile } from '../src/catalog/model/parameter';
import { repeated } from './catalog-checks/places';

/** Gives every parameter what people call it. */
export function withSynonyms(
  files: readonly WrittenParameterFile[],
  synonyms: Synonyms,
): readonly ParameterFile[] {
  const said = new Map(Object.entries(synonyms));
  return files.map((file) => ({
    ...file,
    parameters: file.parameters.map((one) => ({ ...one, alsoCalled: said.get(one.name) ?? [] })),
  }));
}

/** Synonyms of a parameter that there is not, and words that stand twice with one. */
export function synonymProblems(
  files: readonly WrittenParameterFile[],
  synonyms: Synonyms,
): readonly string[] {
  const names = new Set(files.flatMap(({ parameters }) => parameters.map(({ name }) => name)));
  return Object.entries(synonyms).flatMap(([name, said]) => {
    const at = `schemas/synonyms.json: ${name}`;
    const twice = repeated(said).map((words) => `${at}: "${words}" stands there twice`);
    return names.has(name) ? twice : [`${at}: there is no such parameter`, ...twice];
  });
}
