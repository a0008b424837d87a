import { inputKeys } from '../../craft/keys';
import type { Script } from '../../craft/script';
import type { PlacedLine } from '../../craft/setting';
import type { CraftView } from '../../craft/view';
import { pathText, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import type { RuleFix } from '../rule';
import type { Fix, Place } from './finding';

/** What stands in the text of the board is mended there, or overridden in the script that is checked. */
export function fixesFor(view: CraftView, fix: RuleFix): readonly Fix[] {
  const origin = view.setting(fix.set)?.origin;
  const inScript = fixFor(view, fix);
  if (origin === undefined || origin.script === view.craft.root || !origin.script.isBoardText)
    return inScript === null ? [] : [inScript];
  const inText = replaced(origin, fix);
  const second = inScript === null ? [] : [{ ...inScript, title: `${fix.title}, in this script` }];
  return inText === null ? second : [inText, ...second];
}

/** Turns "set this parameter to that" into an edit of the script that is checked; null where it can't be one. */
export function fixFor(view: CraftView, fix: RuleFix): Fix | null {
  const origin = view.setting(fix.set)?.origin;
  if (origin !== undefined && origin.script === view.craft.root) return replaced(origin, fix);
  return { title: fix.title, edits: [insertion(view, fix.set, fix.to)] };
}

function replaced({ script, line }: PlacedLine, { title, to }: RuleFix): Fix | null {
  const { statement } = line;
  if (statement.kind !== 'setting' || statement.value === null) return null;
  const { start, end } = statement.value;
  return { title, edits: [{ place: { script, line, start, end }, newText: to }] };
}

/** Puts a new setting after the last line of its section, or in a section of its own at the end. */
function insertion(view: CraftView, path: string, value: string): { place: Place; newText: string } {
  const { root } = view.craft;
  const end = root.document.lineEnd;
  const steps = stepsOf(path);
  for (let length = steps.length - 1; length > 0; length -= 1) {
    const section = pathText(steps.slice(0, length));
    const header = root.lines(inputKeys.section(section)).find((line) => line.section.pack === null);
    if (header === undefined) continue;
    const name = pathText(steps.slice(length));
    return after(view, lastSettingUnder(root, header), `${end}${name} = ${value}`);
  }
  const last = root.document.lineAt(root.document.lineCount - 1);
  if (last === undefined) throw new Error('a document always has a line');
  const gap = last.text.trim() === '' ? '' : `${end}${end}`;
  return after(
    view,
    last,
    `${gap}[${pathText(steps.slice(0, -1))}]${end}${pathText(steps.slice(-1))} = ${value}${end}`,
  );
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

function after(view: CraftView, line: ScriptLine, newText: string): { place: Place; newText: string } {
  const at = line.text.length;
  return { place: { script: view.craft.root, line, start: at, end: at }, newText };
}
