import type { Catalog } from '../../catalog/catalog';
import { inParts } from '../../catalog/in-parts';
import type { KnownParameter } from '../../catalog/known-parameter';

/** A group or a section with the parameters in it, as plain text; null where the name is neither. */
export function explainSection(catalog: Catalog, name: string): string | null {
  const group = catalog.groups.get(name);
  if (group !== undefined) {
    const paragraphs = [
      `${group.title} (${name})`,
      group.summary,
      ...members(catalog, name),
      listed(group.parameters),
    ];
    return paragraphs.join('\n\n');
  }
  const below = catalog.parametersUnder(name).map(({ known }) => known);
  return below.length === 0 ? null : [name, ...members(catalog, name), listed(below)].join('\n\n');
}

/** What a closed collection can have, under the questions that it answers; nothing for any other name. */
function members(catalog: Catalog, collection: string): readonly string[] {
  if (catalog.collection(collection)?.keys.kind !== 'closed') return [];
  const known = catalog.members(collection);
  const longest = Math.max(...known.map(({ name }) => name.length));
  return inParts(known).map(({ title, of }) =>
    [
      ...(title === null ? [] : [title]),
      ...of.map((member) => `  ${member.name.padEnd(longest)}  ${member.title}`),
    ].join('\n'),
  );
}

/** The parameters whose last words are these: `cutoff`, `throttle.curve`. */
export function parametersEndingIn(catalog: Catalog, ending: string): readonly KnownParameter[] {
  return [...catalog.parameters.values()].filter(({ name }) => name.endsWith(`.${ending}`));
}

/** Parameters that share their last words, as plain text. */
export function explainEnding(ending: string, found: readonly KnownParameter[]): string {
  return `${found.length} parameters end in ${ending}; explain takes one of them:\n\n${listed(found)}`;
}

/** Names with their titles, the titles in one column. */
function listed(parameters: readonly KnownParameter[]): string {
  const longest = Math.max(0, ...parameters.map(({ name }) => name.length));
  return parameters.map(({ name, parameter }) => `  ${name.padEnd(longest)}  ${parameter.title}`).join('\n');
}
