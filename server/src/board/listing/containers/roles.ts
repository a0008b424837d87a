import type { Forms } from '../../../catalog/model/board-forms';
import { keyOf } from '../value-keys';

/** What a column of a table, or a key of a record, holds. */
export type ColumnRole = NonNullable<Forms['table']>['columns'][number];

const words: readonly (readonly [role: ColumnRole, words: readonly string[]])[] = [
  [
    'name',
    ['name', 'parameter', 'param', 'setting', 'key', 'option', 'variable', 'property', 'item', 'field', 'id'],
  ],
  [
    'name',
    [
      'einstellung',
      'bezeichnung',
      'eigenschaft',
      'schl\u00fcssel',
      'nom',
      'r\u00e9glage',
      'param\u00e8tre',
      'cl\u00e9',
    ],
  ],
  [
    'value',
    [
      'value',
      'val',
      'current',
      'now',
      'set',
      'data',
      'content',
      'wert',
      'aktuell',
      'inhalt',
      'valeur',
      'actuel',
    ],
  ],
  [
    'group',
    ['group', 'section', 'module', 'part', 'category', 'gruppe', 'bereich', 'abschnitt', 'groupe', 'partie'],
  ],
  ['index', ['no', 'nr', 'number', 'index', '#', 'n\u00b0', 'num', 'line', 'zeile', 'nummer', 'num\u00e9ro']],
  ['words', ['words', 'choices', 'allowed', 'options', 'values', 'auswahl', 'erlaubt', 'choix', 'valeurs']],
  [
    'remark',
    [
      'remark',
      'note',
      'notes',
      'comment',
      'description',
      'text',
      'help',
      'meaning',
      'info',
      'title',
      'label',
    ],
  ],
  ['remark', ['bemerkung', 'beschreibung', 'hinweis', 'kommentar', 'remarque', 'commentaire']],
];

const roles: ReadonlyMap<string, ColumnRole> = new Map(
  words.flatMap(([role, all]) => all.map((word) => [word, role] as const)),
);

/** What a heading says of its column; `other` where it says nothing known. */
export function roleOf(heading: string): ColumnRole {
  const word = heading
    .trim()
    .toLowerCase()
    .replace(/^[;#/-]{1,4}\s/, '')
    .trimStart()
    .replace(/[.:]$/, '');
  const role = roles.get(word);
  if (role !== undefined) return role;
  const key = keyOf(word);
  return key === null || (key === 'unit' && word.length < 4) ? 'other' : key;
}

/**
 * The roles of columns by their headings; null where they are none of a listing. Of two names the first is the group.
 */
export function rolesOf(headings: readonly string[]): readonly ColumnRole[] | null {
  const all = headings.map(roleOf);
  const hasName = all.filter((role) => role === 'name').length > 1;
  const found = all.map((role, at) =>
    hasName && headings[at]?.trim().toLowerCase() === 'id' ? 'index' : role,
  );
  if (!found.includes('value')) return null;
  const names = found.flatMap((role, at) => (role === 'name' ? [at] : []));
  const name = names.at(-1) ?? found.indexOf('other');
  if (name < 0) return null;
  const seen = new Set<ColumnRole>();
  return found.map((role, at) => {
    if (at === name) return 'name';
    const own =
      role === 'name'
        ? at === names[0] && names.length === 2 && !seen.has('group')
          ? 'group'
          : 'other'
        : role;
    if (own !== 'other' && own !== 'group' && seen.has(own)) return 'other';
    seen.add(own);
    return own;
  });
}
