import type { Catalog } from '../../../catalog/catalog';
import type { KnownParameter } from '../../../catalog/known-parameter';
import { type Interval, liesWithin } from '../../../units/interval';
import { plainNumber } from '../../../units/number-text';
import { fromBase, toBase, unitOf } from '../../../units/unit';
import { lookOf } from '../../listing/value-look';
import { countedIn, unitNamed } from '../../meaning/board-units';
import { wordOfPart } from '../../meaning/part-parameter';
import { reciprocalOf } from '../../meaning/reciprocal';
import { isNamedNumber } from '../convert/named-number';
import type { LearnedLook } from '../learned-settings';
import { nameWords } from '../words/name-words';
import type { AskedSetting } from './asked';
import { choiceWords } from './choice-words';
import { isUnit } from './said-unit';
import type { KnownTarget } from './targets';

/** How well what a setting holds suits what a parameter takes. */
export interface ValueFit {
  /** 0: it can't be. About 1 otherwise. */
  readonly factor: number;
  /** Whether a sure proposal may rest on it. */
  readonly mayBeSure: boolean;
  /** Ends no sentence; empty where nothing is to be said. Most are never asked for. */
  readonly reason: () => string;
}

const noReason = () => '';
const no: ValueFit = { factor: 0, mayBeSure: false, reason: noReason };
const plain: ValueFit = { factor: 1, mayBeSure: true, reason: noReason };

/** Kinds of parameters that a value of each look can be of. A word is never a quantity. */
export const kindsFor: Readonly<Record<LearnedLook, readonly string[]>> = {
  number: ['quantity', 'count', 'range', 'curve', 'place', 'flag', 'word', 'words'],
  flag: ['flag', 'word', 'words'],
  word: ['word', 'words', 'text', 'quantity', 'count'],
  words: ['word', 'words', 'text', 'count'],
  text: ['text', 'word', 'words'],
  list: ['words', 'range', 'place', 'curve'],
};

export function fitOf(target: KnownTarget, asked: AskedSetting, catalog: Catalog): ValueFit {
  const { look } = asked.setting;
  const { kind } = target.known.parameter;
  if (!kindsFor[look].includes(kind)) return no;
  if (kind === 'words' && wordOfPart(target.part) !== null) return wordPartFit(target, asked);
  switch (look) {
    case 'number':
      return numberFit(target, asked);
    case 'list':
      return target.part === null ? listFit(kind, asked.setting.value) : no;
    case 'flag':
      if (kind === 'words') return no;
      return kind === 'flag' ? plain : wordFit(target, asked, catalog, 0.7);
    case 'text':
      return kind === 'text' ? plain : wordFit(target, asked, catalog, 0.7);
    default:
      return wordFit(target, asked, catalog, 1);
  }
}

const ofTwo: ReadonlySet<string> = new Set(['range', 'place']);

/** Two values are a range or a place; of more, such as a channel with its range, only some are. */
function listFit(kind: string, value: string): ValueFit {
  const look = lookOf(value);
  const count = look.kind === 'list' || look.kind === 'tuple' ? look.items.length : 0;
  return ofTwo.has(kind) && count !== 2
    ? { factor: 0.9, mayBeSure: false, reason: () => `${count} values stand in it` }
    : plain;
}

/** Whether a list has a word is on or off; where it stands in it is a number from 1, or an output by its name. */
function wordPartFit({ part, known }: KnownTarget, { setting }: AskedSetting): ValueFit {
  const { look, number, value } = setting;
  const isNumbered = typeof part === 'object' && part !== null && 'numberOf' in part;
  const most = known.parameter.kind === 'words' ? known.parameter.most : 0;
  const isFitting = isNumbered
    ? /\d$/.test(value) && (Number.isNaN(number) || (number >= 0 && number <= most))
    : look === 'flag' || value === '0' || value === '1';
  const factor = look === 'flag' || isNumbered ? 0.9 : 0.8;
  return isFitting ? { factor, mayBeSure: false, reason: noReason } : no;
}

function numberFit(target: KnownTarget, asked: AskedSetting): ValueFit {
  const { parameter } = target.known;
  const { value, stated } = asked.setting;
  if (parameter.kind === 'flag') {
    const isOneOrNone = value === '0' || value === '1';
    return isOneOrNone && (stated?.range?.high ?? '1') === '1' ? { ...plain, factor: 0.97 } : no;
  }
  // So may the entries of a list, in settings that are numbered.
  const isEntry = parameter.kind === 'words' && asked.ownNumbers > 0;
  // A number may stand for a word by its place in a list that only the board's author has.
  if (parameter.kind === 'word' || parameter.kind === 'words')
    return stated?.words === null || stated === null
      ? { factor: isEntry ? 0.85 : 0.6, mayBeSure: false, reason: noReason }
      : no;
  // Ends of a range and halves of a place stand in settings of their own; a whole one is no single number.
  if (parameter.kind === 'range' && target.part === null) return no;
  if (parameter.kind === 'place' && target.part === null)
    return { factor: 0.7, mayBeSure: false, reason: noReason };
  return unitFit(target, asked) ?? rangeFit(target, asked);
}

/** What the unit says against it; null where it says nothing. */
function unitFit({ known }: KnownTarget, { unit, setting }: AskedSetting): ValueFit | null {
  if (unit === '' || !isUnit(unit) || measureOf(known, unit) !== null) return null;
  const rate = overOne(known, unit, setting.number);
  if (rate !== null && known.usual !== undefined && liesWithin(known.usual, rate))
    return { factor: 0.95, mayBeSure: false, reason: () => `one over ${setting.value} ${unit} is usual` };
  return { factor: 0.45, mayBeSure: false, reason: () => `${unit} is no unit of it` };
}

