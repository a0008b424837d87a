import type { Catalog } from '../../catalog/catalog';
import { inParts } from '../../catalog/in-parts';
import type { Member } from '../../catalog/model/collection';
import { membershipsIn } from '../../craft/memberships';
import { escaped } from '../markdown';
import { namedText } from './parameter-text';

/** The member of a closed collection that a path names or runs through: the situation, the switch function. */
export function memberIn(path: string, catalog: Catalog): Member | undefined {
  const [found] = membershipsIn(path, catalog);
  return catalog.collection(found?.collection ?? '')?.keys.kind === 'closed'
    ? catalog.members(found?.collection ?? '').find(({ name }) => name === found?.member)
    : undefined;
}

/** What the member is whose setting is told: the same setting means something else with each. */
export function memberParagraphs(path: string, catalog: Catalog): readonly string[] {
  const member = memberIn(path, catalog);
  return member === undefined ? [] : [`**${escaped(member.title)}:** ${escaped(member.summary)}`];
}

/** What a closed collection can have, part by part; nothing for any other path. */
export function membersOf(path: string, catalog: Catalog): readonly string[] {
  if (catalog.collection(path)?.keys.kind !== 'closed') return [];
  return [namedText(inParts(catalog.members(path)))];
}
