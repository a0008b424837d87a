/** Everyday words that say much the same of a setting; the first stands for all. */
const alike: readonly (readonly string[])[] = [
  ['limit', 'most', 'maximum', 'max', 'highest', 'cap', 'ceiling'],
  ['least', 'minimum', 'min', 'lowest', 'floor'],
  ['interval', 'every', 'period', 'pace'],
  ['voltage', 'volt'],
  ['count', 'number', 'many'],
  ['delay', 'wait', 'pause', 'hold'],
  ['frequency', 'tone', 'pitch', 'hertz'],
  ['duration', 'time', 'long', 'seconds'],
  ['warning', 'warn', 'alert', 'alarm'],
  ['strength', 'level', 'power'],
  ['arming', 'arm', 'armed', 'live'],
  ['speed', 'velocity'],
  ['channel', 'lever'],
  ['shape', 'kind', 'type', 'form', 'style'],
  ['cutoff', 'cut', 'corner', 'edge'],
  ['gain', 'factor'],
  ['rate', 'often'],
  ['none', 'nothing', 'off'],
];

const firstOf = new Map(alike.flatMap((words) => words.map((word) => [word, words[0] ?? word])));

/** Words that say nothing of what a setting does. */
const empty: ReadonlySet<string> = new Set(
  'a an and are as at be by for from in into is it its of on one or per so that the this to with how what when which while set setting value name two three four five six seven eight'.split(
    ' ',
  ),
);

/** The words of a text that tell something, each cut down to what its forms share. */
export function contentWords(text: string): readonly string[] {
  const words = text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/);
  return words.filter((word) => word.length > 1 && !empty.has(word)).map(rootOf);
}

function rootOf(word: string): string {
  const stem = stemOf(word);
  return firstOf.get(word) ?? firstOf.get(stem) ?? stem;
}

/** Plural, -ing and -ed come off where enough is left. */
function stemOf(word: string): string {
  if (word.length > 6 && word.endsWith('ing')) return undoubled(word.slice(0, -3));
  if (word.length > 5 && word.endsWith('ed')) return undoubled(word.slice(0, -2));
  if (word.length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
}

/** `stopping` is `stop`, and `filling` is `fil`: the same for all forms is what counts. */
function undoubled(stem: string): string {
  return stem.at(-1) === stem.at(-2) ? stem.slice(0, -1) : stem;
}
