import type { DocumentEdit } from '../../language/document';
import { type BoardLayer, boardLine } from './layer';

/** What to edit in the script of one layer to make it that of another: the lines between what both begin and end with. */
export function scriptEdits(before: BoardLayer, after: BoardLayer): readonly DocumentEdit[] {
  const [old, now] = [scriptLines(before), scriptLines(after)];
  let first = 0;
  while (first < old.length && first < now.length && old[first] === now[first]) first += 1;
  if (first === old.length && first === now.length) return [];
  let last = 0;
  while (last < old.length - first && last < now.length - first && old.at(-1 - last) === now.at(-1 - last))
    last += 1;
  const kept = old.length - last;
  const added = now.slice(first, now.length - last);
  if (last > 0) {
    const start = { line: first, character: 0 };
    return [{ start, end: { line: kept, character: 0 }, text: added.map((line) => `${line}\n`).join('') }];
  }
  const end = { line: old.length - 1, character: old.at(-1)?.length ?? 0 };
  if (first === 0) return [{ start: { line: 0, character: 0 }, end, text: now.join('\n') }];
  const start = { line: first - 1, character: old[first - 1]?.length ?? 0 };
  return [{ start, end, text: added.map((line) => `\n${line}`).join('') }];
}

function scriptLines({ lines, profile }: BoardLayer): readonly string[] {
  return [...lines.map(({ script }) => script), boardLine(profile)];
}
