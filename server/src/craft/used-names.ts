import type { ScriptLine } from '../language/script-line';
import { referencesIn } from '../language/value-nodes';

const none: readonly string[] = [];

/**
 * Names of constants that a line is calculated from. A word that its parameter chooses from is among them, for only
 * the catalogue could tell; of a line that can't be read, all that it holds: what it was meant to use is not unused.
 */
export function namesUsedBy({ statement, text }: ScriptLine): readonly string[] {
  if (statement.kind === 'broken') return wordsIn(text);
  if (statement.kind !== 'setting' && statement.kind !== 'constant') return none;
  const { value } = statement;
  if (value === null) return statement.problems.length === 0 ? none : wordsIn(text);
  if (value.kind === 'bare' || value.kind === 'text') return none;
  const names = new Set<string>();
  for (const { path } of referencesIn(value)) {
    if (path.text.includes('.')) continue;
    for (const part of [path.text, ...partsOf(path.text)]) names.add(part);
  }
  return names.size === 0 ? none : [...names];
}

function wordsIn(text: string): readonly string[] {
  const words = text.match(/[A-Za-z][\w-]*/g) ?? [];
  return [...new Set(words.flatMap((word) => [word, ...partsOf(word)]))];
}

/** What stands before and behind each hyphen of a name: a minus without blanks is read as part of one. */
function partsOf(name: string): readonly string[] {
  const words = name.split('-');
  return words.slice(1).flatMap((_, at) => [words.slice(0, at + 1).join('-'), words.slice(at + 1).join('-')]);
}
