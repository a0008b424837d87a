import { inParts } from '../../src/catalog/in-parts';
import type { Bundle } from '../../src/catalog/model/bundle';
import type { Collection, Member } from '../../src/catalog/model/collection';
import { code, plain, table } from './table';

/** What may be named under a section: by the question that each member answers, where they are told in parts. */
export function collectionSections({ collections }: Bundle): readonly string[] {
  return [`## Names under sections (${collections.length})`, ...collections.flatMap(collectionSection)];
}

function collectionSection({ path, placeholder, summary, keys }: Collection): readonly string[] {
  const head = [`### ${code(`[${path}.<${placeholder}>]`)}`, summary];
  switch (keys.kind) {
    case 'open':
      return [...head, 'Any name of your own.'];
    case 'numbers':
      return [...head, `Numbers from ${keys.from} to ${keys.to}.`];
    case 'closed':
      return [...head, ...inParts(keys.members).flatMap(({ title, of }) => part(title, of))];
  }
}

function part(title: string | null, members: readonly Member[]): readonly string[] {
  const rows = members.map((member) => [code(member.name), plain(member.title), plain(member.summary)]);
  return [
    ...(title === null ? [] : [`**${plain(title)}**`]),
    table(['name', 'what it is', 'what it does'], rows),
    ...members.flatMap(({ name, without = [] }) =>
      without.map(({ setting, why }) => `${code(name)} has no ${code(setting)}: ${plain(why)}.`),
    ),
  ];
}
