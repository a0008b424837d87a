import type { MeasuredSpan, Told } from '../../server/src/lsp/recording-protocol';
import { element } from '../page/element';
import { withheld } from './answer';
import { measuredWords } from './measured';
import { table } from './table';

/** A quantity of each axis. */
export interface ToldRow {
  readonly name: string;
  /** In the order of the columns; null where there is none. */
  readonly cells: readonly ToldCell[];
}

export interface ToldCell {
  readonly value: Told<MeasuredSpan> | null;
  /** What else is said of it, such as the script's estimate. */
  readonly beside?: string | null;
}

/**
 * Quantities by axes. What is withheld says so in its place, and below why and what to do, each reason once; what the
 * others rest on is folded away.
 */
export function toldTable(
  title: string,
  columns: readonly string[],
  rows: readonly ToldRow[],
): readonly HTMLElement[] {
  const body = rows.map(({ name, cells }) => [name, ...cells.map(cellOf)]);
  return [
    table(title, ['', ...columns], body),
    ...reasonsOf(columns, rows).map(({ about, reason, advice }) => {
      const text = withheld(reason, advice);
      text.prepend(element('b', {}, `${about}: `));
      return text;
    }),
    ...basesOf(title, columns, rows),
  ];
}

function cellOf({ value, beside }: ToldCell): string | HTMLElement {
  if (value === null) return element('span', { class: 'aside' }, beside ?? '–');
  return element(
    'span',
    {},
    value.told === null ? 'not known' : measuredWords(value.told),
    beside == null ? null : element('span', { class: 'aside beside' }, beside),
  );
}

/** What is withheld for one reason: "Phase margin and gain margin about roll". */
function reasonsOf(columns: readonly string[], rows: readonly ToldRow[]) {
  const byReason = new Map<
    string,
    { readonly reason: string; readonly advice: string; readonly places: Place[] }
  >();
  for (const { name, cells } of rows)
    for (const [at, { value }] of cells.entries()) {
      if (value === null || !('reason' in value)) continue;
      const { reason, advice } = value;
      const key = `${reason}\n${advice}`;
      const known = byReason.get(key) ?? { reason, advice, places: [] };
      known.places.push({ name, column: columns[at] ?? '' });
      byReason.set(key, known);
    }
  return [...byReason.values()].map(({ places, ...said }) => ({ about: placesText(places, rows), ...said }));
}

interface Place {
  readonly name: string;
  readonly column: string;
}

function placesText(places: readonly Place[], rows: readonly ToldRow[]): string {
  const byColumns = new Map<string, string[]>();
  for (const name of new Set(places.map((place) => place.name))) {
    const columns = listed(places.filter((place) => place.name === name).map(({ column }) => column));
    byColumns.set(columns, [...(byColumns.get(columns) ?? []), name]);
  }
  const parts = [...byColumns].map(([columns, names]) => {
    const isAll = names.length > 1 && names.length === rows.length;
    return `${isAll ? 'all of this' : listed(names.map(inSentence))} about ${columns}`;
  });
  const text = parts.join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function basesOf(
  title: string,
  columns: readonly string[],
  rows: readonly ToldRow[],
): readonly HTMLElement[] {
  const byBasis = new Map<string, Place[]>();
  for (const { name, cells } of rows)
    for (const [at, { value }] of cells.entries()) {
      if (value === null || !('basis' in value)) continue;
      byBasis.set(value.basis, [...(byBasis.get(value.basis) ?? []), { name, column: columns[at] ?? '' }]);
    }
  if (byBasis.size === 0) return [];
  return [
    element(
      'details',
      { class: 'told' },
      element('summary', {}, 'What this rests on', element('span', { class: 'said' }, `: ${title}`)),
      element(
        'ul',
        { class: 'sentences' },
        ...[...byBasis].map(([basis, places]) => element('li', {}, `${placesText(places, rows)}: ${basis}`)),
      ),
    ),
  ];
}

function inSentence(name: string): string {
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** "a, b and c" */
function listed(names: readonly string[]): string {
  const unique = [...new Set(names)];
  if (unique.length < 2) return unique.join('');
  return `${unique.slice(0, -1).join(', ')} and ${unique.at(-1)}`;
}
