import type { ParameterOf } from '../catalog/model/parameter';
import { isPermutation } from '../catalog/permutation';
import { suggestWord } from '../catalog/suggest';
import type { ListNode, ReferenceNode, ValueNode } from '../language/ast';
import { problem, replacement } from '../language/problem';
import { refuseShape, type ValueReading } from './reading';
import type { Value } from './value';

export function interpretFlag(node: ValueNode, reading: ValueReading): Value | null {
  if (node.kind !== 'reference') return refuseShape(node, reading, '`on` or `off`');
  const { text } = node.path;
  if (text === 'on' || text === 'off') return { kind: 'flag', value: text === 'on' };
  const usual = flagHabits.get(text.toLowerCase());
  const near = usual === undefined ? [] : [usual];
  reportWord(node, reading, ['on', 'off'], near);
  return null;
}

const flagHabits = new Map([
  ['on', 'on'],
  ['yes', 'on'],
  ['true', 'on'],
  ['enabled', 'on'],
  ['off', 'off'],
  ['no', 'off'],
  ['false', 'off'],
  ['disabled', 'off'],
  ['none', 'off'],
]);

export function interpretWord(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'word'>,
): Value | null {
  if (node.kind !== 'reference') return refuseShape(node, reading, 'a word');
  const { text } = node.path;
  if (parameter.permutationOf !== undefined) return readLetters(node, reading, parameter.permutationOf);
  return checkWord(node, reading) ? { kind: 'word', value: text } : null;
}

/** A channel order: each letter once. */
function readLetters(node: ReferenceNode, reading: ValueReading, letters: string): Value | null {
  const { text } = node.path;
  if (isPermutation(text, letters)) return { kind: 'word', value: text };
  const upper = text.toUpperCase();
  const fixes = isPermutation(upper, letters) ? [replacement('Write {to}', node, upper)] : [];
  const missing = [...letters].filter((letter) => !upper.includes(letter)).join(', ');
  reading.problems.push(problem('obey/order-no-permutation', node, { given: text, letters, missing }, fixes));
  return null;
}

export function interpretWords(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'words'>,
): Value | null {
  const items = node.kind === 'list' ? node.items : node.kind === 'reference' ? [node] : null;
  if (items === null) return refuseShape(node, reading, 'a list of words such as `[one, other]`');
  const words: string[] = [];
  for (const item of items) {
    if (item.kind !== 'reference') return refuseShape(item, reading, 'a word');
    if (!checkWord(item, reading)) continue;
    if (words.includes(item.path.text)) reportRepeated(item, node, reading);
    words.push(item.path.text);
  }
  if (words.length > parameter.most) {
    reading.problems.push(
      problem('line/list-too-long', node, { most: String(parameter.most), given: String(words.length) }),
    );
  }
  if (items.length === 0 && parameter.mayBeEmpty !== true)
    reading.problems.push(problem('line/list-empty', node, { title: parameter.title }));
  return words.length === items.length ? { kind: 'words', value: words } : null;
}

function reportRepeated(item: ReferenceNode, list: ValueNode, reading: ValueReading): void {
  const before = (list as ListNode).items?.findLast((other) => other.end < item.start);
  const fixes =
    before === undefined ? [] : [replacement('Leave it out', { start: before.end, end: item.end }, '')];
  reading.problems.push(problem('line/word-repeated', item, { word: item.path.text }, fixes));
}

function checkWord(node: ReferenceNode, reading: ValueReading): boolean {
  const { words } = reading;
  if (words === null || words.includes(node.path.text)) return true;
  reportWord(node, reading, words, suggestWord(words, node.path.text));
  return false;
}

const mostShown = 12;

function reportWord(
  node: ReferenceNode,
  reading: ValueReading,
  words: readonly string[],
  near: readonly string[],
): void {
  // A long list is no help in a sentence: the hover shows it in parts.
  const shown = words.length > mostShown ? [] : words;
  const fixes = near.map((word) => replacement('Write {to}', node, word));
  const values = { given: node.path.text, allowed: shown.join(', '), suggestion: near.join(', ') };
  reading.problems.push(problem('line/unknown-word', node, values, fixes));
}

export function interpretText(
  node: ValueNode,
  reading: ValueReading,
  parameter: ParameterOf<'text'>,
): Value | null {
  if (node.kind !== 'text') {
    refuseShape(node, reading, 'a text in double quotes');
    return null;
  }
  const length = [...node.value].length;
  if (length <= parameter.longest) return { kind: 'text', value: node.value };
  const values = { given: String(length), longest: String(parameter.longest) };
  reading.problems.push(problem('line/text-too-long', node, values));
  return { kind: 'text', value: node.value };
}

export function interpretDate(node: ValueNode, reading: ValueReading): Value | null {
  if (node.kind !== 'date') return refuseShape(node, reading, 'a date such as `2026-05-14`');
  const [year = 0, month = 0, day = 0] = node.text.split('-').map(Number);
  const real = new Date(Date.UTC(year, month - 1, day));
  const isReal = real.getUTCMonth() === month - 1 && real.getUTCDate() === day && year >= 1900;
  if (isReal) return { kind: 'date', value: node.text };
  reading.problems.push(problem('line/no-such-date', node, { given: node.text }));
  return null;
}
