import { boardNameOf } from '../../board/layer/profile-of-text';
import { learnedProfile } from '../../board/learn/learned-profile';
import { profileText } from '../../board/learn/profile-text';
import { nothingConfirmed } from '../../board/learn/said';
import type { TaughtKind } from '../../board/learn/teach/lesson';
import { reread, withText } from '../../board/learn/teach/taught-profile';
import { teachCommand } from '../../board/learn/teach/teach-command';
import { teachLine } from '../../board/learn/teach/teach-line';
import type { Listing } from '../../board/listing/listing';
import { readListing } from '../../board/listing/read-listing';
import type { Catalog } from '../../catalog/catalog';
import type { BoardProfile } from '../../catalog/model/board-profile';
import { fileName } from '../../craft/include-path';
import { includedText } from '../../workspace/included-text';
import type { BoardLesson, LessonRefused, TeachAnswer, TeachParams } from '../learn-protocol';
import type { ScriptContext } from './about-script';
import { freeBoardName } from './new-board-text';

/** The profile of a text's board with what a pilot says of it; one is made where none is there yet. */
export function taught({ snapshot, session }: ScriptContext, { lesson }: TeachParams): TeachAnswer {
  const { craft, catalog } = snapshot;
  const script = craft.boardText();
  const included = includedText(session.workspace, craft);
  // As its lines have it: a profile may take one value for several settings.
  const listing = included === null ? null : readListing(included.text, included.forms);
  if (script === undefined || listing === null || listing.settings.length + listing.left.length === 0)
    return refused('There is no text here that was captured from a board.');
  const { profile } = session.workspace.layer(script.uri) ?? { profile: null };
  const own = boardNameOf(fileName(script.uri)) ?? 'board';
  const before = profile?.board ?? newProfile(listing, freeBoardName(own, catalog), catalog);
  const made = withLesson(before, listing, lesson, catalog);
  if (made.kind === 'refused') return made;
  return {
    kind: 'taught',
    board: made.board.name,
    profile: profileText(made.board),
    isNew: profile === null,
    isByName: made.board.name === own,
    text: script.uri,
    said: made.said,
  };
}

type LessonMade =
  | { readonly kind: 'made'; readonly board: BoardProfile; readonly said: string }
  | LessonRefused;

/** A profile with what a lesson says. */
export function withLesson(
  board: BoardProfile,
  listing: Listing,
  { kind, line, part }: BoardLesson,
  catalog: Catalog,
): LessonMade {
  switch (kind) {
    case 'command': {
      const found = teachCommand(part, listing.settings, listing.forms);
      if (found.kind === 'refused') return refused(found.reason);
      const said = `From now on the board is told a setting like this: ${part.trim()}`;
      return { kind: 'made', board: withText(board, found.command), said };
    }
    case 'same-command': {
      const said = 'From now on the board is told its settings as it lists them.';
      return { kind: 'made', board: withText(board, { command: 'same' }), said };
    }
    case 'omits-defaults': {
      const said = 'From now on, what the board does not list is taken to be at its default.';
      return { kind: 'made', board: withText(board, { omitsDefaults: true }), said };
    }
    default:
      return withLine(
        board,
        listing,
        { line: line ?? 0, as: kind, part: part === '' ? null : part },
        catalog,
      );
  }
}

function withLine(
  board: BoardProfile,
  listing: Listing,
  lesson: { readonly line: number; readonly as: TaughtKind; readonly part: string | null },
  catalog: Catalog,
): LessonMade {
  const found = teachLine(listing, lesson);
  if (found.kind === 'refused') return refused(found.reason, found.asks);
  const after = readListing(listing.text, found.forms);
  const fresh = learnedProfile(after, board.name, nothingConfirmed, catalog)?.profile.settings ?? [];
  const others = found.alike.length === 0 ? '' : ` ${found.alike.length} more are read so as well.`;
  return {
    kind: 'made',
    board: reread(board, listing, after, fresh),
    said: `Line ${lesson.line + 1} is a ${lesson.as}.${others}`,
  };
}

/** A profile of a text that none is for. */
export function newProfile(listing: Listing, name: string, catalog: Catalog): BoardProfile {
  const made = learnedProfile(listing, name, nothingConfirmed, catalog);
  return made?.profile ?? { name, text: { forms: listing.forms }, settings: [] };
}

function refused(message: string, asks = false): LessonRefused {
  return { kind: 'refused', message, asks };
}
