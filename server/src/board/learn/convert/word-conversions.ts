import type { FoundParameter } from '../../../catalog/catalog';
import { isPermutation } from '../../../catalog/permutation';
import { inCaseOf } from '../../../units/capitals';
import { lookOf } from '../../listing/value-look';
import { wordsToSpell } from '../../meaning/words-to-spell';
import type { LearnedSetting } from '../learned-settings';
import { contentWords } from '../words';
import { scriptWordOf } from '../words/script-word';
import { previewOf } from './preview';
import type { Conversion, Ground, TakenAs } from './taken';

/** A word or flag of a listing with the parameter that it is taken for. */
export interface WordTaken {
  readonly taken: TakenAs;
  readonly found: FoundParameter;
}

/** How the board spells the words of a parameter: by what its listing allows and remarks, else by the value alone. */
export function wordConversion({ taken, found }: WordTaken, ground: Ground): Conversion {
  const { setting, as } = taken;
  const words = wordsToSpell(found, ground.catalog);
  const isFree = words === null || !spelt.has(found.parameter.kind);
  const isList = found.parameter.kind === 'words' && as === undefined;
  const proposed = isFree ? ownSpelling(setting, found) : spellingOf(setting, words, found, isList);
  const table = taken.spelled === undefined ? proposed : withSaid(proposed, taken.spelled);
  const spelled = needed(table.pairs, found, ground);
  const how = spelled === null ? {} : { spelled };
  const preview = previewOf(taken, how, ground);
  const isRead = preview.quantity !== null && isKnown(preview.quantity, words, found);
  return {
    sureness: !isRead ? 'ask' : table.isStated ? 'stated' : 'likely',
    meant: isRead ? how : null,
    why: isRead ? table.why : `nobody has said which word of it “${setting.value}” is`,
    preview: isRead
      ? preview
      : { ...preview, quantity: null, reason: preview.reason ?? 'it is no word of the parameter' },
    candidates: [],
    takesRole: false,
  };
}

const spelt: ReadonlySet<string> = new Set(['word', 'words', 'flag', 'quantity', 'count']);

function isKnown(quantity: string, words: readonly string[] | null, { parameter }: FoundParameter): boolean {
  if (words === null) return true;
  if (parameter.kind === 'words') {
    const inner = quantity.slice(1, -1);
    return inner === '' || inner.split(', ').every((word) => words.includes(word));
  }
  return parameter.kind !== 'word' || words.includes(quantity);
}

interface WordPairs {
  /** Our word and the board's. */
  readonly pairs: ReadonlyMap<string, string>;
  readonly isStated: boolean;
  readonly why: string;
}

/** What a person says goes before what is proposed. */
function withSaid({ pairs }: WordPairs, said: Readonly<Record<string, string>>): WordPairs {
  const own = new Set(Object.values(said));
  const others = [...pairs].filter(([word, spelled]) => said[word] === undefined && !own.has(spelled));
  return { pairs: new Map([...Object.entries(said), ...others]), isStated: true, why: 'you say so' };
}

function spellingOf(
  setting: LearnedSetting,
  words: readonly string[],
  found: FoundParameter,
  isList: boolean,
): WordPairs {
  const { value, stated } = setting;
  const noted = notedIn(stated?.remark ?? '', words);
  if (noted.size > 0 && [...noted.values()].includes(value))
    return { pairs: noted, isStated: true, why: 'its remark says what each stands for' };
  // A word of several parts may stand alone: `lost link`.
  const own = isList && plainlyMeant(value, words) === null ? itemsOf(value) : [value];
  const listed = stated?.words ?? own;
  if (found.parameter.kind === 'flag')
    return { pairs: flagPair(value, listed), isStated: false, why: 'its word is one of a pair' };
  const pairs = matched(listed, words);
  const isAll = stated?.words !== undefined && stated.words !== null && pairs.size === stated.words.length;
  return {
    pairs,
    isStated: isAll,
    why: isAll ? 'the listing names all of its words' : 'its word says so; others are not known yet',
  };
}

function matched(own: readonly string[], words: readonly string[]): ReadonlyMap<string, string> {
  const pairs = new Map<string, string>();
  for (const one of own) {
    const word = plainlyMeant(one, words);
    if (word !== null && !pairs.has(word)) pairs.set(word, one);
  }
  return pairs;
}

