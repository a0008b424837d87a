import type { FixEdit } from '../checks/report/finding';
import { fixFor } from '../checks/report/rule-fix';
import type { Craft } from '../craft/craft';
import { CraftView } from '../craft/view';
import type { DocumentEdit } from '../language/document';

/** The same craft with edits in its own script; the craft itself stays as it is. */
export function whatIf(craft: Craft, edits: readonly DocumentEdit[]): Craft {
  const copy = craft.copied();
  copy.changed(copy.root.edit(edits));
  return copy;
}

/**
 * Sets one parameter in the craft's own script: the value of its line where it has one there, else a new line
 * in its section. `to` is written as a script writes it. Null where the line can't be edited.
 */
export function settingEdits(
  craft: Craft,
  pack: string | null,
  path: string,
  to: string,
): readonly DocumentEdit[] | null {
  const fix = fixFor(new CraftView(craft, pack), { title: path, set: path, to });
  return fix === null ? null : asDocumentEdits(craft, fix.edits);
}

/** Edits of a fix as edits of the craft's own script. */
export function asDocumentEdits({ root }: Craft, edits: readonly FixEdit[]): readonly DocumentEdit[] {
  return edits.map(({ place: { line, start, end }, newText }) => {
    const number = root.lineNumber(line);
    return {
      start: { line: number, character: start },
      end: { line: number, character: end },
      text: newText,
    };
  });
}

/** Takes the line that sets a parameter out of the craft's own script; null where no line of it does. */
export function removalEdits(
  craft: Craft,
  pack: string | null,
  path: string,
): readonly DocumentEdit[] | null {
  const origin = craft.setting(path, pack)?.origin;
  if (origin === undefined || origin.script !== craft.root) return null;
  const line = craft.root.lineNumber(origin.line);
  const end = { line, character: origin.line.text.length };
  return [{ start: { line, character: 0 }, end, text: '' }];
}
