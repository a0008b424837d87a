import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import type { Script } from '../craft/script';
import type { Problem } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import { perItem } from './per-item';

/** What there is to say of each line of a script with problems that show only with the rest of the craft. */
export function perDynamicLine<T>(
  craft: Craft,
  script: Script,
  of: (line: ScriptLine, problems: readonly Problem[]) => readonly T[],
): readonly T[] {
  const { cells } = craft;
  const keys = () =>
    cells.get(`dynamic keys of ${script.uri}`, () => {
      craft.layers(); // with these, another script may have come in the place of this one
      cells.read(inputKeys.dynamic);
      return [...script.dynamicKeys()];
    });
  const said = (key: string) =>
    craft.lineProblems(key, script).flatMap(({ line, problems }) => of(line, problems));
  return perItem(cells, `dynamic lines of ${script.uri}`, keys, said);
}
