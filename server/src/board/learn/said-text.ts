import type { Catalog, FoundParameter } from '../../catalog/catalog';
import { readQuantity } from '../../catalog/faults/quantities';
import { type Counts, mostBits, type PartHeld } from '../../catalog/model/board-profile';
import { suggestWord } from '../../catalog/suggest';
import { countingFaults } from '../meaning/counting-faults';
import { partParameter } from '../meaning/part-parameter';
import { wordsToSpell } from '../meaning/words-to-spell';
import { confirmable } from './confirm';
import type { Confirmation } from './said';

/** What is said of a setting in one line, or what is wrong with the line: a sentence that names the place. */
export type SaidText =
  | { readonly kind: 'said'; readonly key: string; readonly said: Confirmation }
  | { readonly kind: 'wrong'; readonly message: string };

/** What may follow the parameter, each with a value behind it. */
const keys = [
  ...['unit', 'scale', 'offset', 'step', 'limits', 'base', 'table'],
  ...['words', 'part', 'entry', 'at', 'cell', 'number-of', 'has', 'bit', 'bits', 'value', 'plain'],
] as const;
type SaidKey = (typeof keys)[number];

/** What can follow the parameter, for people. */
const saidKeys = keys.join(', ');

class Wrong extends Error {}

/**
 * Reads `calm/first-cut=gyro.filter.1.cutoff unit Hz scale 0.1`: a setting, the parameter that it stands for, and how it
 * is counted or spelled. `scale` is what a board's 1 is, in the unit; `words` has the board's word first.
 */
export function readSaid(text: string, catalog: Catalog): SaidText {
  const found = /^(.+?)=([a-z][a-z0-9-]*(?:\.[a-z0-9<>-]+)+)(?:\s+(.*))?$/s.exec(text.trim());
  if (found === null)
    return wrong(
      `"${text}" is no "setting=parameter", such as "calm/first-cut=gyro.filter.1.cutoff unit Hz"`,
    );
  const [, key = '', means = '', rest = ''] = found;
  try {
    return { kind: 'said', key: key.trim(), said: saidOf(means, rest, catalog) };
  } catch (error) {
    if (error instanceof Wrong) return wrong(`${error.message}, in "${text}"`);
    throw error;
  }
}

function wrong(message: string): SaidText {
  return { kind: 'wrong', message };
}

function saidOf(means: string, rest: string, catalog: Catalog): Confirmation {
  if (/<(?!name>)/.test(means))
    throw new Wrong(`say which one ${means} is: its member stands in the place of <…>`);
  const whole = confirmable(means, catalog);
  if (whole === undefined) throw new Wrong(`there is no parameter ${means}`);
  const given = clausesOf(rest);
  const parts = partsOf(given, whole, catalog);
  const found = partParameter(whole, parts[0]);
  const counted = countedOf(given, found);
  const more = moreOf(given, found);
  const counts: Counts = { ...counted, ...more };
  const [fault] = countingFaults(counts, found);
  if (fault !== undefined) throw new Wrong(`"${fault.at.join(' ')}": ${fault.message}`);
  const spelled = spelledOf(given, found, catalog);
  return {
    means,
    ...(counted === null ? {} : { counted }),
    ...(Object.keys(more).length === 0 ? {} : { more }),
    ...(parts.length === 0 ? {} : { parts }),
    ...(given.has('bit') ? { bit: bitOf(given, found) } : {}),
    ...(given.has('bits') ? { bits: bitsOf(given, found, catalog) } : {}),
    ...(given.has('value') ? { item: wholeNumber(given.get('value') ?? '', 'value') } : {}),
    ...(spelled === null ? {} : { spelled }),
  };
}

type Clauses = ReadonlyMap<SaidKey, string>;

/** Each key with what stands behind it, up to the next key. */
function clausesOf(rest: string): Clauses {
  const clauses = new Map<SaidKey, string>();
  let open: SaidKey | null = null;
  for (const word of rest.split(/\s+/).filter((one) => one !== '')) {
    const key = keys.find((one) => one === word);
    const isWanted: boolean = open !== null && open !== 'plain' && clauses.get(open) === '';
    if (key !== undefined && !isWanted) {
      if (clauses.has(key)) throw new Wrong(`"${key}" is said twice`);
      clauses.set(key, '');
      open = key;
    } else if (open === null || open === 'plain') {
      const [near] = suggestWord([...keys], word);
      throw new Wrong(`"${word}" is none of ${saidKeys}${near === undefined ? '' : `: ${near}?`}`);
    } else clauses.set(open, `${clauses.get(open) ?? ''} ${word}`.trim());
  }
  for (const [key, value] of clauses)
    if (value === '' && key !== 'plain') throw new Wrong(`nothing stands behind "${key}"`);
  return clauses;
}

