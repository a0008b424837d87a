import type { ListedLine } from '../listing/listing';

/** A line that opened a group: a heading, or a setting with others further in. */
interface Opener {
  readonly groups: readonly string[];
  readonly text: string;
  isWritten: boolean;
}

/** Lines of a listing of which only some are written: each is still in the groups in which it stood. */
export class GroupLines {
  private openers: readonly Opener[] = [];

  constructor(private readonly written: string[]) {}

  /** `own`: the groups of the settings that the line itself holds. */
  take({ kind, text, groups }: ListedLine, own: readonly string[], isWritten: boolean): void {
    if (kind === 'heading') {
      this.leave((outer) => outer.length < groups.length && isWithin(groups, outer));
      this.openers = [...this.openers, { groups, text, isWritten: false }];
    } else if (kind === 'closer') {
      const isOpen = this.leave((outer) => isWithin(groups, outer));
      if (isOpen) this.written.push(text);
    } else {
      const opens = kind === 'settings' && groups.length > own.length;
      this.leave((outer) => isWithin(opens ? own : groups, outer));
      if (isWritten) this.write(text);
      if (opens) this.openers = [...this.openers, { groups, text, isWritten }];
    }
  }

  private write(text: string): void {
    for (const opener of this.openers) {
      if (!opener.isWritten) this.written.push(opener.text);
      opener.isWritten = true;
    }
    this.written.push(text);
  }

  /** Groups that have ended; whether the lines that opened some of them were written. */
  private leave(isKept: (groups: readonly string[]) => boolean): boolean {
    const left = this.openers.filter(({ groups }) => !isKept(groups));
    if (left.length > 0) this.openers = this.openers.filter(({ groups }) => isKept(groups));
    return left.some((opener) => opener.isWritten);
  }
}

function isWithin(groups: readonly string[], outer: readonly string[]): boolean {
  return outer.every((step, at) => step === groups[at]);
}
