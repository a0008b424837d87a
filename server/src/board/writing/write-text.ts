import type { HandOver } from '../../catalog/model/hand-over';
import { noForms } from '../listing/forms/compiled';
import type { Listing, SettingKey } from '../listing/listing';
import { readListing } from '../listing/read-listing';
import { nameKey, settingKey } from '../listing/setting-key';
import { commandForms, type Profile } from '../profile/profile';
import { withItems } from '../profile/with-items';
import { type Entries, type Entry, holdsEntry } from './entries';
import { joinedItems } from './joined-items';
import { FormedText, type PageForm } from './page';
import { patch, type Unwritten, type ValueChange } from './patch';

export interface TextRequest {
  readonly profile: Profile | null;
  readonly entries: Entries;
  /** The text that was captured from the board, where there is one: it is the template. */
  readonly captured: Listing | null;
  /** Only what is new or other than in this record. */
  readonly since: HandOver | null;
  /** Said at the top as comments, where the board has comments. */
  readonly cautions: readonly string[];
}

/** A setting that the board was handed once, and that the craft says nothing of any more. */
export interface Removed extends SettingKey {
  readonly value: string;
}

/** A craft in the board's own text, with what must be said about it. */
export interface WrittenText {
  readonly text: string;
  /** Its lines with their ends, for pieces; a document is one piece. */
  readonly lines: readonly string[];
  /** How many settings it holds. */
  readonly count: number;
  /** Against the captured text. */
  readonly changes: readonly ValueChange[];
  readonly unwritten: readonly Unwritten[];
  readonly removed: readonly Removed[];
  readonly isDocument: boolean;
  /** Whether nobody has said how the board is told a setting: as its listing shows it is only assumed. */
  readonly isAssumed: boolean;
  /** Whether the cautions stand in the text. */
  readonly hasCautions: boolean;
}

/** Writes a craft for its board: over the captured text where that can be, else by the forms of its profile. */
export function writeText(asked: TextRequest): WrittenText {
  const request = withEachValue(asked);
  const { profile, captured, since, entries } = request;
  const wanted = since === null ? entries.entries : changedSince(entries.entries, since);
  const removed = since === null ? [] : removedSince(entries.entries, since);
  const command = profile?.text.command;
  const isDocument = captured !== null && captured.forms.container !== 'lines';
  const isAssumed = command === undefined && !isDocument;
  const own = { removed, isDocument, isAssumed };
  if (captured !== null && isDocument) return { ...own, ...document(captured, entries.entries) };
  if (profile !== null && commandForms(profile.text) !== null)
    return { ...own, ...byForms(asCaptured(wanted, captured), request) };
  if (captured !== null) return { ...own, ...overCaptured(captured, wanted, request) };
  return { ...own, ...byListedForms(wanted, request) };
}

function withEachValue(request: TextRequest): TextRequest {
  const { captured, profile } = request;
  return captured === null ? request : { ...request, captured: withItems(captured, profile) };
}

type TextBody = Omit<WrittenText, 'removed' | 'isDocument' | 'isAssumed'>;

/** The whole document, with its values in their places. */
function document(captured: Listing, entries: readonly Entry[]): TextBody {
  const { text, changes, unwritten, absent } = patch(captured, entries);
  const count = entries.length - unwritten.length - absent.length;
  const all = [...unwritten, ...absent.map((entry) => ({ entry, reason: notCaptured }))];
  return { text, lines: [text], count, changes, unwritten: all, hasCautions: false };
}

const notCaptured = 'the captured text has no such setting';

/** The captured lines that hold what is wanted, each as it stood there but for its value. */
function overCaptured(captured: Listing, wanted: readonly Entry[], request: TextRequest): TextBody {
  const { text: patched, changes, unwritten, absent } = patch(captured, wanted);
  const page = new FormedText(formOf(request));
  for (const caution of request.cautions) page.comment(caution);
  const reading = withItems(readListing(patched, captured.forms), request.profile);
  const lost = lostIn(reading, wanted, [...unwritten.map(({ entry }) => entry), ...absent]);
  const failed = [...unwritten, ...lost];
  const keys = new Set(wanted.map(settingKey));
  for (const { entry } of failed) keys.delete(settingKey(entry));
  page.captured(reading, keys);
  const { entries: joined, unwritten: partial } = joinedItems(absent, request.profile);
  for (const entry of joined) page.setting(entry);
  const all = [...failed, ...partial, ...page.unwritten];
  return madeOf(page, request, lineEndIn(captured.text), changes, all);
}

/** By the forms of the listing, without the lines that would be read as something else. */
function byListedForms(wanted: readonly Entry[], request: TextRequest): TextBody {
  const first = byForms(wanted, request);
  const read = readListing(first.text, request.profile?.text.forms ?? noForms);
  const reading = withItems(read, request.profile);
  const lost = lostIn(
    reading,
    wanted,
    first.unwritten.map(({ entry }) => entry),
  );
  if (lost.length === 0) return first;
  const without = new Set(lost.map(({ entry }) => entry));
  const second = byForms(
    wanted.filter((entry) => !without.has(entry)),
    request,
  );
  return { ...second, unwritten: [...second.unwritten, ...lost] };
}

