import type { BareNode, SettingStatement } from '../../language/ast';
import { lex } from '../../language/lexer';
import type { ScriptLine } from '../../language/script-line';
import { opensSection } from '../navigation/section-extents';
import { sameTokens, spaced } from './tokens';

/** One line by itself, with its inner blanks as they ought to be. */
export type FormattedLine =
  /** Nothing but blanks. */
  | { readonly kind: 'blank' }
  /** Only its trailing blanks may go: it can't be understood, or it is a comment that fills the line. */
  | { readonly kind: 'whole'; readonly text: string; readonly isComment: boolean; readonly opens: boolean }
  | {
      readonly kind: 'code';
      /** What stands before the equals sign, or everything where there is none. */
      readonly left: string;
      /** What stands after it; null without one. */
      readonly right: string | null;
      readonly comment: string | null;
      readonly opens: boolean;
    };

/** A mark that a file may begin with; the document reads it as a blank. */
export const byteOrderMark = '\ufeff';

export function formOf(line: ScriptLine): FormattedLine {
  const { statement, text } = line;
  const { comment } = statement;
  const trimmed = trimmedEnd(text);
  if (trimmed === '') return { kind: 'blank' };
  const opens = opensSection(line);
  const kept: FormattedLine = { kind: 'whole', text: trimmed, isComment: false, opens };
  if (!isUnderstood(line)) return kept;
  const mark = text.startsWith(byteOrderMark) ? byteOrderMark : '';
  const words = comment === null ? null : trimmedEnd(text.slice(comment.start));
  if (statement.kind === 'blank') {
    return words === null ? kept : { kind: 'whole', text: mark + words, isComment: true, opens };
  }
  if (statement.kind === 'setting' && statement.value?.kind === 'bare')
    return ownForm(text, mark, statement, statement.value, words) ?? kept;
  return codeForm(line, mark, words, opens) ?? kept;
}

/** A setting whose value is kept as it is written: nothing but the blanks around its equals sign may change. */
function ownForm(
  text: string,
  mark: string,
  statement: SettingStatement,
  value: BareNode,
  comment: string | null,
): FormattedLine | null {
  const { path, equals } = statement;
  const around = text.slice(path.end, equals) + text.slice(equals + 1, value.start);
  const ends = text.slice(mark.length, path.start) + text.slice(value.end, statement.comment?.start);
  // A blank that is none of ours, such as a no-break space, is left where it stands.
  if (/[^ \t]/.test(around + ends)) return null;
  const left = mark + text.slice(path.start, path.end);
  return { kind: 'code', left, right: text.slice(value.start, value.end), comment, opens: false };
}

function codeForm(
  line: ScriptLine,
  mark: string,
  comment: string | null,
  opens: boolean,
): FormattedLine | null {
  const { statement } = line;
  const text = mark === '' ? line.text : line.text.replace(mark, ' ');
  const { tokens } = lex(text);
  const equals = 'equals' in statement ? statement.equals : -1;
  const before = equals < 0 ? tokens : tokens.filter((token) => token.start < equals);
  const after = tokens.filter((token) => token.start > equals);
  const left = spaced(text, before);
  const right = equals < 0 ? null : spaced(text, after);
  // Blanks must never change what a line says; where they would, the line stays as it is.
  const code = right === null ? left : `${left} = ${right}`;
  if (!sameTokens(code, text)) return null;
  return { kind: 'code', left: mark + left, right, comment, opens };
}

/** What is wrong in a comment only, leaves the rest of the line understood. */
function isUnderstood({ statement }: ScriptLine): boolean {
  const { comment, problems } = statement;
  if (statement.kind === 'broken') return false;
  return problems.every(({ start }) => comment !== null && start >= comment.start);
}

/** Without spaces and tabs at the end. Linear, whatever the line holds. */
function trimmedEnd(text: string): string {
  let end = text.length;
  while (end > 0 && (text[end - 1] === ' ' || text[end - 1] === '\t')) end -= 1;
  return text.slice(0, end);
}
