import type { Finding } from './finding';
import { OrderedFindings } from './ordered-findings';

/**
 * The findings of one script in its order, kept through edits: only what has come is put in its place. All that is
 * found at one place by one check is in one piece.
 */
export class ScriptOrder {
  private pieces: readonly (readonly Finding[])[] = [];
  private readonly ordered = new OrderedFindings();

  of(list: readonly (readonly Finding[])[]): readonly Finding[] {
    const before = this.pieces;
    this.pieces = list;
    // Nearly all pieces are the ones that they were, at the place where they were.
    const fresh = new Set(list.filter((piece, at) => piece !== before[at]));
    const left = before.filter((piece, at) => piece !== list[at] && !fresh.delete(piece));
    const gone = new Set(left.flat());
    const come = [...fresh].flat().filter((finding) => !gone.delete(finding));
    return this.ordered.changed(gone, come);
  }
}
