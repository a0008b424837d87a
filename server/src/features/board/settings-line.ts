import { type Field, filled, templateOf } from '../../board/listing/forms/template';
import type { Forms } from '../../catalog/model/board-forms';

/** A line that sets something, as the board writes it; null where a text is no lines of forms. */
export function settingsLine(
  { container, lines, path }: Forms,
  { groups, name }: { readonly groups: readonly string[]; readonly name: string },
  value: string,
): string | null {
  const [form] = lines;
  if (container !== 'lines' || form === undefined || !form.form.includes('{value}')) return null;
  const isNamed = form.form.includes('{group}');
  const prefix = path === undefined || isNamed ? '' : groups.map((group) => group + path).join('');
  const values = new Map<Field, string>([
    ['group', groups.join(path ?? '/')],
    ['name', prefix + name],
    ['value', value],
    ['index', '1'],
  ]);
  return filled(templateOf(form.form), values);
}

/** The heading of a group; null where the board writes none. */
export function headingLine({ headings }: Forms, groups: readonly string[]): string | null {
  const [heading] = headings;
  const group = groups.at(-1);
  return heading === undefined || group === undefined
    ? null
    : filled(templateOf(heading), new Map<Field, string>([['group', group]]));
}