function countedOf(
  given: Clauses,
  { parameter }: FoundParameter,
): NonNullable<Confirmation['counted']> | null {
  const [unit, scale, offset, table] = [
    given.get('unit'),
    given.get('scale'),
    given.get('offset'),
    given.get('table'),
  ];
  if (![unit, scale, offset, table].some((one) => one !== undefined)) return given.has('plain') ? {} : null;
  if (given.has('plain'))
    throw new Wrong('"plain" is the parameter’s own unit, as it stands: nothing else is said of it');
  if (unit !== undefined && parameter.kind === 'count') throw new Wrong('a count has no unit');
  return {
    ...(unit === undefined ? {} : { unit }),
    ...(scale === undefined ? {} : { scale: inverse(finiteNumber(scale, 'scale')) }),
    ...(offset === undefined ? {} : { offset: finiteNumber(offset, 'offset') }),
    ...(table === undefined ? {} : { table: Object.fromEntries(pairsOf(table, 'table')) }),
  };
}

function moreOf(given: Clauses, found: FoundParameter): NonNullable<Confirmation['more']> {
  const [step, limits, base] = [given.get('step'), given.get('limits'), given.get('base')];
  const ends = limits?.split('..').map((end) => end.trim());
  if (ends !== undefined && ends.length !== 2)
    throw new Wrong(`"limits" takes two ends, such as "20 ${found.unit ?? ''}..500 ${found.unit ?? ''}"`);
  const number = base === undefined ? undefined : Number(base);
  if (number !== undefined && number !== 2 && number !== 8 && number !== 16)
    throw new Wrong(`"base" is 2, 8 or 16, not "${base ?? ''}"`);
  return {
    ...(step === undefined ? {} : { step }),
    ...(ends === undefined ? {} : { limits: [ends[0] ?? '', ends[1] ?? ''] }),
    ...(number === undefined ? {} : { base: number }),
  };
}

/** The share of a unit that a board's 1 is, as what the value is multiplied by. */
function inverse(share: number): number {
  if (share === 0) throw new Wrong('a scale of 0 leaves nothing');
  return Number((1 / share).toPrecision(12));
}

function finiteNumber(text: string, key: SaidKey): number {
  const number = /^[+-]?(\d+(\.\d+)?|\.\d+|\d+\/\d+)$/.test(text) ? ratio(text) : Number.NaN;
  if (!Number.isFinite(number)) throw new Wrong(`"${key}" takes a number, not "${text}"`);
  return number;
}

function ratio(text: string): number {
  const [over, under = '1'] = text.split('/');
  return Number(over) / Number(under);
}

function bitOf(given: Clauses, { parameter, path }: FoundParameter): number {
  const text = given.get('bit') ?? '';
  if (given.has('value')) throw new Wrong('"bit" and "value" are not both said of one setting');
  if (!/^\d{1,2}$/.test(text) || Number(text) >= mostBits)
    throw new Wrong(`"bit" takes a number from 0, the lowest, to ${mostBits - 1}, not "${text}"`);
  if (parameter.kind !== 'flag')
    throw new Wrong(`one bit says on or off, and ${path} is more: of a list say which word it "has"`);
  return Number(text);
}

/** `0=buzzer,3=lights`: each digit with the word of the list that it says on or off of. */
function bitsOf(given: Clauses, found: FoundParameter, catalog: Catalog): Readonly<Record<string, number>> {
  const other = (['bit', 'value', 'part', 'entry', 'has', 'number-of'] as const).find((key) =>
    given.has(key),
  );
  if (other !== undefined) throw new Wrong(`"bits" says it all: "${other}" is not said with it`);
  const said = new Map<string, number>();
  for (const [digit, word] of pairsOf(given.get('bits') ?? '', 'bits')) {
    if (!/^\d{1,2}$/.test(digit) || Number(digit) >= mostBits)
      throw new Wrong(`"bits" takes numbers from 0, the lowest, to ${mostBits - 1}, not "${digit}"`);
    const known = wordOfList(word, 'bits', found, catalog);
    if (said.has(known) || [...said.values()].includes(Number(digit)))
      throw new Wrong(`"bits" says ${said.has(known) ? word : `bit ${digit}`} twice`);
    said.set(known, Number(digit));
  }
  return Object.fromEntries(said);
}

