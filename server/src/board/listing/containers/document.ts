import type { ListedSetting, Stated, Stretch, Style } from '../listing';
import { rangeIn, wordsIn } from '../range-and-words';
import { readRemark } from '../remark';
import type { ListingLine } from '../text/line';
import { type ColumnRole, roleOf, rolesOf } from './roles';

/** Documents that nest deeper are refused. */
export const deepest = 64;

/** A value of a document that holds no others, with the key that leads to it. */
export interface DocumentEntry {
  readonly groups: readonly string[];
  readonly name: string;
  /** Places in the document. */
  readonly nameAt: Stretch;
  readonly value: string;
  readonly valueAt: Stretch;
  readonly style: Style;
  /** A comment behind it, on its line. */
  readonly remark: Stretch | null;
}

export type Uncounted = Omit<ListedSetting, 'occurrence'>;

/** A setting as the document says it. */
export function settingOf(entry: DocumentEntry, document: ListingLine): Uncounted {
  const { groups, name, value, style, nameAt, valueAt, remark } = entry;
  return {
    groups,
    name,
    value,
    style,
    at: { name: document.at(nameAt.start, nameAt.end), value: document.at(valueAt.start, valueAt.end) },
    stated: remark === null ? null : statedIn(document, remark),
  };
}

function statedIn(document: ListingLine, at: Stretch): Stated {
  const text = document.text.slice(at.start, at.end);
  const { isAll, ...said } = readRemark(text, '.');
  return { ...said, remark: isAll ? null : text.trim(), at: document.at(at.start, at.end) };
}

/**
 * The setting that a record says, such as `{"name": "tern", "value": 5, "min": 0}` in a list; null for one that is none.
 */
export function settingOfRecord(
  groups: readonly string[],
  entries: readonly DocumentEntry[],
  document: ListingLine,
): Uncounted | null {
  const roles = rolesOf(entries.map(({ name }) => name));
  if (roles === null || entries.length > mostKeys) return null;
  const entryOf = (role: ColumnRole) => entries[roles.indexOf(role)];
  const [name, value, group] = [entryOf('name'), entryOf('value'), entryOf('group')];
  if (name === undefined || value === undefined || name.value === '') return null;
  return {
    groups: group === undefined || group.value === '' ? groups : [...groups, group.value],
    name: name.value,
    value: value.value,
    style: value.style,
    at: {
      name: document.at(name.valueAt.start, name.valueAt.end),
      value: document.at(value.valueAt.start, value.valueAt.end),
    },
    stated: statedOfRecord(entryOf, document),
  };
}

/** A text that goes on over lines, with a blank for each line end. */
export function inOneLine(text: string): string {
  return /[\r\n]/.test(text)
    ? text
        .split(/[\r\n]+/)
        .map((line) => line.trim())
        .join(' ')
    : text;
}

/** The setting that an element with a text says: `<rate unit="Hz">5</rate>`, `<setting id="rate">5</setting>`. */
export function settingOfElement(
  groups: readonly string[],
  element: Pick<DocumentEntry, 'name' | 'nameAt'> & { readonly attributes: readonly DocumentEntry[] },
  valueAt: Stretch,
  document: ListingLine,
): Uncounted {
  const entryOf = (role: ColumnRole) => element.attributes.find(({ name }) => roleOf(name) === role);
  const called = entryOf('name');
  const nameAt = called?.valueAt ?? element.nameAt;
  return {
    groups,
    name: called?.value ?? element.name,
    value: inOneLine(document.text.slice(valueAt.start, valueAt.end)),
    style: { kind: 'plain' },
    at: { name: document.at(nameAt.start, nameAt.end), value: document.at(valueAt.start, valueAt.end) },
    stated: statedOfRecord(entryOf, document),
  };
}

const mostKeys = 24;
const saying: readonly ColumnRole[] = ['unit', 'range', 'low', 'high', 'words', 'default', 'remark'];

function statedOfRecord(
  entryOf: (role: ColumnRole) => DocumentEntry | undefined,
  document: ListingLine,
): Stated | null {
  const said = saying
    .flatMap((role) => entryOf(role) ?? [])
    .filter(({ value }) => value !== '' && value !== 'null');
  const textOf = (role: ColumnRole) => said.find((entry) => entry === entryOf(role))?.value ?? null;
  if (said.length === 0) return null;
  const range = rangeIn(textOf('range') ?? '', '.');
  const [low, high] = [textOf('low'), textOf('high')];
  return {
    range:
      low !== null && high !== null
        ? { low, high }
        : range === null
          ? null
          : { low: range.low, high: range.high },
    words: wordsIn((textOf('words') ?? '').replace(/[[\]"]/g, '')),
    default: textOf('default'),
    unit: textOf('unit'),
    remark: textOf('remark'),
    at: document.at(
      Math.min(...said.map(({ valueAt }) => valueAt.start)),
      Math.max(...said.map(({ valueAt }) => valueAt.end)),
    ),
  };
}
