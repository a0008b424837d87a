import type { Catalog } from '../../catalog/catalog';
import type { SectionStatement } from '../../language/ast';
import { stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { memberIn } from '../hover/parameter-text';
import { type Range, rangeInLine } from '../range';

type SymbolKind = 'section' | 'pack' | 'switch' | 'setting' | 'constant' | 'include' | 'more';

/** One line of the outline. The selection lies inside the range; the name is never empty. */
export interface OutlineEntry {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly range: Range;
  readonly selection: Range;
}

const longestDetail = 80;

export function sectionEntry(
  line: ScriptLine,
  first: number,
  last: number,
  lines: readonly ScriptLine[],
  catalog: Catalog,
): OutlineEntry {
  const range = {
    start: { line: first, character: 0 },
    end: { line: last, character: lines[last]?.text.length ?? 0 },
  };
  const { statement } = line;
  if (statement.kind === 'section') {
    return { ...sectionWords(statement, catalog), range, selection: rangeInLine(first, statement.path) };
  }
  const name = line.text.trim() || '[';
  const selection = rangeInLine(first, contentOf(line));
  return { name, detail: 'not understood', kind: 'section', range, selection };
}

/** `[pack.sprint]` reads "pack sprint", with what the catalogue says beside it. */
function sectionWords({ path, pack }: SectionStatement, catalog: Catalog) {
  const [collection = '', member, ...rest] = stepsOf(path.text);
  const suffix = pack === null ? '' : ` @ ${pack.text}`;
  const kind: SymbolKind =
    member !== undefined && (collection === 'pack' || collection === 'switch') ? collection : 'section';
  if (member === undefined || catalog.collection(collection) === undefined) {
    const detail = memberIn(path.text, catalog)?.title ?? catalog.groups.get(collection)?.title ?? '';
    return { name: path.text + suffix, detail, kind };
  }
  const known = catalog.members(collection).find(({ name }) => name === member);
  const name = [collection, [member, ...rest].join('.')].join(' ') + suffix;
  return { name, detail: known?.title ?? catalog.groups.get(collection)?.title ?? '', kind };
}

/** The entry of a line that opens no section; null where it has none. */
export function entryOf(line: ScriptLine, number: number): OutlineEntry | null {
  const { statement } = line;
  const range = rangeInLine(number, contentOf(line));
  switch (statement.kind) {
    case 'setting':
    case 'constant': {
      const name = statement.kind === 'setting' ? statement.path : statement.name;
      const detail = valueAsWritten(line);
      return { name: name.text, detail, kind: statement.kind, range, selection: rangeInLine(number, name) };
    }
    case 'include': {
      const name = statement.path.value.trim() || '""';
      return {
        name,
        detail: 'include',
        kind: 'include',
        range,
        selection: rangeInLine(number, statement.path),
      };
    }
    default:
      return null;
  }
}

function valueAsWritten({ text, statement }: ScriptLine): string {
  if (statement.kind !== 'setting' && statement.kind !== 'constant') return '';
  const { value } = statement;
  if (value === null) return '';
  const written = [...text.slice(value.start, value.end)];
  if (written.length <= longestDetail) return written.join('');
  return `${written.slice(0, longestDetail - 1).join('')}…`;
}

/** The line without the blanks around it; a line that opens a section is never empty. */
function contentOf({ text }: ScriptLine): { readonly start: number; readonly end: number } {
  const end = text.trimEnd().length;
  return { start: Math.min(end, text.length - text.trimStart().length), end };
}
