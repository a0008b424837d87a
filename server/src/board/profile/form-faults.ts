import { type Fault, faultsWithin } from '../../catalog/faults/fault';
import type { Forms } from '../../catalog/model/board-forms';
import type { BoardProfile, BoardText } from '../../catalog/model/board-profile';
import { compiled, type LineForm } from '../listing/forms/compiled';
import { readLines } from '../listing/forms/read-lines';
import {
  besideFields,
  type Field,
  filled,
  type Template,
  templateFault,
  templateOf,
} from '../listing/forms/template';
import { nameKey } from '../listing/setting-key';
import { linesOf } from '../listing/text/split';
import { withMember } from './members';
import { commandForms, type ProfileRow } from './profile';

const inLine: readonly Field[] = ['group', 'member', 'index', 'name', 'value', ...besideFields];

/** What is wrong with how a profile says that its board writes and takes settings. */
export function formFaults({ forms, command }: BoardText): readonly Fault[] {
  const commands = commandForms({ command }) ?? [];
  const at = (index: number) => (typeof command === 'string' ? ['command'] : ['command', index]);
  return [
    ...faultsWithin(['forms'], listingFaults(forms)),
    ...commands.flatMap((form, index) => faultOf(at(index), form, ['name'], inLine)),
  ];
}

function listingFaults({ container, lines, beside, headings, opening, closing, table }: Forms) {
  const around = (key: string, forms: readonly string[]) =>
    forms.flatMap((form, index) => faultOf([key, index], form, [], ['board', 'count']));
  return [
    ...lines.flatMap(({ form }, index) => faultOf(['lines', index, 'form'], form, ['name'], inLine)),
    ...beside.flatMap((form, index) => faultOf(['beside', index], form, [], besideFields)),
    ...headings.flatMap((form, index) => faultOf(['headings', index], form, ['group'], inLine)),
    ...around('opening', opening),
    ...around('closing', closing),
    ...(container === 'lines' && lines.length === 0
      ? [{ at: ['lines'], message: 'settings in lines need a form of a line' }]
      : []),
    ...(container === 'table' && table === undefined
      ? [{ at: ['container'], message: 'a table needs "table": its columns' }]
      : []),
  ];
}

function faultOf(
  at: Fault['at'],
  form: string,
  needed: readonly Field[],
  allowed: readonly Field[],
): readonly Fault[] {
  const fault = templateFault(form, needed, allowed);
  return fault === null ? [] : [{ at, message: `the form ${fault}` }];
}

/**
 * Rows whose names would be read as something else, by lines that hold nothing but a name and a value. Only rows with
 * a meaning are written by their names: the others were read from a listing, or stand there for nothing.
 */
export function unreadableRows(rows: readonly ProfileRow[], { text }: BoardProfile): ReadonlySet<ProfileRow> {
  if (text === undefined || !isFlat(text.forms)) return new Set();
  const forms = compiled(text.forms);
  const open = new Set(
    rows.filter(({ groups, setting }) => groups.length < 2 && setting.means !== undefined),
  );
  const headings = text.forms.headings.length === 0 ? [null] : text.forms.headings.map(templateOf);
  for (const form of forms.lines) {
    for (const heading of headings) {
      const asked = [...open];
      const written = asked.map((row) => lineOf(row, form, heading)).join('\n');
      const { settings } = readLines(linesOf(written), forms, asked.length);
      const back = new Set(settings.map(nameKey));
      for (const row of asked)
        if (back.has(nameKey({ groups: row.groups.map(plain), name: plain(row.name) }))) open.delete(row);
    }
  }
  return open;
}

/** Where a line and the heading above it say all: what stands around a value, or how far a line is indented, is not known here. */
function isFlat({ container, lines, closers, indent, path }: Forms): boolean {
  const simple: readonly string[] = ['group', 'index', 'name', 'value'];
  return (
    container === 'lines' &&
    closers.length === 0 &&
    indent === 'none' &&
    path === undefined &&
    lines.every(({ form }) => {
      const { fields } = templateOf(form);
      return fields.includes('value') && fields.every((field) => simple.includes(field));
    })
  );
}

function lineOf({ groups, name }: ProfileRow, { template }: LineForm, heading: Template | null): string {
  const group = plain(groups[0] ?? '');
  const line = filled(
    template,
    new Map([
      ['group', group],
      ['name', plain(name)],
      ['value', '1'],
      ['index', '1'],
    ]),
  );
  return heading === null || group === '' ? line : `${filled(heading, new Map([['group', group]]))}\n${line}`;
}

function plain(text: string): string {
  return withMember(text, 'member');
}
