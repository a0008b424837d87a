import { formsOf, type LineFormData } from '../forms/compiled';
import { partsOfLine } from '../forms/parts-of-line';
import { isPresenceName } from '../forms/presence-name';
import { attributesIn } from './attributes';
import { isSurelyHeading } from './headings';
import { bestForm, type TriedForm } from './line-form';
import { presenceIn } from './presence';
import type { Sample } from './sample';
import { countedAmong, holdsSeveral } from './several';

const leastCoverage = 0.2;

/** Forms of settings lines, and what is known to stand beside their values. */
export interface MainForms {
  readonly forms: readonly LineFormData[];
  readonly beside: readonly string[];
  /** Whether keys before both say which is the name and which the value. */
  readonly isKeyed: boolean;
}

/** The form of most settings lines, and that of bare and negated names. */
export function lineFormsIn(sample: readonly Sample[], comments: readonly string[]): MainForms {
  const presence = presenceIn(sample);
  const lines = sample.filter(({ text, index }) => !(presence?.lines.has(index) || isSurelyHeading(text)));
  const valued = lines.length === 0 && presence === null ? sample : lines;
  const attributes = attributesIn(valued);
  if (attributes !== null) return { forms: [attributes.form], beside: attributes.beside, isKeyed: true };
  const main = bestForm(valued, comments);
  const isEnough = main !== null && main.read.size >= leastCoverage * valued.length;
  return {
    forms: [...(isEnough ? [main.form] : []), ...(presence === null ? [] : [presence.form])],
    beside: [],
    isKeyed: false,
  };
}

const mostForms = 6;

/** These forms, and more of them for the lines that they do not read, or not well. */
export function moreFormsIn(
  sample: readonly Sample[],
  main: readonly LineFormData[],
  comments: readonly string[],
): readonly LineFormData[] {
  const found = [...colonForm(sample, main), ...main];
  const torn = tornForm(sample, found, comments);
  if (torn !== null) found.unshift(torn);
  let rest = unread(sample, found);
  while (found.length < mostForms && found.length > 0 && rest.length > 0) {
    const next = bestForm(rest, comments, found);
    const hasBetween = found.some(({ between }) => between !== undefined);
    if (next === null || !isSure(next, rest, hasBetween)) break;
    found.push(next.form);
    const left = unread(rest, found);
    if (left.length === rest.length) break;
    rest = left;
  }
  return inOrder([...found, ...bareNames(sample, rest, found)]);
}

const leastColons = 2;

/** Names before a colon, where most names have none behind them: else it would be a part of these. */
function colonForm(sample: readonly Sample[], main: readonly LineFormData[]): readonly LineFormData[] {
  const [only] = main;
  if (only === undefined || main.length > 1 || only.between !== undefined) return [];
  const forms = formsOf(main);
  if (forms.lines[0]?.isLoose !== true) return [];
  const form: LineFormData = { form: '{name}: {value}' };
  const [loose, marked] = [forms, formsOf([form])].map((some) =>
    sample.map(({ text }) => partsOfLine(some, text)[0]?.name.end ?? null),
  );
  const isColon = sample.map(({ text }, at) => text[(loose?.[at] ?? 0) - 1] === ':');
  const colons = isColon.filter((one) => one).length;
  const isOnly = sample.every((_, at) => isColon[at] === true || marked?.[at] === null);
  return colons >= leastColons && isOnly ? [form] : [];
}

/** So many settings must stand in lines that hold several, where few lines do. */
const leastTorn = 3;

/** The form of the few lines that hold several settings, where most lines hold one and these are read as one as well. */
function tornForm(
  sample: readonly Sample[],
  main: readonly LineFormData[],
  comments: readonly string[],
): LineFormData | null {
  if (main.length === 0 || main.some(({ between }) => between !== undefined)) return null;
  for (const literal of ['=', ':', ' '] as const) {
    const several = sample.filter(({ text }) => holdsSeveral(text, literal));
    const counted = new Set(literal === ' ' ? countedAmong(several) : []);
    const torn = several.filter((line) => !counted.has(line));
    const next = torn.length === 0 || 2 * torn.length > sample.length ? null : bestForm(torn, comments);
    if (next === null || next.form.between === undefined) continue;
    const { read, form } = next;
    const count = [...read.values()].reduce((sum, { length }) => sum + length, 0);
    const areWhole = torn.every(({ index }) => (read.get(index)?.length ?? 0) > 1);
    const own = new Set(torn.map(({ index }) => index));
    const forms = formsOf([form]);
    const isOnly = sample.every(({ index, text }) => own.has(index) || partsOfLine(forms, text).length < 2);
    if (areWhole && count >= leastTorn && isOnly) return form;
  }
  return null;
}

