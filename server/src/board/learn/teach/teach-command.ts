import type { Forms } from '../../../catalog/model/board-forms';
import type { BoardText } from '../../../catalog/model/board-profile';
import { type Field, filled, templateOf } from '../../listing/forms/template';
import type { SettingKey, Stretch, Style } from '../../listing/listing';
import { isInWord, isLetterOrDigit } from '../../listing/text/characters';

/** A setting that an example may be about. */
export interface Exemplary extends SettingKey {
  readonly value: string;
  readonly style: Style;
  readonly stated: { readonly unit: string | null } | null;
}

/** How a board is told one setting, as a profile keeps it. */
export type TaughtCommand =
  | { readonly kind: 'taught'; readonly command: Pick<BoardText, 'command' | 'commandPath'> }
  /** Sentences: why, and what to do. */
  | { readonly kind: 'refused'; readonly reason: string };

const longestExample = 400;

/**
 * The command form that an example shows: what a pilot would type to set one setting of the listing to the value that
 * it has there.
 */
export function teachCommand(given: string, settings: readonly Exemplary[], forms: Forms): TaughtCommand {
  const example = given.trim();
  if (example === '' || example.length > longestExample || /[\r\n]/.test(example))
    return refused(`An example is one line of at most ${longestExample} characters.`);
  const fits = bestFits(example, settings, forms);
  const [first, second] = fits;
  if (first === undefined) return refused(nothingFits(example, settings));
  if (second !== undefined)
    return refused(
      `The example fits ${named(first.setting)} and ${named(second.setting)}: type one for a setting whose name, group and value are its own.`,
    );
  const { setting } = first;
  if (!first.saysGroups && isElsewhere(setting, settings))
    return refused(
      `${setting.name} stands in several groups, and the example does not say which: type its group as well.`,
    );
  return { kind: 'taught', command: commandOf(first, example, forms) };
}

function refused(reason: string): TaughtCommand {
  return { kind: 'refused', reason };
}

/** A setting whose name and value, and groups perhaps, stand in the example. */
interface FittingSetting {
  readonly setting: Exemplary;
  readonly fields: readonly { readonly field: Field; readonly at: Stretch }[];
  readonly saysGroups: boolean;
  /** Between groups that lie in each other. */
  readonly joint: string | null;
  /** How much of the example the names are. */
  readonly length: number;
}

/** Those that the example names most of. */
function bestFits(example: string, settings: readonly Exemplary[], forms: Forms): readonly FittingSetting[] {
  const fits = settings.flatMap((setting) => fitOf(example, setting, forms) ?? []);
  const most = Math.max(...fits.map(({ length }) => length));
  return fits.filter(({ length }) => length === most);
}

function fitOf(example: string, setting: Exemplary, { path }: Forms): FittingSetting | null {
  const { groups, name, style } = setting;
  if (style.kind === 'presence' || !example.includes(name) || !example.includes(setting.value)) return null;
  const whole = path === undefined || groups.length === 0 ? null : [...groups, name].join(path);
  const inPath = whole === null ? null : placeOf(example, whole, []);
  if (inPath !== null) return fitWith(example, setting, inPath, null);
  for (const joint of groups.length > 1 ? joints : ['']) {
    const group = groups.length === 0 ? null : placeOf(example, groups.join(joint), []);
    if (group === null) continue;
    const at = placeOf(example, name, [group]);
    const fit = at === null ? null : fitWith(example, setting, at, group);
    if (fit !== null) return { ...fit, joint: groups.length > 1 ? joint : null };
  }
  const at = placeOf(example, name, []);
  const fit = at === null ? null : fitWith(example, setting, at, null);
  return fit === null ? null : { ...fit, saysGroups: groups.length === 0 };
}

const joints = ['/', '.', ' ', ':', '::', '-', '_', '>', ' > ', '|', '\\', '->', ', ', ','];

