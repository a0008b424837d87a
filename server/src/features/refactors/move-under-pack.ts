import { lastSettingUnder } from '../../checks/report/rule-fix';
import { inputKeys } from '../../craft/keys';
import type { Script } from '../../craft/script';
import type { Span } from '../../language/ast';
import { isOwnPath, pathText, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { type Range, rangeInLine, type TextEdit } from '../range';
import type { Snapshot } from '../snapshot';
import type { Refactor } from './refactor';

/** More packs than that are no list to pick from. */
const mostPacks = 8;

/** A setting that holds for every pack, as one of a single pack. */
export function moveUnderPack(snapshot: Snapshot, line: ScriptLine, { start }: Span): readonly Refactor[] {
  const { craft, script, catalog } = snapshot;
  const { statement, settingPath, section } = line;
  if (statement.kind !== 'setting' || settingPath === null || section.pack !== null) return [];
  if (isOwnPath(settingPath) || stepsOf(settingPath)[0] === 'pack') return [];
  const isInComment = statement.comment !== null && start > statement.comment.start;
  if (isInComment || catalog.parameter(settingPath) === undefined) return [];
  const path = section.path === '' ? pathText(stepsOf(settingPath).slice(0, -1)) : (section.path ?? '');
  const name = pathText(stepsOf(settingPath).slice(stepsOf(path).length));
  const text = `${name}${line.text.slice(statement.path.end).trimEnd()}`;
  const packs = craft.packs();
  // Of a single pack all holds alone already.
  if (packs.length < 2) return [];
  return packs
    .filter((pack) => script.lines(inputKeys.setting(settingPath, pack)).length === 0)
    .slice(0, mostPacks)
    .map((pack) => {
      const header = `[${path} @ ${pack}]`;
      const [open] = script.lines(inputKeys.section(path, pack));
      const edits = () =>
        open === undefined ? opened(script, line, header, text) : below(script, line, open, text);
      return {
        title: `Move it to ${header}: for pack ${pack} alone`,
        kind: 'move',
        edits: () => [{ uri: script.uri, edits: edits() }],
      };
    });
}

/** Behind the last line of the pack's section. */
function below(script: Script, line: ScriptLine, open: ScriptLine, text: string): readonly TextEdit[] {
  const newText = `${script.document.lineEnd}${text}`;
  return inOrder([
    takenOut(script, line),
    { range: behind(script, lastSettingUnder(script, open)), newText },
  ]);
}

/** In a section for the pack, which is opened behind the line's own; at the end where the line is in none. */
function opened(script: Script, line: ScriptLine, header: string, text: string): readonly TextEdit[] {
  const { document } = script;
  const end = document.lineEnd;
  const section = `${header}${end}${text}`;
  const own = headerOf(script, line);
  const last = own === null ? document.lineAt(document.lineCount - 1) : lastSettingUnder(script, own);
  if (last === undefined || last === line) {
    const range = rangeInLine(script.lineNumber(line), { start: 0, end: line.text.length });
    return [{ range, newText: last === line && own !== null ? `${end}${section}` : section }];
  }
  const isBlank = last.text.trim() === '';
  const newText = isBlank ? `${end}${section}${end}` : `${end}${end}${section}`;
  return inOrder([takenOut(script, line), { range: behind(script, last), newText }]);
}

/** The header that a line stands under. */
function headerOf({ document }: Script, line: ScriptLine): ScriptLine | null {
  for (let number = document.lineNumberOf(line) - 1; number >= 0; number -= 1) {
    const above = document.lineAt(number);
    if (above?.statement.kind === 'section') return above;
  }
  return null;
}

/** A line with its end, for it to be gone. */
function takenOut(script: Script, line: ScriptLine): TextEdit {
  const number = script.lineNumber(line);
  const isFollowed = script.document.lineAt(number + 1) !== undefined;
  const range = isFollowed
    ? { start: { line: number, character: 0 }, end: { line: number + 1, character: 0 } }
    : rangeInLine(number, { start: 0, end: line.text.length });
  return { range, newText: '' };
}

function behind(script: Script, line: ScriptLine): Range {
  return rangeInLine(script.lineNumber(line), { start: line.text.length, end: line.text.length });
}

function inOrder(edits: readonly TextEdit[]): readonly TextEdit[] {
  return [...edits].sort((one, other) => one.range.start.line - other.range.start.line);
}