function unread(sample: readonly Sample[], forms: readonly LineFormData[]): readonly Sample[] {
  const compiledForms = formsOf(forms);
  return sample.filter(({ text }) => partsOfLine(compiledForms, text).length === 0);
}

const leastQuality = 0.8;
const leastQualityOfGap = 0.88;
/** Where marks part settings in a line, what stands between them is one for sure. */
const leastQualityBetween = 0.7;

/** Whether a form is one of the listing, though only few lines have it. */
function isSure({ form, qualities }: TriedForm, rest: readonly Sample[], hasBetween: boolean): boolean {
  const good = [...qualities.values()].filter((quality) => quality >= leastQuality).length;
  const isGap = /\{name\}\s+\{value\}/.test(form.form);
  // Of few lines only those with the marks that all use are settings for sure.
  const isUsual = /\}\s?(?::?=|:|[-=~]>|<[-=])\s?\{/.test(form.form);
  if (!isGap) return good >= (isUsual ? 1 : 3) && 2 * good >= qualities.size;
  const least = hasBetween ? leastQualityBetween : leastQualityOfGap;
  const best = [...qualities.values()].filter((quality) => quality >= least).length;
  return best >= (hasBetween ? 1 : 3) && 3 * best >= 2 * rest.length;
}

/** Names that stand alone in lines where others have values; several of them where settings stand around the line. */
function bareNames(
  sample: readonly Sample[],
  rest: readonly Sample[],
  found: readonly LineFormData[],
): readonly LineFormData[] {
  const own = found.find(({ form }) => form === '{name}');
  if (found.length === 0 || own?.between !== undefined) return [];
  const unreadable = new Set(rest.map(({ index }) => index));
  const first = sample.find(({ index }) => !unreadable.has(index))?.index ?? 0;
  const last = sample.at(-1)?.index ?? 0;
  const isSeveral = rest.some(
    ({ text, index }) => areBareNames(text) && ((index > first && index < last) || areIdentifiers(text)),
  );
  const isOne = own === undefined && rest.some(({ text }) => isPresenceName(text));
  if (isSeveral)
    return [
      { form: '{name}', ...(own?.negation === undefined ? {} : { negation: own.negation }), between: ' ' },
    ];
  if (isOne) return [{ form: '{name}' }];
  // What ends lines with values ends those of names as well.
  const end = found.map(({ form }) => /\{value\}([;,])$/.exec(form)?.[1]).find((one) => one !== undefined);
  const isEnded = ({ text }: Sample) => text.endsWith(end ?? ' ') && isPresenceName(text.slice(0, -1));
  return own === undefined && end !== undefined && rest.some(isEnded) ? [{ form: `{name}${end}` }] : [];
}

/** Names that no sentence has: with digits, marks or capitals in them. */
function areIdentifiers(text: string): boolean {
  return text.split(/\s+/).every((word) => /[\d_@]|\p{L}-\p{L}|\p{Ll}\p{Lu}/u.test(word));
}

const mostBareNames = 16;

function areBareNames(text: string): boolean {
  const words = text.split(/\s+/);
  return words.length > 1 && words.length <= mostBareNames && words.every(isPresenceName);
}

/** Forms with a mark first: what only blanks part is looked for in what is left. */
function inOrder(forms: readonly LineFormData[]): readonly LineFormData[] {
  const rank = ({ form }: LineFormData) =>
    !form.includes('{value}') ? 2 : /\{name\}\s+\{value\}/.test(form) ? 1 : 0;
  return [...forms].sort((one, other) => rank(one) - rank(other));
}
