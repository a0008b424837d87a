import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import { CraftView } from '../../craft/view';
import type { Problem } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import type { Fix } from '../report/finding';
import { goodValue } from '../report/good-value';
import { fixesFor } from '../report/rule-fix';

/** A fix that takes a line out, for a problem that nothing else can mend. */
export function lineOut(title: string): (craft: Craft, line: ScriptLine) => readonly Fix[] {
  return (craft, line) => {
    const place = { script: craft.root, line, start: 0, end: line.text.length };
    return [{ title, values: {}, set: null, edits: [{ place, newText: '' }], isHelp: true }];
  };
}

/** The other line that sets the same. */
export function firstLineOut(craft: Craft, line: ScriptLine): readonly Fix[] {
  const { statement, settingPath, section } = line;
  const constant = statement.kind === 'constant' ? inputKeys.constant(statement.name.text) : null;
  const subject = settingPath === null ? constant : inputKeys.setting(settingPath, section.pack);
  const first = subject === null ? undefined : craft.root.lines(subject)[0];
  return first === undefined || first === line ? [] : lineOut('Take the first one out')(craft, first);
}

/** The line that the value counts on. */
export function lineOfReference(craft: Craft, line: ScriptLine, found: Problem): readonly Fix[] {
  const view = new CraftView(craft, line.section.pack);
  const set = found.values.name ?? '';
  const to = goodValue(view, set);
  if (to === null) return [];
  return fixesFor(view, { title: 'Write the missing line: {to}', set, to, look: 'what it really is' });
}