/**
 * The catalogue's word that a board's word plainly is, or that alone begins with it: `first` for `first-order`. Null
 * where none is, or more than one may be.
 */
function plainlyMeant(own: string, known: readonly string[]): string | null {
  const [inOtherCase, another] = known.filter((one) => one.toLowerCase() === own.toLowerCase());
  if (known.includes(own)) return own;
  // A single letter has no word to tell: `R` of the bands.
  if (inOtherCase !== undefined && another === undefined) return inOtherCase;
  const told = contentWords(own).join(' ');
  if (told === '') return null;
  const same = known.filter((one) => contentWords(one).join(' ') === told);
  const [word, ...others] =
    same.length > 0 || told.length < leastBeginning
      ? same
      : known.filter((one) => contentWords(one).join(' ').startsWith(`${told} `));
  return word === undefined || others.length > 0 ? null : word;
}

/** Shorter beginnings say too little. */
const leastBeginning = 4;

/** On and off as the board writes them: a known pair, or 1 and 0. */
function flagPair(value: string, listed: readonly string[]): ReadonlyMap<string, string> {
  const look = lookOf(value);
  if (look.kind === 'flag') {
    const likeValue = (word: string) =>
      listed.find((one) => one.toLowerCase() === word) ?? inCaseOf(word, value);
    return new Map([
      ['on', likeValue(look.pair[0])],
      ['off', likeValue(look.pair[1])],
    ]);
  }
  return value === '0' || value === '1'
    ? new Map([
        ['on', '1'],
        ['off', '0'],
      ])
    : new Map();
}

/** `0 = none, 2: first order`: what a remark says that numbers or words stand for. */
function notedIn(remark: string, words: readonly string[]): ReadonlyMap<string, string> {
  const pairs = new Map<string, string>();
  for (const clause of remark.split(/[,;|/]|\.\s/)) {
    const [one, other] = aroundMark(clause);
    if (!/^[\p{L}\p{N}_-]{1,40}$/u.test(one)) continue;
    const word = plainlyMeant(other, words);
    if (word !== null && !pairs.has(word)) pairs.set(word, one);
  }
  return pairs;
}

const standsFor = ['=', ':', '->', '\u2192', ' is '] as const;

/** What stands before and behind the first mark of a clause, without brackets around them and the full stop. */
function aroundMark(clause: string): readonly [before: string, behind: string] {
  const places = standsFor.map((mark) => ({ mark, at: clause.indexOf(mark) })).filter(({ at }) => at >= 0);
  const [first] = places.toSorted((one, other) => one.at - other.at);
  if (first === undefined) return ['', ''];
  const before = clause.slice(0, first.at).replace(/^[\s(]+/, '');
  let end = clause.length;
  while (/[\s).]/.test(clause[end - 1] ?? '')) end -= 1;
  return [before.trim(), clause.slice(first.at + first.mark.length, end).trim()];
}

function itemsOf(value: string): readonly string[] {
  const look = lookOf(value);
  return look.kind === 'list' || look.kind === 'tuple' ? look.items : value === '' ? [] : value.split(/\s+/);
}

/** Names that only a board has, such as those of its ports: as a script can write them. */
function ownSpelling({ value }: LearnedSetting, { parameter }: FoundParameter): WordPairs {
  const letters = parameter.kind === 'word' ? parameter.permutationOf : undefined;
  const plain = letters === undefined ? scriptWordOf(value) : orderOf(value, letters);
  const isWord = parameter.kind === 'word' && plain !== null;
  return {
    pairs: isWord ? new Map([[plain, value]]) : new Map(),
    isStated: false,
    why: 'it is kept as it is written',
  };
}

/** An order of letters, in capitals; null for what is none of these. */
function orderOf(text: string, letters: string): string | null {
  const order = text.toUpperCase();
  return isPermutation(order, letters) ? order : null;
}

/** Where all is spelled as a script spells it nothing need be said. */
function needed(
  pairs: ReadonlyMap<string, string>,
  { parameter }: FoundParameter,
  { manner }: Ground,
): Readonly<Record<string, string>> | null {
  if (pairs.size === 0) return null;
  if (
    parameter.kind === 'flag' &&
    pairs.get('on') === manner.flags.on &&
    pairs.get('off') === manner.flags.off
  )
    return null;
  // Of a board's own names only one is seen here: the others are as they stand.
  if ([...pairs].every(([word, own]) => word === own)) return null;
  return Object.fromEntries(pairs);
}
