import type { Forms } from '../../../catalog/model/board-forms';
import { afterBlanks, afterQuote, beginsWithAny, isBlank, trimmed } from './characters';
import { ListingLine } from './line';

export type Blocks = NonNullable<Forms['blocks']>;

/** Lines cut at the brackets and marks that stand within them, so that each piece says one thing. */
export interface Cut {
  readonly pieces: readonly ListingLine[];
  /** Pieces that are written as one: they stand in one line, or in lines that no group ends between. */
  readonly wholes: readonly Whole[];
}

export interface Whole {
  /** Its first piece, and the one behind its last. */
  readonly first: number;
  readonly end: number;
  /** The lines, parted by LF. */
  readonly text: string;
}

/** A line in its pieces, with how deep groups lie in each other around it. */
interface CutLine {
  readonly line: ListingLine;
  readonly pieces: readonly ListingLine[];
  readonly before: number;
  readonly after: number;
  /** Whether a setting shares it with a bracket that opens or closes a group in another line. */
  readonly isTorn: boolean;
}

/** Cuts lines where groups open and close, and where settings in a group are parted. */
export function cutAtBlocks(lines: readonly ListingLine[], blocks: Blocks, comments: readonly string[]): Cut {
  const cut: CutLine[] = [];
  let depth = 0;
  for (const line of lines) {
    const next = cutLine(line, depth, blocks, comments);
    cut.push(next);
    depth = next.after;
  }
  return withWholes(cut, blocks);
}

/** A longer line is not cut. */
const longestCut = 4000;
/** Groups that lie deeper in each other within a line are none. */
const deepest = 64;

function cutLine(line: ListingLine, depth: number, blocks: Blocks, comments: readonly string[]): CutLine {
  const { text } = line;
  const isWhole = text.length > longestCut || beginsWithAny(text, comments);
  const places = isWhole ? [] : blockMarks(text, blocks, comments, depth > 0);
  const pieces: ListingLine[] = [];
  let [from, level, lowest] = [0, depth, depth];
  const add = (to: number) => {
    const [start, end] = trimmed(text, from, to);
    if (start < end)
      pieces.push(line.from(pieces.length === 0 ? 0 : start).upTo(end - (pieces.length === 0 ? 0 : start)));
    from = to;
  };
  for (const { at, kind } of places) {
    if (kind === 'open') {
      add(at + 1);
      level += 1;
    } else {
      add(at);
      if (kind === 'close') {
        add(at + 1);
        level = Math.max(0, level - 1);
        lowest = Math.min(lowest, level);
      } else from = at + 1;
    }
  }
  add(text.length);
  const isOne = places.every(({ kind }) => kind === 'between');
  const holds = pieces.some(
    (piece) => !piece.text.endsWith(blocks.open) && piece.text.trim() !== blocks.close,
  );
  const isTorn = !isOne && holds && pieces.length > 1 && (level !== depth || lowest < depth);
  return { line, pieces: pieces.length === 0 ? [line] : pieces, before: depth, after: level, isTorn };
}

/** Pieces of one line are one; where a line is torn, all lines are that its outermost group lies in. */
function withWholes(cut: readonly CutLine[], blocks: Blocks): Cut {
  const pieces: ListingLine[] = [];
  const wholes: Whole[] = [];
  for (let at = 0; at < cut.length; ) {
    const end = endOfGroup(cut, at);
    const some = cut.slice(at, end);
    const runs = some.some(({ isTorn }) => isTorn) ? [some] : some.map((one) => [one]);
    for (const run of runs) {
      const first = pieces.length;
      for (const piece of run.flatMap((one) => one.pieces)) put(pieces, piece, blocks);
      const text = run.map(({ line }) => line.asWritten).join('\n');
      const isSame = pieces.length - first === 1 && pieces.at(-1)?.asWritten.trimEnd() === text.trimEnd();
      if (pieces.length > first && !isSame) wholes.push({ first, end: pieces.length, text });
    }
    at = end;
  }
  return { pieces, wholes };
}

/** Where the outermost group that begins with a line ends. */
function endOfGroup(cut: readonly CutLine[], from: number): number {
  let end = from;
  while (end < cut.length && (cut[end]?.after ?? 0) > 0) end += 1;
  return Math.min(cut.length, end + 1);
}

