import { formsOf, type LineFormData } from '../forms/compiled';
import { partsOfLine } from '../forms/parts-of-line';
import { isSurelyValue, type PartRead } from '../forms/read-part';
import { type Beside, besideOf } from '../forms/tail';
import { templateOf } from '../forms/template';
import { closing } from '../text/characters';
import { besideIn } from './beside';
import { type Decoration, decorationsOf } from './decoration';
import { pairQuality } from './quality';
import type { Sample } from './sample';
import { type Separator, separatorsIn } from './separators';

/** A form of settings lines that was tried on lines. */
export interface Tried {
  readonly form: LineFormData;
  /** How well it reads the lines: 0 to 1. */
  readonly score: number;
  /** What it reads, by the index of the line. */
  readonly read: ReadonlyMap<number, readonly PartRead[]>;
  /** The lines that it reads, by their index. */
  readonly texts: ReadonlyMap<number, string>;
  /** How well it reads each line. */
  readonly qualities: ReadonlyMap<number, number>;
}

/** The form that reads the lines best; null where none reads anything well. */
export function bestForm(
  sample: readonly Sample[],
  comments: readonly string[],
  main: readonly LineFormData[] = [],
): Tried | null {
  const few = thinned(sample);
  const besides = roughBesides(sample, comments);
  const all = candidates(sample, main).map((candidate) => ({
    candidate,
    score: tryForm(candidate, besides, few).score,
  }));
  const finalists = all.sort((one, other) => other.score - one.score).slice(0, mostFinalists);
  let best: Tried | null = null;
  for (const { candidate } of finalists) {
    const tried = tryForm(candidate, besides, sample);
    if (best === null || tried.score > best.score) best = tried;
  }
  return best !== null && best.read.size > 0 ? best : null;
}

/** What stands beside values, seen from behind the first word of each line. */
function roughBesides(sample: readonly Sample[], comments: readonly string[]): readonly Beside[] {
  const rests = sample.map(({ text }) => text.replace(/^\S+\s*/, ''));
  return besideIn(rests, comments, '.').flatMap((template) => besideOf(templateOf(template)) ?? []);
}

const mostTried = 150;
const mostFinalists = 4;

/** Few lines from everywhere: which forms can be best shows in them. */
function thinned(sample: readonly Sample[]): readonly Sample[] {
  const step = Math.ceil(sample.length / mostTried);
  return step <= 1 ? sample : sample.filter((_, at) => at % step === 0);
}

interface Candidate {
  readonly form: LineFormData;
  readonly strength: number;
}

function candidates(sample: readonly Sample[], main: readonly LineFormData[]): readonly Candidate[] {
  const separators = separatorsIn(sample);
  const betweens = [...new Set(main.flatMap(({ between }) => between ?? []))];
  const all: Candidate[] = decorationsOf(sample).flatMap((decoration) =>
    separators.flatMap((separator) => formsWith(separator, decoration, sample, betweens)),
  );
  if (main.length === 0) all.push(...enclosedForms(sample));
  // Values stand before names in all lines of a listing, or in none.
  return main.length === 0 ? all : all.filter(({ form }) => !isTurned(form));
}

const shareOfEnclosed = 0.8;

/** `gain(5)`, `gain <5>`: forms with values in brackets, where most lines end with one that opens behind a name. */
function enclosedForms(sample: readonly Sample[]): readonly Candidate[] {
  return [...closing].flatMap(([open, close]) => {
    const enclosed = sample.filter(({ text }) => text.endsWith(close) && opensBehindName(text, open));
    if (enclosed.length < shareOfEnclosed * sample.length) return [];
    const isApart = enclosed.every(({ text }) => text.includes(` ${open}`));
    return [{ form: { form: `{name}${isApart ? ' ' : ''}${open}{value}${close}` }, strength: 1 }];
  });
}

/** Whether nothing that parts names from values stands before a bracket. */
function opensBehindName(text: string, open: string): boolean {
  const at = text.indexOf(open);
  return at > 0 && !/[=:|\t]/.test(text.slice(0, at));
}

/** Where names end that only blanks part from their values: of those that read equally well, the first. */
const nameEnds = [
  ['word', 1],
  ['before-value', 0.995],
  ['words', 0.99],
] as const;

const swapped = 0.9;
/** How much more it is believed where it is sure. */
const sureTurn = 1.15;
const shareOfOdd = 0.3;
const threefold = 0.98;
const shareOfThrees = 0.8;

/** Whether a mark parts most lines into three: a group, a name, a value. */
function isInThrees(literal: string, sample: readonly Sample[]): boolean {
  if (literal === ' ') return false;
  const threes = sample.filter(({ text }) => text.split(literal).length === 3).length;
  return threes >= shareOfThrees * sample.length;
}

