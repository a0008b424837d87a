import { listed } from '../checks/report/listed';
import type { Craft } from '../craft/craft';
import { type CraftView, viewQuery } from '../craft/view';
import { type Topic, topicOfFigure } from '../figures/topics';
import { capitalised } from '../units/capitals';
import { type WithheldFigure, withheldFigures } from './withheld-figures';

/** Figures that are withheld for the same reason, in one sentence. */
export interface NotKnown {
  /** Their ids. */
  readonly figures: readonly string[];
  /** What is not known, and what to do about it. */
  readonly text: string;
  /** Ways to make them known: each writes lines into the script. */
  readonly ways: readonly WayToWrite[];
}

export interface WayToWrite {
  readonly title: string;
  /** Settings that it writes. */
  readonly paths: readonly string[];
}

/** A withheld figure as programs are told of it. */
export interface WithheldWithReason extends Omit<WithheldFigure, 'because' | 'refused'> {
  /** Why it is withheld, in a sentence. */
  readonly reason: string;
}

/** What is withheld of a craft: figure by figure, and in sentences for people. */
export interface NotKnownOfCraft {
  readonly withheld: readonly WithheldWithReason[];
  readonly sentences: readonly NotKnown[];
}

/** `ids`: of which figures that may be. Kept, for few edits change why something can't be computed. */
export function notKnownOf(view: CraftView, ids: readonly string[]): NotKnownOfCraft {
  return notKnownAmong(view, ids.join());
}

const notKnownAmong = viewQuery('not known', ({ craft }, ids: string): NotKnownOfCraft => {
  const withheld = withheldFigures(craft, new Set(ids.split(',')));
  return { withheld: withheldOf(craft, withheld), sentences: notKnown(craft, withheld) };
});

/** For programs: each figure by itself. */
export function withheldOf(craft: Craft, withheld = withheldFigures(craft)): readonly WithheldWithReason[] {
  return withheld.map(({ because, refused: _, ...figure }) => ({
    ...figure,
    reason: [because, writeText(craft, figure)].filter((sentence) => sentence !== null).join(' '),
  }));
}

/** For people: all that have the same need in one sentence, those that tell of most figures first. */
export function notKnown(craft: Craft, withheld = withheldFigures(craft)): readonly NotKnown[] {
  const groups = groupedBy(topicsOf(withheld), ({ needs, because, packs }) =>
    JSON.stringify([[...needs].sort(), because, packs]),
  ).map((group) => ({ ...joined(group), words: group.map(({ words }) => words) }));
  groups.sort((one, other) => other.figures.length - one.figures.length);
  return groups.map((group, index) => {
    const above = groups.slice(0, index).map(({ needs }) => needs);
    // Of what a sentence above asks for, no more is said than that this takes more.
    const asked = above.find((needs) => needs.every((path) => group.needs.includes(path))) ?? [];
    return sentenceOf(craft, group, asked);
  });
}

/** Figures that are withheld with the same packs for the same reason. */
type Unknown = Pick<WithheldFigure, 'packs' | 'needs' | 'instead' | 'because'> & {
  readonly figures: readonly string[];
};

/** Figures of one topic together, with all that they need. */
function topicsOf(withheld: readonly WithheldFigure[]): readonly (Unknown & Topic)[] {
  const each = withheld.map((one) => ({ ...one, figures: [one.id], ...topicOfFigure(one.id, one.title) }));
  return groupedBy(each, ({ words, packs, because }) => JSON.stringify([words, packs, because]))
    .map(joined)
    .sort((one, other) => one.rank - other.rank);
}

function joined<T extends Unknown>([first, ...others]: NonEmpty<T>): T {
  const all = [first, ...others];
  return {
    ...first,
    figures: all.flatMap(({ figures }) => figures),
    needs: [...new Set(all.flatMap(({ needs }) => needs))],
  };
}

function sentenceOf(
  craft: Craft,
  { words, figures, packs, needs, instead, because }: Unknown & { readonly words: readonly string[] },
  asked: readonly string[],
): NotKnown {
  const what = listed(words);
  const withPacks = packs === null ? '' : ` with ${packs.length === 1 ? 'pack' : 'packs'} ${listed(packs)}`;
  const more = needs.filter((path) => !asked.includes(path));
  const isMore = asked.length > 0 && more.length > 0;
  const write = writeText(craft, { needs: isMore ? more : needs, instead }, isMore ? ' as well' : '');
  const parts = [
    `${capitalised(what)}${withPacks}: ${needs.length === 0 ? 'not known' : 'not known yet'}.`,
    because,
    write,
  ];
  return {
    figures,
    text: parts.filter((part) => part !== null).join(' '),
    // What may stand in place of what is asked above is offered there.
    ways: waysToWrite({ needs, instead: isMore ? [] : instead }),
  };
}

type Needs = Pick<Unknown, 'needs' | 'instead'>;

/** The presses that write what is missing. */
export function waysToWrite({ needs, instead }: Needs): readonly WayToWrite[] {
  if (needs.length === 0) return [];
  const lines = needs.length === 1 ? 'this line' : `these ${needs.length} lines`;
  return [
    { title: `Write ${lines}`, paths: needs },
    ...instead.map(({ of, write, words }) => ({
      title: `Write ${words ?? listed(write)} instead`,
      paths: [...write, ...needs.filter((path) => !of.includes(path))],
    })),
  ];
}

/** Null where nothing is missing. `also`: what is said behind the settings. */
function writeText(craft: Craft, { needs, instead }: Needs, also = ''): string | null {
  if (needs.length === 0) return null;
  const write = `Write ${listed(namesOf(craft, needs))}${also}`;
  const [first] = instead.filter(({ of }) => of.every((path) => needs.includes(path)));
  if (first === undefined) return `${write}.`;
  const others = instead
    .map(({ write, words, detail = '' }) => `${words ?? listed(write)}${detail}`)
    .join(', or ');
  if (first.of.length === needs.length) return `${write}, or ${others}.`;
  return `${write}. In place of ${listed(first.of)}: ${others}.`;
}

/** What every pack lacks is said once. */
function namesOf(craft: Craft, needs: readonly string[]): readonly string[] {
  const packs = craft.packs();
  const names = needs.map((path) => {
    const own = /^pack\.[^.]+\.(.+)$/.exec(path)?.[1];
    const isOfAll = packs.length > 1 && packs.every((pack) => needs.includes(`pack.${pack}.${own}`));
    return own !== undefined && isOfAll ? `pack.<name>.${own} of every pack` : path;
  });
  return [...new Set(names)];
}

type NonEmpty<T> = readonly [T, ...T[]];

function groupedBy<T>(items: readonly T[], keyOf: (item: T) => string): readonly NonEmpty<T>[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const key = keyOf(item);
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [item]);
    else known.push(item);
  }
  return [...groups.values()];
}
