import { type BesideForm, besideOf } from '../forms/beside-form';
import { formsOf, type LineFormData } from '../forms/compiled';
import { partsOfLine } from '../forms/parts-of-line';
import { isSurelyValue, type PartRead } from '../forms/read-part';
import { templateOf } from '../forms/template';
import { besideForms } from './beside';
import { type Decoration, decorationsOf } from './decoration';
import { pairQuality } from './quality';
import type { Sample } from './sample';
import { type Separator, separatorsIn } from './separators';
import { betweensOf, leadMarks, leadsOfSeveral, severalIn, shareOfLead } from './several';

/** A form of settings lines that was tried on lines. */
export interface TriedForm {
  readonly form: LineFormData;
  /** How well it reads the lines: 0 to 1. */
  readonly score: number;
  /** What it reads, by the index of the line. */
  readonly read: ReadonlyMap<number, readonly PartRead[]>;
  /** How well it reads each line. */
  readonly qualities: ReadonlyMap<number, number>;
}

/** The form that reads the lines best; null where none reads anything well. */
export function bestForm(
  sample: readonly Sample[],
  comments: readonly string[],
  main: readonly LineFormData[] = [],
): TriedForm | null {
  const few = thinned(sample);
  const besides = roughBesides(sample, comments);
  const all = candidates(sample, main).map((candidate) => ({
    candidate,
    score: tryForm(candidate, besides, few).score,
  }));
  const finalists = all.sort((one, other) => other.score - one.score).slice(0, mostFinalists);
  let best: TriedForm | null = null;
  for (const { candidate } of finalists) {
    const tried = tryForm(candidate, besides, sample);
    if (best === null || tried.score > best.score) best = tried;
  }
  return best !== null && best.read.size > 0 ? best : null;
}

/** What stands beside values, seen from behind the first word of each line. */
function roughBesides(sample: readonly Sample[], comments: readonly string[]): readonly BesideForm[] {
  const rests = sample.map(({ text }) => text.replace(/^\S+\s*/, ''));
  return besideForms(rests, comments, '.').flatMap((template) => besideOf(templateOf(template)) ?? []);
}

const mostTried = 150;
const mostFinalists = 4;

/** Few lines from everywhere: which forms can be best shows in them. */
function thinned(sample: readonly Sample[]): readonly Sample[] {
  const step = Math.ceil(sample.length / mostTried);
  return step <= 1 ? sample : sample.filter((_, at) => at % step === 0);
}

interface CandidateForm {
  readonly form: LineFormData;
  readonly strength: number;
}

function candidates(sample: readonly Sample[], main: readonly LineFormData[]): readonly CandidateForm[] {
  const separators = separatorsIn(sample).map((one) => ({ ...one, several: severalIn(one.literal, sample) }));
  const betweens = [...new Set(main.flatMap(({ between }) => between ?? []))];
  const all = decorationsOf(sample).flatMap((decoration) =>
    separators.flatMap((separator) => formsWith(separator, decoration, sample, betweens)),
  );
  // Values stand before names in all lines of a listing, or in none.
  return main.length === 0 ? all : all.filter(({ form }) => !isTurned(form));
}

/** Where names end that only blanks part from their values: of those that read equally well, the first. */
const nameEnds = [
  ['word', 1],
  ['before-value', 0.995],
  ['words', 0.99],
] as const;

/** How much names and values in turn are believed, with nothing but blanks between them. */
const surePairs = 0.9;
const swapped = 0.9;
/** How much more it is believed where it shows. */
const sureTurn = 1.15;
/** How much less a form with a number or a mark before each name is believed than one without. */
const decorated = 0.99;

/** What may part names from values, and the lines that hold several settings with it. */
interface Parting extends Separator {
  readonly several: readonly Sample[];
}

