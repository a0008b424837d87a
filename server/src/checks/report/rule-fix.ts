import { inputKeys } from '../../craft/keys';
import type { Script } from '../../craft/script';
import type { PlacedLine } from '../../craft/setting';
import type { CraftView } from '../../craft/view';
import { pathText, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import type { RemovalFix, RuleFix, RuleLine, SettingFix } from '../rule';
import type { Fix, FixEdit, Place } from './finding';
import { joinedTexts, lineComment, type NewText, valueToWrite, withSource } from './written-line';

/** What stands in the text of the board is mended there, or overridden in the script that is checked. */
export function fixesFor(view: CraftView, fix: RuleFix): readonly Fix[] {
  if ('remove' in fix) return removed(view, fix);
  const origin = view.setting(fix.set)?.origin;
  const inScript = fixFor(view, fix);
  if (origin === undefined || origin.script === view.craft.root || !origin.script.isBoardText)
    return inScript === null ? [] : [inScript];
  const inText = (fix.also ?? []).length > 0 ? null : replaced(view, origin, fix);
  const first = inText === null ? [] : [{ ...fixWords(fix), edits: inText, isHelp: fix.look !== undefined }];
  return inScript === null ? first : [...first, { ...inScript, title: `${fix.title}, in this script` }];
}

/** Turns "set these parameters" into edits of the script that is checked; null where its line can't be one. */
export function fixFor(view: CraftView, fix: SettingFix): Fix | null {
  const pack = fix.forPack === true && view.craft.packs().length > 1 ? view.pack : null;
  const lines = [fix, ...(fix.also ?? [])];
  const edits: FixEdit[] = [];
  const added: RuleLine[] = [];
  for (const line of lines) {
    const origin = view.setting(line.set)?.origin;
    const isHere = origin?.script === view.craft.root && (pack === null || origin.line.section.pack === pack);
    if (origin === undefined || !isHere) {
      added.push(line);
      continue;
    }
    const inPlace = replaced(view, origin, line);
    if (inPlace === null) return null;
    edits.push(...inPlace);
  }
  return {
    ...fixWords(fix),
    edits: [...edits, ...insertions(view, added, pack)],
    isHelp: lines.some(({ look }) => look !== undefined),
  };
}

function fixWords({ title, values, set, to }: SettingFix): Pick<Fix, 'title' | 'values' | 'set'> {
  return { title, values: { ...values, to }, set };
}

/** None where no line sets any of them, or a line of another script does. */
function removed(view: CraftView, { title, values = {}, remove }: RemovalFix): readonly Fix[] {
  const lines = remove.flatMap((path) =>
    path.endsWith('.*') ? linesUnder(view, path.slice(0, -2)) : (view.setting(path)?.origin ?? []),
  );
  const isElsewhere = lines.some(({ script }) => script !== view.craft.root);
  if (isElsewhere || lines.length === 0) return [];
  const edits = lines.map(({ script, line }) => ({
    place: { script, line, start: 0, end: line.text.length },
    newText: '',
  }));
  return [{ title, values, set: null, edits }];
}

/** All lines of the script about a member: its sections and settings; of a pack also the sections that are for it. */
function linesUnder({ craft: { root } }: CraftView, member: string): readonly PlacedLine[] {
  const [collection, ...name] = stepsOf(member);
  const pack = collection === 'pack' ? pathText(name) : null;
  const isWithin = (path: string | null) => path === member || path?.startsWith(`${member}.`) === true;
  return [...root.document.lines()]
    .filter(({ statement, settingPath, section }) => {
      const isHeader = statement.kind === 'section' && isWithin(section.path);
      return (
        isHeader || isWithin(settingPath) || (pack !== null && section.pack === pack && isSaying(statement))
      );
    })
    .map((line) => ({ script: root, line }));
}

function isSaying({ kind }: ScriptLine['statement']): boolean {
  return kind === 'section' || kind === 'setting';
}

function replaced(view: CraftView, { script, line }: PlacedLine, given: RuleLine): readonly FixEdit[] | null {
  const { statement } = line;
  if (statement.kind !== 'setting' || statement.value === null) return null;
  const { start, end } = statement.value;
  const { text, stops } = valueToWrite(view, given);
  const value = { place: { script, line, start, end }, newText: text, stops };
  if (statement.comment !== null && given.source !== undefined) {
    const { start: from, end: to } = statement.comment;
    const said = withSource(line.text.slice(from, to), given.source);
    return [value, { place: { script, line, start: from, end: to }, newText: said }];
  }
  const comment = lineComment(given);
  if (comment === '' || statement.comment !== null) return [value];
  const behind = { script, line, start: line.text.trimEnd().length, end: line.text.length };
  return [value, { place: behind, newText: comment }];
}

/** Puts new settings after the last lines of their sections, or in sections of their own at the end. */
function insertions(view: CraftView, lines: readonly RuleLine[], pack: string | null): readonly FixEdit[] {
  const { root } = view.craft;
  const end = root.document.lineEnd;
  const below = new Map<ScriptLine, NewText[]>();
  const sections = new Map<string, NewText[]>();
  for (const line of lines) {
    const open = openSection(view, line.set, pack);
    const steps = stepsOf(line.set);
    if (open !== null) {
      const text = settingText(view, line, pathText(steps.slice(open.depth)));
      below.set(open.last, [...(below.get(open.last) ?? []), joinedTexts([end, text])]);
    } else {
      const section = pathText(steps.slice(0, -1));
      const text = settingText(view, line, pathText(steps.slice(-1)));
      sections.set(section, [...(sections.get(section) ?? []), joinedTexts([text, end])]);
    }
  }
  const inOpen = [...below].map(([line, texts]) => after(view, line, joinedTexts(texts)));
  return sections.size === 0 ? inOpen : [...inOpen, atEnd(view, sections, pack)];
}

function settingText(view: CraftView, line: RuleLine, name: string): NewText {
  return joinedTexts([`${name} = `, valueToWrite(view, line), lineComment(line)]);
}

/** The nearest section that is open for a parameter: its last setting, and how many steps its header names. */
function openSection(view: CraftView, path: string, pack: string | null) {
  const { root } = view.craft;
  const steps = stepsOf(path);
  for (let depth = steps.length - 1; depth > 0; depth -= 1) {
    const section = pathText(steps.slice(0, depth));
    const [header] = root.lines(inputKeys.section(section, pack));
    if (header !== undefined) return { depth, last: lastSettingUnder(root, header) };
  }
  return null;
}

function atEnd(
  view: CraftView,
  sections: ReadonlyMap<string, readonly NewText[]>,
  pack: string | null,
): FixEdit {
  const { document } = view.craft.root;
  const end = document.lineEnd;
  const last = document.lineAt(document.lineCount - 1);
  if (last === undefined) throw new Error('a document always has a line');
  const parts = [...sections].flatMap(([section, texts], index) => [
    `${index === 0 ? '' : end}[${section}${pack === null ? '' : ` @ ${pack}`}]${end}`,
    ...texts,
  ]);
  return after(view, last, joinedTexts([last.text.trim() === '' ? '' : `${end}${end}`, ...parts]));
}

/** The last line that sets something under a header; the header itself where none does. */
export function lastSettingUnder({ document }: Script, header: ScriptLine): ScriptLine {
  let last = header;
  for (let number = document.lineNumberOf(header) + 1; ; number += 1) {
    const line = document.lineAt(number);
    if (line === undefined || line.statement.kind === 'section' || line.statement.kind === 'broken')
      return last;
    if (line.statement.kind === 'setting') last = line;
  }
}

function after(view: CraftView, line: ScriptLine, { text, stops }: NewText): FixEdit {
  const at = line.text.length;
  const place: Place = { script: view.craft.root, line, start: at, end: at };
  return { place, newText: text, stops };
}
