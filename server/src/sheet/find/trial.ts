import type { Craft } from '../../craft/craft';
import type { Document } from '../../language/document';
import { editsBetween } from './edits';
import { type MovableLine, write } from './movable';

/**
 * A copy of a craft for trying one set of lines after the other. It goes back to the craft's own text before each, so
 * that of what is asked of it only what the lines concern is computed anew.
 */
export class TrialCraft {
  private readonly craft: Craft;
  private readonly document: Document;
  private clean: Document;

  constructor(readonly base: Craft) {
    this.craft = base.copied();
    this.document = base.root.document;
    this.clean = this.craft.root.document;
  }

  /** With these lines and nothing else; good until the next is asked for. Who has it may write more. */
  with(lines: readonly MovableLine[]): Craft {
    const { root } = this.craft;
    if (root.document !== this.clean) {
      const edits = editsBetween(root.document, this.document);
      if (edits.length > 0) this.craft.changed(root.edit(edits));
      this.clean = root.document;
    }
    write(this.craft, lines);
    return this.craft;
  }
}
