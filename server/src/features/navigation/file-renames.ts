import { relativeInclude, resolveInclude } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import type { Script } from '../../craft/script';
import { quoted } from '../../language/quoted-text';
import type { ScriptLine } from '../../language/script-line';
import { rangeInLine, type TextEdit } from '../range';
import type { FileEdits } from '../text-edits';

/** A file or folder that gets another name or place; both as canonical URIs. */
export interface FileRename {
  readonly from: string;
  readonly to: string;
}

/** What scripts say about files that are to be called otherwise. */
export interface RenameEdits {
  readonly files: readonly FileEdits[];
  /** Include lines that can't name their file where it will lie. */
  readonly left: readonly { readonly script: Script; readonly line: ScriptLine }[];
}

/** Where a file will lie: it may be renamed itself, or a folder that it lies in. */
export function placeAfter(renames: readonly FileRename[], uri: string): string {
  const holding = renames.filter(({ from }) => uri === from || uri.startsWith(`${from}/`));
  const [nearest] = holding.sort((one, other) => other.from.length - one.from.length);
  return nearest === undefined ? uri : nearest.to + uri.slice(nearest.from.length);
}

/**
 * The edits with which includes and boards' names follow, made before anything is renamed. An include that leads to the
 * same file afterwards stays as it is written. `boards`: names of boards that are to be called otherwise.
 */
export function followRenames(
  scripts: Iterable<Script>,
  renames: readonly FileRename[],
  boards: ReadonlyMap<string, string>,
): RenameEdits {
  const files: FileEdits[] = [];
  const left: { script: Script; line: ScriptLine }[] = [];
  for (const script of scripts) {
    const includes = script.lines(inputKeys.include).flatMap((line) => {
      const edit = includeEdit(script, line, renames);
      if (edit === 'unsayable') left.push({ script, line });
      return edit === 'unsayable' || edit === null ? [] : [edit];
    });
    const edits = [...includes, ...boardEdits(script, boards)];
    edits.sort((one, other) => one.range.start.line - other.range.start.line);
    if (edits.length > 0) files.push({ uri: script.uri, edits });
  }
  return { files, left };
}

function includeEdit(
  script: Script,
  line: ScriptLine,
  renames: readonly FileRename[],
): TextEdit | 'unsayable' | null {
  if (line.statement.kind !== 'include') return null;
  const { path } = line.statement;
  const target = resolveInclude(script.uri, path.value);
  if (target === null) return null;
  const [home, goal] = [placeAfter(renames, script.uri), placeAfter(renames, target)];
  if (home === script.uri && goal === target) return null;
  if (resolveInclude(home, path.value) === goal) return null;
  const relative = relativeInclude(home, goal);
  if (relative === null) return 'unsayable';
  const written = path.value.startsWith('./') && !relative.startsWith('.') ? `./${relative}` : relative;
  return { range: rangeInLine(script.lineNumber(line), path), newText: quoted(written) };
}

/** `board.profile` names a board as its file is called. */
function boardEdits(script: Script, boards: ReadonlyMap<string, string>): readonly TextEdit[] {
  if (boards.size === 0) return [];
  return [...script.document.lines()].flatMap((line) => {
    if (line.settingPath !== 'board.profile' || line.statement.kind !== 'setting') return [];
    const { value } = line.statement;
    if (value === null) return [];
    const newText = boards.get(line.text.slice(value.start, value.end));
    return newText === undefined ? [] : [{ range: rangeInLine(script.lineNumber(line), value), newText }];
  });
}
