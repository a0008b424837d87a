import { readBoard } from '../../additions/read-board';
import { boardNameOf, profileOfText } from '../../board/layer/profile-of-text';
import { settingsToSay } from '../../board/learn/edit/settings-of';
import type { LearnedSetting } from '../../board/learn/learned-settings';
import type { Listing } from '../../board/listing/listing';
import { readListing } from '../../board/listing/read-listing';
import type { BoardProfile } from '../../catalog/model/board-profile';
import type { NotSaid } from '../board-protocol';
import type { BoardInHand } from '../learn-protocol';
import type { Session } from '../session';
import { freeBoardName } from './new-board-text';
import { newProfile } from './teach';

/** A board of which something is said, read. */
export interface HeldBoard {
  readonly kind: 'held';
  readonly board: BoardProfile;
  /** Whether there was no profile before. */
  readonly isNew: boolean;
  /** What its file's name leads to. */
  readonly own: string;
  /** Null where no text is at hand. */
  readonly listing: Listing | null;
  readonly settings: readonly LearnedSetting[];
}

/** The board by its profile's file, else by what is known of its text, else a new one. */
export async function heldBoard(session: Session, of: BoardInHand): Promise<HeldBoard | NotSaid> {
  const { workspace } = session;
  const own = boardNameOf(of.fileName) ?? 'board';
  await workspace.boardRead(of.board ?? own);
  if (of.profile !== null) {
    const read = readBoard(of.profile, of.board ?? own);
    if (read.kind === 'broken')
      return refused(
        `The profile can’t be read: ${read.problems[0]?.message ?? 'it is damaged'}. Mend it in its file first.`,
      );
    return held(read.board, false, own, of.text);
  }
  const known = knownBoard(session, of);
  if (known !== null) return held(known, false, own, of.text);
  const listing = readListing(of.text, null);
  if (listing.settings.length + listing.left.length === 0)
    return refused(listing.refused ?? 'No line of this text looks like a setting.');
  const { catalog } = workspace;
  return held(newProfile(listing, of.board ?? freeBoardName(own, catalog), catalog), true, own, of.text);
}

function knownBoard(
  { workspace }: Session,
  { text, fileName, uri, board }: BoardInHand,
): BoardProfile | null {
  const { catalog } = workspace;
  if (board !== null) return catalog.board(board) ?? null;
  const layer = uri === null ? undefined : workspace.layer(uri);
  const profile = layer?.profile ?? profileOfText(text, { catalog, fileName, picked: null });
  return profile?.board ?? null;
}

function held(board: BoardProfile, isNew: boolean, own: string, text: string): HeldBoard {
  const listing = text === '' ? null : readListing(text, board.text?.forms ?? null);
  const whole =
    board.text === undefined && listing !== null ? { ...board, text: { forms: listing.forms } } : board;
  return { kind: 'held', board: whole, isNew, own, listing, settings: settingsToSay(whole, listing) };
}

function refused(message: string): NotSaid {
  return { kind: 'refused', message };
}
