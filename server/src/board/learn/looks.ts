import { forbidden } from '../meaning/spelling';

/** What a piece of a listing looks like. */
export type Look = 'number' | 'flag' | 'word' | 'words' | 'text' | 'list' | null;

const number = /^[+-]?(\d{1,15}([.,]\d{1,12})?|\.\d{1,12})$/;
const measured = /^[+-]?\d{1,15}(\.\d{1,12})?\s?(%|[a-zA-Zµ°]{1,5}(\/[a-zA-Z]{1,4}(\^2)?)?)$/;
const word = /^[A-Za-z][A-Za-z0-9]*([-_./][A-Za-z0-9]+)*$/;
const flags: ReadonlySet<string> = new Set([
  'on',
  'off',
  'yes',
  'no',
  'true',
  'false',
  'lit',
  'dark',
  'enabled',
  'disabled',
]);
const mostWords = 5;
const mostEntries = 24;

/** What a value looks like; null: like none. */
export function valueLook(text: string): Look {
  if (text === '' || text.length > 200 || forbidden.test(text)) return null;
  if (number.test(text) || measured.test(text)) return 'number';
  if (flags.has(text.toLowerCase())) return 'flag';
  if (word.test(text)) return 'word';
  if (isQuoted(text)) return 'text';
  const list = listLook(text);
  if (list) return 'list';
  const words = text.split(' ');
  return words.length <= mostWords && words.every((one) => word.test(one)) ? 'words' : null;
}

export function isQuoted(text: string): boolean {
  const first = text[0];
  return text.length > 1 && (first === '"' || first === "'") && text.endsWith(first);
}

/** What may stand between the entries of a list. */
const listMarks = [', ', ',', '; ', ' + ', '+', ' and ', '|'] as const;

function listLook(text: string): boolean {
  const mark = listMarks.find((one) => text.includes(one));
  if (mark === undefined) return false;
  const entries = text.split(mark);
  return entries.length <= mostEntries && entries.every((entry) => number.test(entry) || word.test(entry));
}

const name = /^[A-Za-z][A-Za-z0-9]*((?:: |[ ._/:-])[A-Za-z0-9]+|\[[A-Za-z0-9]{1,8}\]|\(\d{1,4}\))*$/;
const longestName = 60;

/** Whether a text can be the name of a setting or of a group. */
export function isName(text: string): boolean {
  return text.length <= longestName && name.test(text) && text.split(' ').length <= 6;
}
