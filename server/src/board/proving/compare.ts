import type { Listing } from '../listing/listing';
import { readListing } from '../listing/read-listing';
import { commandForms, type Profile } from '../profile/profile';
import type { Entries } from '../writing/entries';
import { writeText } from '../writing/write-text';
import { isEcho } from './echo';
import { type Proof, prove } from './prove';

export interface Question {
  readonly profile: Profile | null;
  /** The board's text that the craft includes, if it does. */
  readonly captured: Listing | null;
  readonly entries: Entries;
  readonly capture: string;
  /** Paths of settings that are knowingly left. */
  readonly except: ReadonlySet<string>;
  readonly ignoresExtra: boolean;
  /** What the pilot says for now: the board lists only what differs from its defaults. */
  readonly omitsDefaults: boolean;
}

export type CaptureComparison =
  | {
      readonly kind: 'proof';
      readonly proof: Proof;
      readonly listing: Listing;
      /** Whether an echo of what was pasted would look the same: the board is told its settings as it lists them. */
      readonly isLikeEcho: boolean;
    }
  /** A sentence: why the capture proves nothing. */
  | { readonly kind: 'refused'; readonly reason: string };

const unbreakable = /[\u00a0\u202f]/g;

/** A browser makes such spaces of plain ones: they are read as these where the craft's own board writes none. */
function withPlainSpaces(capture: string, { captured, entries }: Omit<Question, 'capture'>): string {
  if (capture.search(unbreakable) < 0) return capture;
  const own = [
    captured?.text ?? '',
    ...entries.entries.flatMap(({ groups, name, value }) => [...groups, name, value]),
  ];
  return own.some((text) => text.search(unbreakable) >= 0) ? capture : capture.replace(unbreakable, ' ');
}

/** Reads a capture as the craft's board writes, and holds the craft against it. */
export function compareWithCapture({ capture, ...question }: Question): CaptureComparison {
  const { profile, captured, entries } = question;
  const omitsDefaults = question.omitsDefaults || profile?.text.omitsDefaults === true;
  const forms = profile?.text.forms ?? captured?.forms ?? null;
  const listing = readListing(withPlainSpaces(capture, question), forms);
  if (listing.refused !== null) return { kind: 'refused', reason: listing.refused };
  const pasted = pastedLines({ profile, entries, captured });
  if (isEcho(listing, pasted))
    return {
      kind: 'refused',
      reason:
        'This shows only what was typed or pasted, not what the board holds: have the board list its settings, and capture that.',
    };
  if (listing.settings.length === 0 && listing.echoes.length === 0 && !omitsDefaults)
    return {
      kind: 'refused',
      reason: 'No line of it is read as a setting: have the board list its settings, and capture that.',
    };
  const proof = prove({ ...question, capture: listing });
  const isLikeEcho = pasted === null && listing.forms.container === 'lines';
  return { kind: 'proof', proof, listing, isLikeEcho };
}

/** The lines that would tell the board the craft, where they are of another form than its listing. */
function pastedLines({
  profile,
  entries,
  captured,
}: Pick<Question, 'profile' | 'entries' | 'captured'>): ReadonlySet<string> | null {
  if (profile === null || commandForms(profile.text) === null) return null;
  const written = writeText({ profile, entries, captured, since: null, cautions: [] });
  return new Set(written.lines.map((line) => line.trim()));
}
