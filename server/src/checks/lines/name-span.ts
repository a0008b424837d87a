import type { Span } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';

/** The name in a line: what it sets, or the section that it opens. */
export function nameSpan({ statement, text }: ScriptLine): Span {
  switch (statement.kind) {
    case 'constant':
      return { start: statement.name.start, end: statement.name.end };
    case 'setting':
    case 'section':
      return { start: statement.path.start, end: statement.path.end };
    default:
      return { start: 0, end: text.length };
  }
}