function fitWith(
  example: string,
  setting: Exemplary,
  name: Stretch,
  group: Stretch | null,
): FittingSetting | null {
  const taken = group === null ? [name] : [name, group];
  const value = placeOf(example, shown(setting), taken);
  if (value === null) return null;
  const unit = unitBehind(example, value, setting.stated?.unit ?? null);
  return {
    setting,
    fields: [
      { field: 'name', at: name },
      { field: 'value', at: value },
      ...(group === null ? [] : [{ field: 'group' as const, at: group }]),
      ...(unit === null ? [] : [{ field: 'unit' as const, at: unit }]),
    ],
    saysGroups: true,
    joint: null,
    length: taken.reduce((sum, { start, end }) => sum + end - start, 0),
  };
}

/** The unit that the listing states, where it stands right behind the value. */
function unitBehind(example: string, value: Stretch, unit: string | null): Stretch | null {
  if (unit === null) return null;
  const start = value.end + (example[value.end] === ' ' ? 1 : 0);
  const end = start + unit.length;
  return example.slice(start, end) === unit && !isLetterOrDigit(example[end]) ? { start, end } : null;
}

/** The last place of words that are no part of longer ones, outside of what is taken. */
function placeOf(example: string, words: string, taken: readonly Stretch[]): Stretch | null {
  if (words === '') return null;
  for (
    let at = example.lastIndexOf(words);
    at >= 0;
    at = at === 0 ? -1 : example.lastIndexOf(words, at - 1)
  ) {
    const place = { start: at, end: at + words.length };
    const isTaken = taken.some(({ start, end }) => place.start < end && place.end > start);
    if (!isTaken && !isInWord(example, words, at)) return place;
  }
  return null;
}

function commandOf(
  { setting, fields, joint }: FittingSetting,
  example: string,
  forms: Forms,
): Pick<BoardText, 'command' | 'commandPath'> {
  let template = '';
  let from = 0;
  for (const { field, at } of fields.toSorted((one, other) => one.at.start - other.at.start)) {
    template += `${example.slice(from, at.start)}{${field}}`;
    from = at.end;
  }
  template += example.slice(from);
  const isListed = forms.lines.some(({ form }) => shownBy(form) === shownBy(template));
  const isWhole = setting.groups.length === 0 || forms.path !== undefined;
  if (isListed && isWhole) return { command: 'same' };
  return joint === null || joint === (forms.path ?? '/')
    ? { command: template }
    : { command: template, commandPath: joint };
}

/** A line by a form, to see whether two forms are one; rows and gaps may differ in length. */
function shownBy(form: string): string {
  const values = new Map<Field, string>([
    ['name', 'n'],
    ['value', 'v'],
    ['group', 'g'],
    ['unit', ''],
  ]);
  const characters = [...filled(templateOf(form), values).trim().replace(/\s+/g, ' ')];
  const isMore = (one: string, at: number) =>
    !isLetterOrDigit(one) &&
    characters.slice(Math.max(0, at - 3), at).filter((own) => own === one).length === 3;
  return characters.filter((one, at) => !isMore(one, at)).join('');
}

function isElsewhere({ groups, name }: Exemplary, settings: readonly Exemplary[]): boolean {
  const own = JSON.stringify(groups);
  return settings.some((other) => other.name === name && JSON.stringify(other.groups) !== own);
}

/** The setting that the example names, if it names one: then its value is another. */
function nothingFits(example: string, settings: readonly Exemplary[]): string {
  const [meant] = settings
    .filter(({ name, style }) => style.kind !== 'presence' && placeOf(example, name, []) !== null)
    .toSorted((one, other) => other.name.length - one.name.length);
  const [some] = settings.filter(({ value, style }) => value !== '' && style.kind !== 'presence');
  if (meant !== undefined)
    return `The example names ${named(meant)}, but without the value that it has in the listing: type what would set it to ${shown(meant)}.`;
  const such = some === undefined ? '' : `, such as ${named(some)} and ${shown(some)}`;
  return `The example names no setting of the listing: its name and its value have to stand in it as the listing has them${such}.`;
}

function named({ groups, name }: Exemplary): string {
  return [...groups, name].join(' ');
}

/** Its value as it stands in the listing. */
function shown({ value, style }: Exemplary): string {
  return style.kind === 'quoted' ? style.mark + value + style.mark : value;
}
