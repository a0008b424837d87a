import { beginsWithAny } from '../text/characters';
import { isDamaged } from '../text/damage';
import type { ListingLine } from '../text/line';
import type { CompiledForms } from './compiled';
import { type HeadingRead, isAloneAbove, isTitle, readHeading } from './heading';
import { partsOfLine } from './parts-of-line';
import type { PartRead } from './read-part';

/** A longer line is none of a listing; it is told and not looked through. */
const longestLine = 20_000;

/** Lines of a listing as they look by its forms and beside each other, before it is decided what each of them is. */
export class LineLooks {
  private readonly parts = new Map<number, readonly PartRead[]>();
  /** For each line, the next that is neither blank nor a comment. */
  private readonly followers: readonly (number | null)[];
  private readonly returnsOverwrite: boolean;

  constructor(
    private readonly lines: readonly ListingLine[],
    private readonly forms: CompiledForms,
  ) {
    this.followers = followersIn(lines, forms.forms.comments);
    const returns = lines.filter(({ end }) => end === 'return').length;
    // Where many lines end so, it is how this text ends its lines; a few were written over.
    this.returnsOverwrite = returns <= lines.length / 4;
  }

  textOf(index: number): string {
    return this.lines[index]?.text ?? '';
  }

  follower(index: number): number | null {
    return this.followers[index] ?? null;
  }

  isComment(index: number): boolean {
    return beginsWithAny(this.textOf(index), this.forms.forms.comments);
  }

  /** Whether a line is written over by the next one, as a terminal does that goes back to where it began. */
  isOverwritten(index: number): boolean {
    const line = this.lines[index];
    if (line?.end !== 'return' || !this.returnsOverwrite) return false;
    const [own] = this.partsAt(index);
    if (own === undefined) return true;
    const [next] = this.partsAt(index + 1);
    const nameIn = (part: PartRead, of: number) => this.textOf(of).slice(part.name.start, part.name.end);
    return next !== undefined && nameIn(own, index) === nameIn(next, index + 1);
  }

  /** A comment of a word or two names the settings right below it, where it stands apart from those above. */
  isTitleHere(index: number, { group }: HeadingRead): boolean {
    const next = this.follower(index);
    if (!isTitle(this.textOf(index).slice(group.start, group.end)) || next === null) return false;
    return isAloneAbove(index, next, (at) => this.textOf(at)) && this.partsAt(next).length > 0;
  }

  /** A line that only looks like a heading is one where settings follow, further in or below a blank line. */
  isHeadingHere(index: number, next: number | null, isDeeper: boolean): boolean {
    const own = this.partsAt(index);
    if (next === null || own.some(({ style }) => style.kind === 'presence')) return false;
    if (this.forms.forms.indent === 'groups') return isDeeper;
    const leads =
      this.partsAt(next).length > 0 || readHeading(this.forms.headings, this.textOf(next)) !== null;
    // What can be no setting needs no blank line before it.
    if (own.length === 0) return leads;
    const isFirst = index === 0 || this.textOf(index - 1).trim() === '';
    return isFirst && next === index + 1 && leads;
  }

  partsAt(index: number): readonly PartRead[] {
    const kept = this.parts.get(index);
    if (kept !== undefined) return kept;
    const text = this.textOf(index);
    const isReadable = text.length <= longestLine && text.trim() !== '' && !isDamaged(text);
    const parts = isReadable ? partsOfLine(this.forms, text) : [];
    this.parts.set(index, parts);
    return parts;
  }

  /** No line further down asks for its parts again. */
  forget(index: number): void {
    this.parts.delete(index);
  }
}

function followersIn(lines: readonly ListingLine[], comments: readonly string[]): readonly (number | null)[] {
  const followers: (number | null)[] = [];
  let next: number | null = null;
  for (let index = lines.length - 1; index >= 0; index -= 1) {
    followers[index] = next;
    const text = lines[index]?.text ?? '';
    if (text.trim() !== '' && !beginsWithAny(text, comments)) next = index;
  }
  return followers;
}

/** Why a line is not understood. */
export function whyNotUnderstood(text: string): string {
  if (text.length > longestLine) return `The line is longer than ${longestLine} characters.`;
  if (isDamaged(text)) return 'The line is damaged: it holds characters that no board writes.';
  return 'No form of this listing fits the line.';
}