/** A bracket alone opens the group that the line before it names. */
function put(pieces: ListingLine[], piece: ListingLine, { open }: Blocks): void {
  const last = pieces.at(-1);
  if (
    piece.text.trim() === open &&
    last !== undefined &&
    /^[\p{L}\p{N}\s"'_.-]+[:=]?$/u.test(last.text.trim())
  ) {
    pieces[pieces.length - 1] = ListingLine.joined([last, piece], ' ', `${last.asWritten}\n${piece.text}`);
  } else pieces.push(piece);
}

interface BlockMark {
  readonly at: number;
  readonly kind: 'open' | 'close' | 'between';
}

/** The marks of a line that open, close and part, outside of quotes, of values in brackets and of remarks. */
function blockMarks(
  text: string,
  blocks: Blocks,
  comments: readonly string[],
  isInGroup: boolean,
): readonly BlockMark[] {
  const { open, close, between } = blocks;
  const ends = bracketEnds(text, blocks);
  const marks: BlockMark[] = [];
  const unclosed = new Set<string>();
  let [start, depth] = [0, 0];
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at] ?? '';
    const skipped = isRemarkAt(text, at, comments) ? text.length : afterQuote(text, at, unclosed);
    if (skipped !== null) {
      at = skipped - 1;
    } else if (character === open) {
      const end = ends.get(at) ?? null;
      if (opensBlock(text.slice(start, at), end === null ? null : text.slice(at + 1, end), blocks)) {
        marks.push({ at, kind: 'open' });
        start = at + 1;
        depth += 1;
        if (depth > deepest) return [];
      } else if (end !== null) at = end;
    } else if (character === close) {
      marks.push({ at, kind: 'close' });
      start = at + 1;
      depth = Math.max(0, depth - 1);
    } else if (
      character === between &&
      (between === ';' || depth > 0 || (isInGroup && endsThere(text, at)))
    ) {
      marks.push({ at, kind: 'between' });
      start = at + 1;
    }
  }
  return marks;
}

/** Whether nothing follows in the line: what parts settings within lines ends lines of a group as well. */
function endsThere(text: string, at: number): boolean {
  return afterBlanks(text, at + 1) >= text.length;
}

/** Whether a remark begins there, with the mark of a comment. */
function isRemarkAt(text: string, at: number, comments: readonly string[]): boolean {
  return isBlank(text[at - 1]) && comments.some((mark) => text.startsWith(mark, at) && !/^[;{}]/.test(mark));
}

/** For each opening bracket of a line, where it is closed in the same line. */
function bracketEnds(text: string, { open, close }: Blocks): ReadonlyMap<number, number> {
  const ends = new Map<number, number>();
  const stack: number[] = [];
  for (let at = 0; at < text.length; at += 1) {
    if (text[at] === open) stack.push(at);
    else if (text[at] === close) {
      const from = stack.pop();
      if (from !== undefined) ends.set(from, at);
    }
  }
  return ends;
}

/** Whether a bracket opens a group: a name stands before it, and settings or nothing in it. `inner`: null where it goes on. */
function opensBlock(before: string, inner: string | null, blocks: Blocks): boolean {
  if (!isGroupName(before)) return before.trim() === '' && inner === null;
  if (inner === null) return true;
  const words = inner.trim().split(/\s+/, 3);
  return holdsMarks(inner, blocks) || (words.length > 1 && /^[\p{L}_@"']/u.test(words[0] ?? ''));
}

/** A name of few words, with a mark behind it or without. */
export function isGroupName(text: string): boolean {
  const name = text.trim().replace(/\s?[:=]$/, '');
  return (
    name.length <= 60 &&
    /^["']?[\p{L}_@](?:[\p{L}\p{N}_@.:/'" -]*[\p{L}\p{N}_"'])?$/u.test(name) &&
    !/: /.test(name)
  );
}

/** Whether what stands in brackets holds what parts names from values, or settings. */
export function holdsMarks(inner: string, { open }: Pick<Blocks, 'open'>): boolean {
  const start = afterBlanks(inner, 0);
  return (
    /^["'\p{L}_@]/u.test(inner.slice(start)) &&
    (/[\p{L}\p{N}"'\])]\s*(?:[:=]|->)/u.test(inner) || inner.includes(open))
  );
}