function wordOfList(word: string, key: SaidKey, found: FoundParameter, catalog: Catalog): string {
  if (found.parameter.kind !== 'words')
    throw new Wrong(`"${key}" is about a word of a list, and ${found.path} is none`);
  const known = wordsToSpell(found, catalog);
  if (known === null || known.includes(word)) return word;
  throw noWord(word, known, found);
}

function noWord(word: string, known: readonly string[], { path }: FoundParameter): Wrong {
  const [near] = suggestWord([...known], word);
  return new Wrong(`"${word}" is no word of ${path}: ${near === undefined ? known.join(', ') : `${near}?`}`);
}

function wholeNumber(text: string, key: SaidKey): number {
  if (!/^[1-9]\d{0,2}$/.test(text)) throw new Wrong(`"${key}" takes a number from 1 on, not "${text}"`);
  return Number(text);
}

function pairsOf(text: string, key: SaidKey): readonly (readonly [string, string])[] {
  return text.split(',').map((pair) => {
    const at = pair.indexOf('=');
    const [own, other] = [pair.slice(0, at).trim(), pair.slice(at + 1).trim()];
    if (at < 1 || own === '' || other === '')
      throw new Wrong(
        `"${key}" takes what the board writes and what it means, such as "${key === 'bits' ? '0=buzzer,3=lights' : '1=25 mW,2=100 mW'}", not "${pair}"`,
      );
    return [own, other] as const;
  });
}

/** The board's word stands first, as the setting does; a profile has the parameter's word first. */
function spelledOf(
  given: Clauses,
  found: FoundParameter,
  catalog: Catalog,
): NonNullable<Confirmation['spelled']> | null {
  const text = given.get('words');
  if (text === undefined) return null;
  const known = wordsToSpell(found, catalog);
  const pairs = pairsOf(text, 'words').map(([own, word]) => {
    if (known !== null && !known.includes(word)) throw noWord(word, known, found);
    return [word, own] as const;
  });
  const twice = pairs.find(([word], index) => pairs.findIndex(([other]) => other === word) !== index);
  if (twice !== undefined) throw new Wrong(`"${twice[0]}" is spelled in two ways`);
  return Object.fromEntries(pairs);
}

/** The part, or one for each of several values: `low,high`, `1,2,3,4`, `0 %,50 %,100 %`. */
function partsOf(given: Clauses, found: FoundParameter, catalog: Catalog): readonly PartHeld[] {
  const { parameter, path } = found;
  const said = (['part', 'entry', 'at', 'cell', 'number-of', 'has'] as const).filter((key) => given.has(key));
  const [key, second] = said;
  if (key === undefined) return [];
  if (second !== undefined) throw new Wrong(`"${key}" and "${second}" are not both said of one setting`);
  const items = (given.get(key) ?? '').split(',').map((one) => one.trim());
  return items.map((item): PartHeld => {
    if (key === 'entry') return { entry: wholeNumber(item, 'entry') };
    if (key === 'cell') return { cell: wholeNumber(item, 'cell') };
    if (key === 'has') return { has: wordOfList(item, key, found, catalog) };
    if (key === 'number-of') return { numberOf: wordOfList(item, key, found, catalog) };
    if (key === 'part') {
      const part = (['low', 'high', 'row', 'column'] as const).find((one) => one === item);
      if (part === undefined) throw new Wrong(`"part" is low, high, row or column, not "${item}"`);
      return part;
    }
    const across = parameter.kind === 'curve' ? parameter.across.dimension : null;
    if (across === null) throw new Wrong(`"at" is a point of a curve, and ${path} is none`);
    const { problem } = readQuantity(item, across);
    if (problem !== undefined) throw new Wrong(`"at": ${problem}`);
    return { at: item };
  });
}
