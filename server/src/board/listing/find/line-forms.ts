import { formsOf, type LineFormData } from '../forms/compiled';
import { partsOfLine } from '../forms/parts-of-line';
import { isPresenceName } from '../forms/read-part';
import { attributesIn } from './attributes';
import { isSurelyHeading } from './headings';
import { bestForm, type Tried } from './line-form';
import { presenceIn } from './presence';
import type { Sample } from './sample';

const leastCoverage = 0.2;

/** Forms of settings lines, and what is known to stand beside their values. */
export interface MainForms {
  readonly forms: readonly LineFormData[];
  readonly beside: readonly string[];
}

/** The form of most settings lines, and that of bare and negated names. */
export function lineFormsIn(sample: readonly Sample[], comments: readonly string[]): MainForms {
  const presence = presenceIn(sample);
  const lines = sample.filter(({ text, index }) => !(presence?.lines.has(index) || isSurelyHeading(text)));
  const valued = lines.length === 0 && presence === null ? sample : lines;
  const attributes = attributesIn(valued);
  if (attributes !== null) return { forms: [attributes.form], beside: attributes.beside };
  const main = bestForm(valued, comments);
  const isEnough = main !== null && main.read.size >= leastCoverage * valued.length;
  return {
    forms: [...(isEnough ? groupedForms(main) : []), ...(presence === null ? [] : [presence.form])],
    beside: [],
  };
}

/** Where lines hold several settings behind their group, `mast: tilt = 5; spin = 6`, with and without the group. */
function groupedForms({ form, read, texts }: Tried): readonly LineFormData[] {
  if (form.between === undefined) return [form];
  const isGrouped = [...read].every(([index, parts]) =>
    parts.every(({ name }, at) => {
      const text = texts.get(index)?.slice(name.start, name.end) ?? '';
      return /^[^:]+: \S/.test(text) === (at === 0);
    }),
  );
  return isGrouped && read.size > 1 ? [{ ...form, form: `{group}: ${form.form}` }, form] : [form];
}

const mostForms = 6;

/** These forms, and more of them for the lines that they do not read, or not well. */
export function moreFormsIn(
  sample: readonly Sample[],
  main: readonly LineFormData[],
  comments: readonly string[],
): readonly LineFormData[] {
  const found = [...main];
  let rest = unread(sample, found);
  while (found.length < mostForms && found.length > 0 && rest.length > 0) {
    const next = bestForm(rest, comments, found);
    if (next === null || !isSure(next, rest)) break;
    found.push(next.form);
    const left = unread(rest, found);
    if (left.length === rest.length) break;
    rest = left;
  }
  return inOrder([...found, ...bareNames(rest, found)]);
}

function unread(sample: readonly Sample[], forms: readonly LineFormData[]): readonly Sample[] {
  const compiledForms = formsOf(forms);
  return sample.filter(({ text }) => partsOfLine(compiledForms, text).length === 0);
}

const leastQuality = 0.8;
const leastQualityOfGap = 0.88;

/** Whether a form is one of the listing, though only few lines have it. */
function isSure({ form, qualities }: Tried, rest: readonly Sample[]): boolean {
  const good = [...qualities.values()].filter((quality) => quality >= leastQuality).length;
  const isGap = /\{name\}\s+\{value\}/.test(form.form);
  if (!isGap) return good > 0 && 2 * good >= qualities.size;
  const best = [...qualities.values()].filter((quality) => quality >= leastQualityOfGap).length;
  const least = form.between === undefined ? 3 : 1;
  return best >= least && 3 * best >= 2 * rest.length;
}

/** Names that stand alone in lines where others have values. */
function bareNames(rest: readonly Sample[], found: readonly LineFormData[]): readonly LineFormData[] {
  if (found.length === 0 || found.some(({ form }) => form === '{name}')) return [];
  return rest.some(({ text }) => isPresenceName(text)) ? [{ form: '{name}' }] : [];
}

/** Forms with a mark first: what only blanks part is looked for in what is left. */
function inOrder(forms: readonly LineFormData[]): readonly LineFormData[] {
  const rank = ({ form }: LineFormData) =>
    !form.includes('{value}') ? 2 : /\{name\}\s+\{value\}/.test(form) ? 1 : 0;
  return [...forms].sort((one, other) => rank(one) - rank(other));
}
