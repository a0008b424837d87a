import { suggestWord } from '../../catalog/suggest';
import type { Craft } from '../../craft/craft';
import type { Problem, TextNode } from '../../language/ast';
import { offering, problem, replacement } from '../../language/problem';
import { quoted } from '../../language/quoted-text';
import type { ScriptLine } from '../../language/script-line';
import { couldHold, type KnownSetting, knownSetting, nodeAt } from './setting';

/** `name = Sandmartin`: whatever stands behind the equals sign was meant as the text. */
export function quotedText(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const setting = knownSetting(craft, line);
  if (setting === null || setting.found.parameter.kind !== 'text') return null;
  const { equals, comment } = setting.statement;
  if (equals < 0 || found.start <= equals) return null;
  const written = line.text.slice(equals + 1, comment?.start ?? line.text.length);
  const start = equals + 1 + (written.length - written.trimStart().length);
  const span = { start, end: start + written.trim().length };
  const text = withoutSingleQuotes(written.trim());
  if (text === '' || text.includes('"')) return null;
  const values = { expected: 'a text in double quotes', found: 'text without quotes' };
  const fixes = [replacement('Put it in double quotes', span, quoted(text))];
  return problem('line/wrong-shape', span, values, fixes);
}

function withoutSingleQuotes(text: string): string {
  return /^(['`\u2018\u2019]).*['`\u2018\u2019]$/.test(text) && text.length > 1 ? text.slice(1, -1) : text;
}

/** `order = "AETR"`: the same without its quotes, where it can stand so. */
export function unquoted(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const setting = knownSetting(craft, line);
  const node = setting === null ? null : nodeAt(setting.statement.value, found);
  if (setting === null || node?.kind !== 'text') return null;
  return offering(found, () => {
    const words = suggestedWords(craft, line, setting, node);
    return { fixes: words.map((word) => replacement('Write {to}', node, word)) };
  });
}

function suggestedWords(craft: Craft, line: ScriptLine, { statement, found }: KnownSetting, node: TextNode) {
  const value = statement.value ?? node;
  const before = line.text.slice(value.start, node.start);
  const after = line.text.slice(node.end, value.end);
  const text = node.value.trim();
  const fits = (word: string) => couldHold(craft, found, `${before}${word}${after}`);
  const same = [text, text.toLowerCase(), text.toUpperCase()].find(fits);
  if (same !== undefined) return [same];
  return suggestWord(craft.words(found) ?? [], text.replaceAll(' ', '-')).filter(fits);
}
