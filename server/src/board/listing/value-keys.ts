const keyKinds = ['low', 'high', 'default', 'unit', 'range', 'words'] as const;

/** What a key says that the value behind it is, by the field of a template that takes it. */
export type KeyKind = (typeof keyKinds)[number];

/** The keys of each kind, in the languages that boards write them in. */
const wordsByKind: Readonly<Record<KeyKind, readonly string[]>> = {
  low: ['min', 'least', 'low', 'lowest', 'lower', 'minimum', 'from', 'von', 'ab', 'mindestens', 'de'],
  high: ['max', 'most', 'high', 'highest', 'upper', 'maximum', 'to', 'bis', 'h\u00f6chstens', '\u00e0'],
  default: [
    'default',
    'def',
    'dflt',
    'factory',
    'std',
    'standard',
    'normal',
    'usual',
    'usually',
    'vorgabe',
    'werk',
    'werkseinstellung',
    'standardwert',
    'd\u00e9faut',
    'defaut',
    'init',
    'initial',
    'delivered',
    'shipped',
    'stock',
    'usine',
    'ausgeliefert',
  ],
  unit: ['unit', 'units', 'einheit', 'unit\u00e9', 'in', 'en'],
  range: ['range', 'limits', 'bereich', 'plage', 'grenzen', 'limites', 'between', 'zwischen', 'entre'],
  words: [
    'one of',
    'any of',
    'allowed',
    'choices',
    'choice',
    'options',
    'values',
    'words',
    'either',
    'eines von',
    'einer von',
    'eins von',
    'erlaubt',
    'auswahl',
    'm\u00f6glich',
    'entweder',
    'un de',
    'parmi',
    'choix',
    'permis',
    'valeurs',
  ],
};

const kinds: ReadonlyMap<string, KeyKind> = new Map(
  keyKinds.flatMap((kind) => wordsByKind[kind].map((word) => [word, kind] as const)),
);

/** What a word before a value says that the value is: `max` is the most. */
export function keyOf(word: string): KeyKind | null {
  return kinds.get(word.toLowerCase()) ?? null;
}

/** A clause that begins with a key. */
interface KeyedClause {
  readonly key: KeyKind;
  readonly rest: string;
}

/** The key that a clause begins with, of one word or two, and what follows it. */
export function keyBefore(clause: string): KeyedClause | null {
  const text = clause.startsWith('par ') ? clause.slice('par '.length) : clause;
  const words = text.split(/[\s:=]/, 2);
  for (const name of [words.join(' '), words[0] ?? '']) {
    const key = keyOf(name);
    if (key === null || !text.startsWith(name)) continue;
    const rest = text.slice(name.length).trimStart();
    const said = /^[:=]/.test(rest) ? rest.slice(1).trimStart() : rest;
    if (said !== '') return { key, rest: said };
  }
  return null;
}