/** What a number in the board's unit is multiplied by to be in the parameter's; null where it is no such unit. */
function measureOf({ dimensionName, unit: own }: KnownParameter, unit: string): number | null {
  const counted = dimensionName === undefined ? null : countedIn(unit, dimensionName, own ?? '');
  return counted === null ? null : unitOf(counted.unit).factor / counted.scale / unitOf(own ?? '').factor;
}

/** A rate that is shown by its period, or a time by how often it comes, in SI; null where the unit is of neither. */
function overOne({ dimensionName }: KnownParameter, unit: string, number: number): number | null {
  const other = reciprocalOf(dimensionName);
  const counted = other === null ? null : countedIn(unit, other, '');
  return counted === null || counted.unit === '' || !(number > 0)
    ? null
    : counted.scale / (number * unitOf(counted.unit).factor);
}

/** Boards count in tenths, hundredths or thousandths, or in larger units. */
const scales = [1, 10, 100, 1000, 0.1, 0.01, 0.001, 10_000, 1e6];

function rangeFit({ known }: KnownTarget, { setting, unit }: AskedSetting): ValueFit {
  const { number, value } = setting;
  const { range, usual } = known;
  if (range === undefined || Number.isNaN(number)) return plain;
  const text = known.unit ?? '';
  const own = text === '' ? null : unitOf(text);
  const inUnit = (base: number) => (own === null ? base : fromBase(base, own));
  const within = (span: Interval | undefined, one: number) =>
    span !== undefined && one >= inUnit(span.low) - 1e-9 && one <= inUnit(span.high) + 1e-9;
  if (goesBelow(setting, range))
    return { factor: 0.8, mayBeSure: false, reason: () => 'it may be less than nothing' };
  const reading = readingOf(known, setting, inUnit);
  const measure = reading !== null || unit === '' ? null : measureOf(known, unit);
  const measured = reading ?? number * (measure ?? 1);
  const span = () =>
    `${plainNumber(inUnit(range.low))} to ${plainNumber(inUnit(range.high))}${text === '' ? '' : ` ${text}`}`;
  if (within(usual, measured))
    return { factor: 1.02, mayBeSure: true, reason: () => `${value} is usual within ${span()}` };
  if (within(range, measured))
    return { factor: 1.01, mayBeSure: true, reason: () => `${value} lies in ${span()}` };
  if (known.parameter.kind === 'count' || measure !== null)
    return { factor: 0.7, mayBeSure: false, reason: () => `${value} lies outside ${span()}` };
  const isScaled = scales.some((scale) => within(range, number / scale));
  return isScaled
    ? { factor: 1, mayBeSure: true, reason: () => `${value} lies in ${span()} if it is scaled` }
    : { factor: 0.8, mayBeSure: false, reason: () => `${value} lies outside ${span()}` };
}

/** What the listing says that a value comes to, in the parameter's unit: `1500 (1.5 kHz)`. */
function readingOf(
  { dimensionName, unit: own }: KnownParameter,
  { stated }: AskedSetting['setting'],
  inUnit: (base: number) => number,
): number | null {
  const look = lookOf(stated?.remark ?? '');
  const unit = look.kind === 'measure' ? unitNamed(look.unit, dimensionName ?? '') : null;
  return look.kind === 'measure' && unit !== null && own !== undefined
    ? inUnit(toBase(look.number.value, unitOf(unit)))
    : null;
}

/** Whether the listing lets a setting be less than nothing, which its parameter never is. */
function goesBelow({ stated }: AskedSetting['setting'], { low }: Interval): boolean {
  return low >= 0 && /^[-\u2212]\s?[1-9]/.test(stated?.range?.low ?? '');
}

function wordFit(target: KnownTarget, asked: AskedSetting, catalog: Catalog, otherwise: number): ValueFit {
  const { setting } = asked;
  const { value, stated } = setting;
  const { parameter } = target.known;
  if (parameter.kind === 'text')
    return stated?.words == null ? { ...plain, factor: 0.97 } : { ...no, factor: 0.5 };
  const words = choiceWords(target, catalog);
  const said = stated?.words ?? [value];
  const isNumber = parameter.kind === 'quantity' || parameter.kind === 'count';
  const alike = said.filter((word) => words.isOne(word));
  // Words with numbers between them are several values.
  if (
    setting.look === 'words' &&
    stated?.words == null &&
    /(?:^|\s)-?\d+(?:\s|$)/.test(value) &&
    alike.length === 0
  )
    return { factor: 0.6 * otherwise, mayBeSure: false, reason: noReason };
  if (isNamedNumber(value, parameter))
    return { factor: 1.06, mayBeSure: true, reason: () => `${value} names one of its numbers` };
  // Only a word that stands in place of a number, such as `auto`, may be one.
  if (isNumber)
    return alike.length > 0 && stated?.words == null ? { ...plain, mayBeSure: false, factor: 0.9 } : no;
  if (alike.length > 0)
    return { factor: 1.06, mayBeSure: true, reason: () => `${alike[0] ?? value} is like one of its words` };
  if (words.isOpen || nameWords(value).length === 0) return { ...plain, factor: 0.95 * otherwise };
  return { factor: (said.length > 2 ? 0.75 : 0.9) * otherwise, mayBeSure: said.length < 3, reason: noReason };
}
