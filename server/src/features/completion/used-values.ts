import type { Catalog, FoundParameter } from '../../catalog/catalog';
import { fileName } from '../../craft/include-path';
import { inputKeys } from '../../craft/keys';
import { checkLine, isDynamicLine } from '../../craft/line-check';
import type { Script } from '../../craft/script';
import type { ScriptLine } from '../../language/script-line';
import { hasReferences } from '../../language/value-nodes';
import type { Snapshot } from '../snapshot';

/** A value that other scripts have for a parameter. */
export interface UsedValue {
  readonly value: string;
  /** `robin.craft`, `robin.craft, line 12 and 2 more`. */
  readonly where: string;
}

/**
 * What other scripts of the workspace write for a parameter, the most common first. Only values that mean the same
 * here: nothing that hangs on names of another script, and nothing that a line would be refused for.
 */
export function usedValues({ catalog, others }: Snapshot, found: FoundParameter): readonly UsedValue[] {
  const uses = new Map<string, { readonly script: Script; readonly line: ScriptLine }[]>();
  for (const script of others()) {
    for (const line of linesFor(script, catalog, found)) {
      const value = wholeValue(line, catalog, found);
      if (value === null) continue;
      const known = uses.get(value);
      if (known === undefined) uses.set(value, [{ script, line }]);
      else if (known.every((one) => one.script !== script)) known.push({ script, line });
    }
  }
  return [...uses]
    .sort(([, one], [, other]) => other.length - one.length)
    .map(([value, places]) => ({ value, where: whereText(places) }));
}

/** Lines that set it for all packs: for the same member where its name says what it is, else for any. */
function linesFor(script: Script, catalog: Catalog, { name, path }: FoundParameter): readonly ScriptLine[] {
  const collection = name.split(/\.<[a-z]+>/)[0] ?? '';
  const isNamed = collection === name || catalog.collection(collection)?.keys.kind === 'closed';
  const paths = isNamed
    ? [path]
    : [...script.settingPaths()].filter((one) => catalog.parameter(one)?.name === name);
  return paths.flatMap((one) => script.lines(inputKeys.setting(one)));
}

/** The text of a value that says all by itself; null where it does not, or is refused. */
function wholeValue(line: ScriptLine, catalog: Catalog, { parameter }: FoundParameter): string | null {
  const { statement, text } = line;
  if (statement.kind !== 'setting' || statement.value === null) return null;
  const isNumber = parameter.kind !== 'word' && parameter.kind !== 'words' && parameter.kind !== 'flag';
  const isNamed = isNumber && (hasReferences(statement.value) || isDynamicLine(line, catalog));
  if (isNamed || checkLine(line, catalog).problems.length > 0) return null;
  return text.slice(statement.value.start, statement.value.end);
}

function whereText(places: readonly { readonly script: Script; readonly line: ScriptLine }[]): string {
  const [first, ...more] = places;
  if (first === undefined) return '';
  const { script, line } = first;
  const one = `${fileName(script.uri)}, line ${script.document.lineNumberOf(line) + 1}`;
  return more.length === 0 ? one : `${one} and ${more.length} more`;
}