/** What does not come back from its line as it was written; `others`: what has none. */
function lostIn(
  { settings }: Listing,
  wanted: readonly Entry[],
  others: readonly Entry[],
): readonly Unwritten[] {
  const read = new Map<string, string[]>();
  for (const setting of settings) {
    const values = read.get(nameKey(setting));
    if (values === undefined) read.set(nameKey(setting), [setting.value]);
    else values.push(setting.value);
  }
  const without = new Set(others);
  const reason = 'its line would be read as something else';
  return wanted
    .filter((entry) => {
      const values = read.get(nameKey(entry)) ?? [];
      return !without.has(entry) && !values.some((value) => holdsEntry(entry, value));
    })
    .map((entry) => ({ entry, reason }));
}

/** Commands are in the order of the captured text, with quotes around what has them there. */
function asCaptured(wanted: readonly Entry[], captured: Listing | null): readonly Entry[] {
  if (captured === null) return wanted;
  const places = new Map(captured.settings.map((setting, index) => [settingKey(setting), index]));
  const placed = wanted.map((entry) => {
    const at = places.get(settingKey(entry));
    const style = at === undefined ? undefined : captured.settings[at]?.style;
    const quote = entry.quote === '' && style?.kind === 'quoted' ? style.mark : entry.quote;
    return { at: at ?? Number.POSITIVE_INFINITY, entry: { ...entry, quote } };
  });
  return placed
    .toSorted((one, other) => (one.at === other.at ? 0 : one.at - other.at))
    .map(({ entry }) => entry);
}

function byForms(wanted: readonly Entry[], request: TextRequest): TextBody {
  const page = new FormedText(formOf(request));
  for (const caution of request.cautions) page.comment(caution);
  const { entries, unwritten } = joinedItems(wanted, request.profile);
  for (const entry of entries) page.setting(entry);
  return madeOf(page, request, '\n', [], [...unwritten, ...page.unwritten]);
}

function madeOf(
  page: FormedText,
  { profile, cautions }: TextRequest,
  usualEnd: string,
  changes: readonly ValueChange[],
  unwritten: readonly Unwritten[],
): TextBody {
  const lineEnd = profile?.text.lineEnd;
  const end = lineEnd === undefined ? usualEnd : lineEnd === 'crlf' ? '\r\n' : '\n';
  const lines = page.finished().map((line) => line.replaceAll('\n', end) + end);
  const hasCautions = cautions.length > 0 && page.hasComments;
  return { text: lines.join(''), lines, count: page.count, changes, unwritten, hasCautions };
}

function formOf({ profile, captured }: TextRequest): PageForm {
  return {
    forms: profile?.text.forms ?? captured?.forms ?? null,
    command: profile === null ? null : commandForms(profile.text),
    commandPath: profile?.text.commandPath ?? null,
    unitOf: ({ groups, name, occurrence }) => profile?.find(groups, name, occurrence)?.row.setting.unit ?? '',
    board: profile?.text.command === 'same' ? profile.name : null,
    longestLine: profile?.text.longestLine ?? null,
  };
}

function lineEndIn(text: string): string {
  return text.includes('\r\n') ? '\r\n' : '\n';
}

/** The values of a record, by the keys of their settings. */
export function handedBefore(since: HandOver): ReadonlyMap<string, string> {
  return new Map(
    since.settings.map(({ groups, name, occurrence = 1, item, value }) => [
      settingKey({ groups, name, occurrence, item }),
      value,
    ]),
  );
}

function changedSince(entries: readonly Entry[], since: HandOver): readonly Entry[] {
  const before = handedBefore(since);
  return entries.filter((entry) => {
    const value = before.get(settingKey(entry));
    return value === undefined || !holdsEntry(entry, value);
  });
}

function removedSince(entries: readonly Entry[], since: HandOver): readonly Removed[] {
  const there = new Set(entries.map(settingKey));
  return since.settings
    .map(({ groups, name, occurrence = 1, item, value }) => ({ groups, name, occurrence, item, value }))
    .filter((setting) => !there.has(settingKey(setting)));
}

/** What is to be remembered of a hand-over. */
export function handOverOf(
  board: string,
  pack: string | null,
  { entries }: Entries,
  reason: string | null,
): HandOver {
  const settings = entries.map(({ groups, name, occurrence, item, value }) => ({
    groups: [...groups],
    name,
    ...(occurrence === 1 ? {} : { occurrence }),
    ...(item === undefined ? {} : { item }),
    value,
  }));
  return { version: 1, board, pack, reason, settings };
}

/** Lines that go out at once where nobody has said how many the board takes. */
const usualPiece = 500;

/** The text in the pieces that the board takes at once. */
export function piecesOf(profile: Profile | null, { lines }: Pick<WrittenText, 'lines'>): readonly string[] {
  const most = profile?.text.pace?.lines ?? usualPiece;
  const pieces: string[] = [];
  for (let from = 0; from < lines.length; from += most) pieces.push(lines.slice(from, from + most).join(''));
  return pieces;
}
