import { suggestParameters } from '../../catalog/suggest';
import type { Craft } from '../../craft/craft';
import { interpret } from '../../craft/interpret';
import { inputKeys } from '../../craft/keys';
import type { Problem, SettingStatement } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import type { Fix } from '../report/finding';
import { lastSettingUnder } from '../report/rule-fix';

/** A known parameter under the wrong section: its line moves to the right one, which is made where it is missing. */
export function movesFor(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const { statement, settingPath, section } = line;
  if (found.id !== 'line/unknown-name' || statement.kind !== 'setting' || settingPath === null) return [];
  const suggestions = suggestParameters(craft.catalog, settingPath, section.path ?? '');
  const places = suggestions.flatMap(({ path, written }) => (written === null ? membersOf(craft, path) : []));
  return places
    .filter((path) => craft.root.lines(inputKeys.setting(path, section.pack)).length === 0)
    .filter((path) => isOfKind(craft, path, statement))
    .slice(0, mostOffered)
    .map((path) => move(craft, line, statement, path));
}

/** Whether the value is of the kind that the other parameter takes; what else is wrong with it can wait. */
function isOfKind(craft: Craft, path: string, { value }: SettingStatement): boolean {
  const known = craft.catalog.parameter(path);
  if (known === undefined || value === null) return known !== undefined;
  const { problems } = interpret(value, known, craft.scope(null), craft.words(known));
  return !problems.some(({ id }) => id === 'line/wrong-dimension' || id === 'line/wrong-shape');
}

const mostOffered = 3;

/** `pack.<name>.cells` for every pack that the craft has. */
function membersOf(craft: Craft, path: string): readonly string[] {
  const at = path.search(/\.<[^<>]+>/);
  if (at < 0) return [path];
  const [open = ''] = /\.<[^<>]+>/.exec(path) ?? [];
  const rest = path.slice(at + open.length);
  const named = craft.members(path.slice(0, at)).map((member) => `${path.slice(0, at)}.${member}${rest}`);
  return named.filter((one) => !one.includes('<'));
}

function move(craft: Craft, line: ScriptLine, { path }: SettingStatement, to: string): Fix {
  const { root } = craft;
  const end = root.document.lineEnd;
  const behind = line.text.slice(path.end).trimEnd();
  const header = headerFor(craft, line, to);
  const whole = { script: root, line, start: 0, end: line.text.length };
  if (header !== null) {
    const section = header.section.path ?? '';
    const last = lastSettingUnder(root, header);
    const at = { script: root, line: last, start: last.text.length, end: last.text.length };
    const newText = `${end}${to.slice(section.length + 1)}${behind}`;
    return {
      title: 'Move it to [{section}]',
      values: { section },
      set: null,
      edits: [
        { place: whole, newText: '' },
        { place: at, newText },
      ],
    };
  }
  const cut = to.lastIndexOf('.');
  const pack = line.section.pack === null ? '' : ` @ ${line.section.pack}`;
  const opened = `[${to.slice(0, cut)}${pack}]`;
  const added = `${opened}${end}${to.slice(cut + 1)}${behind}`;
  const words = { title: 'Move it to a new section {opened}', values: { opened }, set: null };
  const final = root.document.lineAt(root.document.lineCount - 1);
  if (final === undefined || final === line)
    return { ...words, edits: [{ place: whole, newText: end + added }] };
  const at = { script: root, line: final, start: final.text.length, end: final.text.length };
  const isOpen = final.text.trim() !== '';
  const newText = isOpen ? `${end}${end}${added}` : `${end}${added}${end}`;
  return {
    ...words,
    edits: [
      { place: whole, newText: '' },
      { place: at, newText },
    ],
  };
}

/** The open section nearest to a parameter, for the pack that the line is for. */
function headerFor({ root }: Craft, line: ScriptLine, path: string): ScriptLine | null {
  for (let cut = path.lastIndexOf('.'); cut > 0; cut = path.lastIndexOf('.', cut - 1)) {
    const [header] = root.lines(inputKeys.section(path.slice(0, cut), line.section.pack));
    if (header !== undefined) return header;
  }
  return null;
}