function formsWith(
  { literal, strength, suffix: own = '', several }: Parting,
  { prefix, suffix: last }: Decoration,
  sample: readonly Sample[],
  betweens: readonly string[],
): readonly CandidateForm[] {
  const suffix = own + last;
  const form = `${prefix}{name}${literal}{value}${suffix}`;
  const belief = prefix === '' ? strength : strength * decorated;
  const plain: readonly CandidateForm[] =
    literal === ' '
      ? nameEnds.map(([names, share]) => ({ form: { form, names }, strength: belief * share }))
      : [{ form: { form }, strength: belief }];
  const marks = [...new Set([...betweens, ...betweensOf(literal, several)])];
  const leads = prefix === '' ? ['', ...leadsOfSeveral(literal, several)] : [''];
  const parted = leads.flatMap((lead) =>
    marks.map((between) => ({
      form: { form: `${prefix}${lead}{name}${literal}{value}`, between },
      strength: literal === ' ' ? surePairs : belief,
    })),
  );
  const led = (prefix === '' ? leadsIn(sample, literal) : [])
    // What may part a path is found as one, in however many steps.
    .filter((lead) => lead !== '{group} > ')
    .map((lead) => ({ form: { form: `${lead}{name}${literal}{value}${suffix}` }, strength: belief }));
  const turned = { form: { form: `${prefix}{value}${literal}{name}${suffix}` }, strength: belief * swapped };
  return [...plain, ...parted, ...led, ...(literal === ' ' || literal === '\t' ? [] : [turned])];
}

function leadsIn(sample: readonly Sample[], literal: string): readonly string[] {
  const core = literal.trim();
  if (core === '') return [];
  return leadMarks
    .filter((mark) => {
      const led = sample.filter(({ text }) => {
        const at = text.indexOf(mark);
        return at > 0 && text.indexOf(core) > at;
      });
      return led.length >= shareOfLead * sample.length;
    })
    .map((mark) => `{group}${mark}`);
}

function tryForm(
  { form, strength }: CandidateForm,
  besides: readonly BesideForm[],
  sample: readonly Sample[],
): TriedForm {
  const forms = { ...formsOf([form]), besides };
  const { literals, fields } = templateOf(form.form);
  const core = literals[Math.max(fields.indexOf('name'), fields.indexOf('value'))]?.pieces[0];
  const separator = core?.kind === 'text' ? core.text : null;
  const read = new Map<number, readonly PartRead[]>();
  const qualities = new Map<number, number>();
  const names = new Set<string>();
  let [sum, count] = [0, 0];
  for (const { index, text } of sample) {
    const parts = partsOfLine(forms, text);
    if (parts.length === 0) continue;
    read.set(index, parts);
    count += parts.length;
    let quality = 0;
    for (const { groups, name, value, isLoose } of parts) {
      const [called, holds] = [text.slice(name.start, name.end), text.slice(value.start, value.end)];
      names.add(JSON.stringify([...groups.map(({ start, end }) => text.slice(start, end)), called]));
      const again = separator !== null && holds.includes(separator) ? 0.75 : 1;
      const told = isLoose && isProse(holds) ? proseShare : 1;
      quality += pairQuality(called, holds) * again * told;
    }
    sum += quality / parts.length;
    qualities.set(index, quality / parts.length);
  }
  const distinct = count === 0 ? 0 : names.size / count;
  const turn = !isTurned(form) ? 1 : holdsValuesFirst(sample, read) ? sureTurn : 0.5;
  return {
    form,
    read,
    qualities,
    score:
      (sum / Math.max(1, sample.length)) * strength * (leastDistinct + (1 - leastDistinct) * distinct) * turn,
  };
}

/** Names come again in other groups, and as those of servers do. */
const leastDistinct = 0.5;

/** How much less words are believed to be a value that only a blank parts from its name: sentences look the same. */
const proseShare = 0.25;

function isProse(value: string): boolean {
  const words = value.split(/\s+/);
  return words.length > 2 && !words.some((word) => isSurelyValue(word, '.'));
}

function isTurned({ form }: LineFormData): boolean {
  return form.indexOf('{value}') < form.indexOf('{name}');
}

const shareOfValues = 0.6;
const shareOfOdd = 0.3;

/** Values stand before names where the one side is numbers, flags and quotes, and the other words that could be names. */
function holdsValuesFirst(
  sample: readonly Sample[],
  read: ReadonlyMap<number, readonly PartRead[]>,
): boolean {
  const values: string[] = [];
  const names: string[] = [];
  for (const { index, text } of sample) {
    for (const { name, rest } of read.get(index) ?? []) {
      values.push(text.slice(rest.start, rest.end));
      names.push(text.slice(name.start, name.end));
    }
  }
  const isName = (name: string) => /^[\p{L}_@]/u.test(name) && !isSurelyValue(name, '.');
  const isSure = (value: string) => value !== '' && isSurelyValue(value.split(/\s/)[0] ?? '', '.');
  const sure = values.filter(isSure).length;
  // Numbers that count, or name registers, are names themselves.
  const odd = values.filter((value) => isSure(value) && !/^\d+$/.test(value)).length;
  return names.every(isName) && sure >= shareOfValues * values.length && odd >= shareOfOdd * values.length;
}
