import type { Catalog } from '../../catalog/catalog';

/** A rule or a step that may be about each member of a collection in turn. */
export interface PerMember {
  readonly each?: string | undefined;
}

/** The slot that names the member in turn, in the sentences of a rule about a collection. */
export const memberSlot = 'member';

/** The open part in the names of a rule about a collection, such as `<name>`; null for other rules. */
export function placeholderOf({ each }: PerMember, catalog: Catalog): string | null {
  return each === undefined ? null : `<${catalog.collection(each)?.placeholder ?? ''}>`;
}

/** A text of a rule with a member in place of the open part. */
export function namingMember(text: string, placeholder: string | null, member: string): string {
  return placeholder === null ? text : text.replaceAll(placeholder, member);
}

/** A text of a fix with the pack in view in place of `<pack>`. */
export function namingPack(text: string, pack: string | null): string {
  return pack === null ? text : text.replaceAll('<pack>', pack);
}

/** A text of a rule with some member that the collection can have, to see whether it can be read at all. */
export function asMember(text: string, check: PerMember, catalog: Catalog): string {
  const [first] = check.each === undefined ? [] : catalog.members(check.each);
  return namingMember(text, placeholderOf(check, catalog), first?.name ?? 'member');
}
