import type { Problem } from './ast';
import { hiddenCharacter } from './look-alikes';
import { characterName, problem } from './problem';

const hidden = new RegExp(hiddenCharacter, 'gu');

/** One problem for all characters of a line that show nothing; `more`: places of others than those that never may. */
export function hiddenCharacters(line: string, more: readonly number[] = []): readonly Problem[] {
  const places = [...[...line.matchAll(hidden)].map(({ index }) => index), ...more].sort(
    (one, other) => one - other,
  );
  const [start] = places;
  if (start === undefined) return [];
  const edits = places.map((at) => ({ start: at, end: at + 1, newText: '' }));
  const values = { character: characterName(line[start] ?? '') };
  const fix = { title: 'Take the hidden characters out', edits };
  return [problem('line/hidden-character', { start, end: start + 1 }, values, [fix])];
}
