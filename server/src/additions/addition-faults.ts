import type { Catalog } from '../catalog/catalog';
import { type Fault, faultsWithin } from '../catalog/faults/fault';
import { numberFaults } from '../catalog/faults/numbers';
import { chemistryFaults, linkFaults, regionFaults } from '../catalog/faults/tables';
import type { Addition } from '../catalog/model/addition';
import type { Parameter } from '../catalog/model/parameter';
import type { Concept } from '../catalog/model/trade-words';
import { takes } from '../catalog/path-tree';
import { ruleFaults, wordsOf } from '../checks/data/rule-faults';
import { isOwnPath, ownGroup } from '../language/path-text';

/** What is wrong with an addition by itself: quantities that can't be read, ranges in one another. */
export function ownFaults({ parameters, links, chemistries, regions }: Addition): readonly Fault[] {
  return [
    ...each('parameters', parameters, numberFaults),
    ...each('links', links, linkFaults),
    ...each('chemistries', chemistries, chemistryFaults),
    ...each('regions', regions, regionFaults),
  ];
}

/** What is wrong with an addition that has been merged into this catalogue: names that lead nowhere. */
export function joinedFaults(
  { parameters, choices, checks, words }: Addition,
  catalog: Catalog,
): readonly Fault[] {
  return [
    ...each('parameters', parameters, (parameter) => parameterFaults(parameter, catalog)),
    ...each('choices', choices, ({ parameter }) => choiceFaults(parameter, catalog)),
    ...each('checks', checks, (check) => ruleFaults(check, catalog)),
    ...each('words', words, (one) => conceptFaults(one, catalog)),
  ];
}

/** Concepts that it is near to, or made of, that there are not. */
function conceptFaults({ near = [], madeOf = [] }: Concept, { tradeWords }: Catalog): readonly Fault[] {
  const known = new Set(tradeWords.concepts.map(({ concept }) => concept));
  const faults = (list: string, names: readonly string[]) =>
    names.flatMap((name, index) =>
      known.has(name) ? [] : [{ at: [list, index], message: `there is no concept ${name}` }],
    );
  return [...faults('near', near), ...faults('madeOf', madeOf)];
}

function parameterFaults({ name, needs, related }: Parameter, catalog: Catalog): readonly Fault[] {
  if (isOwnPath(name)) return [{ at: ['name'], message: belongsToBoard(name) }];
  return [
    ...pathFaults(name, catalog),
    ...referenceFaults('needs', needs, catalog),
    ...referenceFaults('related', related, catalog),
    ...defaultWordFaults(name, catalog),
  ];
}

/** Under `own` stands what only the board knows: nobody else says what it means there. */
function belongsToBoard(name: string): string {
  const rest = name.slice(ownGroup.length + 1);
  const other = rest.includes('-') ? rest.replace('-', '.') : `extra.${rest}`;
  return `what stands under ${ownGroup} is kept as the board writes it: choose another group, such as ${other}`;
}

function each<T>(list: string, rows: readonly T[], faultsOf: (row: T) => readonly Fault[]): readonly Fault[] {
  return rows.flatMap((row, index) => faultsWithin([list, index], faultsOf(row)));
}

/** A name that is a setting cannot be a section as well, and open parts must be those of a collection. */
function pathFaults(name: string, catalog: Catalog): readonly Fault[] {
  const at = ['name'];
  const words = name.split('.');
  const before = (index: number) => words.slice(0, index).join('.');
  const wrong = words.flatMap((word, index): readonly Fault[] => {
    const collection = catalog.collection(before(index));
    const isOpen = word.startsWith('<');
    if (collection === undefined) return isOpen ? [{ at, message: `${word} follows no collection` }] : [];
    const expected = `<${collection.placeholder}>`;
    // A member that is known may get a setting of its own.
    const isNamed = collection.keys.kind === 'closed' && takes(collection, word);
    if (word !== expected && !isNamed)
      return [{ at, message: `${expected} was expected in place of ${word}` }];
    const twin = twinOf(words, index, catalog);
    return twin === undefined ? [] : [{ at, message: `${twin} stands for the same setting` }];
  });
  const around = words.slice(1).map((_, index) => before(index + 1));
  const setting = around.find((path) => catalog.parameters.has(path));
  if (setting !== undefined)
    return [...wrong, { at, message: `${setting} is a setting and holds no others` }];
  const isSection = [...catalog.parameters.keys()].some((other) => other.startsWith(`${name}.`));
  return isSection ? [...wrong, { at, message: `${name} is a section and can't be set itself` }] : wrong;
}

/** The parameter that has the same path for some member of the collection at an index; undefined without one. */
function twinOf(words: readonly string[], index: number, catalog: Catalog): string | undefined {
  const collection = words.slice(0, index).join('.');
  const placeholder = `<${catalog.collection(collection)?.placeholder}>`;
  const name = words.join('.');
  const others =
    words[index] === placeholder ? catalog.members(collection).map((member) => member.name) : [placeholder];
  return others
    .map((word) => words.with(index, word).join('.'))
    .find((path) => path !== name && catalog.parameters.has(path));
}

function referenceFaults(list: string, names: readonly string[], catalog: Catalog): readonly Fault[] {
  return names.flatMap((name, index) =>
    catalog.parameters.has(name) ? [] : [{ at: [list, index], message: `there is no parameter ${name}` }],
  );
}

function defaultWordFaults(name: string, catalog: Catalog): readonly Fault[] {
  const known = catalog.parameters.get(name);
  const value = known?.parameter.default?.value;
  if (known === undefined || value === undefined) return [];
  const { kind } = known.parameter;
  if (kind !== 'word' && kind !== 'words' && kind !== 'flag') return [];
  const words = wordsOf(known, catalog);
  const given = kind === 'words' ? value.replace(/^\[|\]$/g, '').split(',') : [value];
  const wrong = given.map((word) => word.trim()).find((word) => words?.includes(word) === false);
  if (wrong === undefined || wrong === '') return [];
  return [{ at: ['default', 'value'], message: `"${wrong}" is none of its words: ${words?.join(', ')}` }];
}

function choiceFaults(name: string, catalog: Catalog): readonly Fault[] {
  const parameter = catalog.parameters.get(name)?.parameter;
  if (parameter === undefined) return [{ at: ['parameter'], message: `there is no parameter ${name}` }];
  if (parameter.kind === 'word' || parameter.kind === 'words') return [];
  return [{ at: ['parameter'], message: `${name} takes no words` }];
}