/** How much less a form with a number or a mark before each name is believed than one without. */
const decorated = 0.99;

function formsWith(
  { literal, strength }: Separator,
  { prefix, suffix }: Decoration,
  sample: readonly Sample[],
  betweens: readonly string[],
): readonly Candidate[] {
  const form = `${prefix}{name}${literal}{value}${suffix}`;
  const own = prefix === '' ? strength : strength * decorated;
  const plain: readonly Candidate[] =
    literal === ' '
      ? nameEnds.map(([names, belief]) => ({ form: { form, names }, strength: own * belief }))
      : [{ form: { form }, strength: own }];
  const marks = [...new Set([...betweens, ...betweensOf(literal, sample)])];
  const several = plain.flatMap(({ form: single }) =>
    marks.map((between) => ({
      form: { ...single, form: `${prefix}{name}${literal}{value}`, between },
      strength: own,
    })),
  );
  const grouped = isInThrees(literal, sample)
    ? [
        {
          form: { form: `${prefix}{group}${literal}{name}${literal}{value}${suffix}` },
          strength: own * threefold,
        },
      ]
    : [];
  const turned = { form: { form: `${prefix}{value}${literal}{name}${suffix}` }, strength: own * swapped };
  return [...plain, ...several, ...grouped, ...(literal === ' ' || literal === '\t' ? [] : [turned])];
}

/** What may stand between several settings of a line. */
const marksBetween = [';', '|', ',', '\t', '  ', ' '] as const;
const shareOfSeveral = 0.3;

function betweensOf(literal: string, sample: readonly Sample[]): readonly string[] {
  const core = literal.trim();
  if (core === '') return [];
  const several = sample.filter(({ text }) => {
    const first = text.indexOf(core, 1);
    return first > 0 && text.indexOf(core, first + core.length) > 0;
  });
  if (several.length === 0 || several.length < shareOfSeveral * sample.length) return [];
  return marksBetween.filter(
    (mark) =>
      mark !== core &&
      !(mark === ' ' && literal !== core) &&
      several.filter(({ text }) => text.includes(mark)).length >= shareOfSeveral * several.length,
  );
}

function tryForm(
  { form, strength }: Candidate,
  besides: readonly Beside[],
  sample: readonly Sample[],
): Tried {
  const forms = { ...formsOf([form]), besides };
  const core = templateOf(form.form).literals[1]?.pieces[0];
  const separator = core?.kind === 'text' ? core.text : null;
  const read = new Map<number, readonly PartRead[]>();
  const texts = new Map<number, string>();
  const qualities = new Map<number, number>();
  const names = new Set<string>();
  let [sum, count] = [0, 0];
  for (const { index, text } of sample) {
    const parts = partsOfLine(forms, text);
    if (parts.length === 0) continue;
    read.set(index, parts);
    texts.set(index, text);
    count += parts.length;
    let quality = 0;
    for (const { name, value } of parts) {
      const [called, holds] = [text.slice(name.start, name.end), text.slice(value.start, value.end)];
      names.add(called);
      const again = separator !== null && holds.includes(separator) ? 0.75 : 1;
      quality += pairQuality(called, holds) * again;
    }
    sum += quality / parts.length;
    qualities.set(index, quality / parts.length);
  }
  const distinct = count === 0 ? 0 : names.size / count;
  // Names that come again say little of where a name ends.
  const least = 0.5;
  const turn = !isTurned(form) ? 1 : holdsValuesFirst(sample, read) ? sureTurn : 0.5;
  return {
    form,
    read,
    texts,
    qualities,
    score: (sum / Math.max(1, sample.length)) * strength * (least + (1 - least) * distinct) * turn,
  };
}

function isTurned({ form }: LineFormData): boolean {
  return form.indexOf('{value}') < form.indexOf('{name}');
}

/** Values that stand before their names are told by what can be no name, while each name can be no value. */
function holdsValuesFirst(
  sample: readonly Sample[],
  read: ReadonlyMap<number, readonly PartRead[]>,
): boolean {
  const values: string[] = [];
  const names: string[] = [];
  for (const { index, text } of sample) {
    for (const { name, value } of read.get(index) ?? []) {
      values.push(text.slice(value.start, value.end));
      names.push(text.slice(name.start, name.end));
    }
  }
  const sure = values.filter(isSureOfValue).length;
  // Whole numbers may be names.
  const odd = values.filter((value) => isSureOfValue(value) && !/^\d+$/.test(value)).length;
  return sure >= 0.5 * values.length && odd >= shareOfOdd * values.length && !names.some(isSureOfValue);
}

function isSureOfValue(text: string): boolean {
  return text !== '' && isSurelyValue(text.split(/\s/)[0] ?? '', '.');
}
