import type { BoardLayer } from '../board/layer/layer';
import type { Craft } from '../craft/craft';
import { groupsLikeCraft } from '../craft/read-as';
import { unusedConstants } from '../craft/unused-constants';
import type { Includers } from './includers';
import type { OpenBoardTexts } from './open-board-texts';

/** What a craft may wait for beside what it includes. */
interface Awaited {
  readonly includers: Includers;
  readonly boardTexts: OpenBoardTexts;
  readonly layer: (uri: string) => BoardLayer | undefined;
}

/** Files that are being read, who waits for one of them, and which crafts are not whole before. */
export class AwaitedFiles {
  private readonly waiting: (() => void)[] = [];

  constructor(private readonly awaited: Awaited) {}

  /** Resolves when a file has been read or counts for another reason: what was read may include more. */
  next(): Promise<void> {
    return new Promise((resolve) => this.waiting.push(resolve));
  }

  /** A file has been read, or counts for another reason. */
  arrived(): void {
    for (const resolve of this.waiting.splice(0)) resolve();
  }

  /**
   * Whether something that it includes is still being read, or its board is, or what it is taken for is still being
   * looked into.
   */
  isUnsettled(craft: Craft): boolean {
    const { includers, boardTexts } = this.awaited;
    if (groupsLikeCraft(craft).length > 0) craft.isIncluded();
    unusedConstants.get(craft);
    const isLooking = includers.isLooking || boardTexts.isLooking;
    return craft.layers().isPending || isLooking || awaitsBoard(craft) || this.awaitsProfile(craft);
  }

  /** Whether a board's text of the craft may have a profile that is still being read. */
  private awaitsProfile(craft: Craft): boolean {
    return craft.layers().layers.some(({ script: { uri } }) => {
      const layer = this.awaited.layer(uri);
      return layer !== undefined && this.awaited.boardTexts.awaitsProfile(uri, layer);
    });
  }
}

/** Whether the profile of its board has not been read yet; it is asked for then. */
function awaitsBoard(craft: Craft): boolean {
  craft.board();
  return craft.catalog.isUnread(craft.boardName() ?? '');
}
