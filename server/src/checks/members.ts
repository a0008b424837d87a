import type { Catalog } from '../catalog/catalog';
import type { CraftView } from '../craft/view';
import { perItem } from './per-item';

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
export function withMember(text: string, placeholder: string | null, member: string): string {
  return placeholder === null ? text : text.replaceAll(placeholder, member);
}

/** A text of a rule with some member that the collection can have, to see whether it can be read at all. */
export function asMember(text: string, check: PerMember, catalog: Catalog): string {
  const [first] = check.each === undefined ? [] : catalog.members(check.each);
  return withMember(text, placeholderOf(check, catalog), first?.name ?? 'member');
}

/**
 * What there is to say of each member of a collection, in their order. When something of one member changes, only
 * what stands near it is asked anew: a log may hold thousands of flights. `key` tells who asks;
 * `thinned` leaves out what the whole does not need.
 */
export function perMember<T>(
  view: CraftView,
  key: string,
  collection: string,
  of: (member: string) => readonly T[],
  thinned?: (said: readonly T[]) => readonly T[],
): readonly T[] {
  const members = () => view.members(collection);
  const cells = {
    get: <V>(name: string, compute: () => V) => view.kept('each', name, compute),
  };
  return perItem(cells, key, members, of, thinned);
}
