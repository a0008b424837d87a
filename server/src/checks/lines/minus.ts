import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { Problem } from '../../language/ast';
import { lex } from '../../language/lexer';
import { problem, replacement } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';

/** `quiet-20 Hz`, where quiet is a constant: the minus became a part of the name. */
export function spacedMinus(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const { statement } = line;
  if (statement.kind !== 'setting' && statement.kind !== 'constant') return null;
  for (const token of lex(line.text).tokens) {
    if (token.kind !== 'name' || token.start < statement.equals || token.start > found.start) continue;
    const at = minusIn(craft, token.text);
    if (at < 0) continue;
    const span = { start: token.start + at, end: token.start + at + 1 };
    return problem('line/minus-spacing', span, {}, [replacement('Put a space on both sides', span, ' - ')]);
  }
  return null;
}

/** Where a name is one that is known, a minus, and a number or another one; -1 where it is none such. */
function minusIn(craft: Craft, name: string): number {
  if (isKnown(craft, name)) return -1;
  for (let at = name.indexOf('-'); at >= 0; at = name.indexOf('-', at + 1)) {
    const after = name.slice(at + 1);
    if (isKnown(craft, name.slice(0, at)) && (/^\d/.test(after) || isKnown(craft, after))) return at;
  }
  return -1;
}

function isKnown(craft: Craft, name: string): boolean {
  if (name.includes('.')) return craft.catalog.parameter(name) !== undefined;
  return craft.lines(inputKeys.constant(name)).length > 0;
}
