import type { Forms } from '../../catalog/model/board-forms';
import { type DocumentSource, documentIn, readDocument } from './containers/read-document';
import { commentMark } from './find/comments';
import { findForms } from './find/find-forms';
import { framesOf } from './find/frames';
import { isSurelyHeading } from './find/headings';
import { isRunningText } from './find/prose';
import { compiled, noForms } from './forms/compiled';
import { type LinesRead, readLines } from './forms/read-lines';
import type { Frame, Listing, Stretch } from './listing';
import { withoutBlockComments } from './text/block-comments';
import { cutAtBlocks } from './text/blocks';
import { withoutTrees } from './text/drawn';
import { joinedAt } from './text/joined';
import type { ListingLine } from './text/line';
import { isPageBreak } from './text/pager';
import { withoutProgress } from './text/progress';
import { withoutPrompts } from './text/prompts';
import { linesOf } from './text/split';
import { withoutCounters, withoutStamps } from './text/stamps';
import { unwrapped, widthOf } from './text/wrapped';

const mostSettings = 100_000;
const longestText = 10_000_000;
/** Lines. So many show whether a text is sentences. */
const longestProse = 400;

/** Reads a board's text by its forms; `null`: by forms that are found from the text itself. */
export function readListing(text: string, forms: Forms | null): Listing {
  if (text.length > longestText)
    return emptyListing(text, forms, `The text is longer than ${longestText} characters.`);
  const { lines, ...prompted } = linesToRead(text, forms);
  const found = forms === null ? foundIn({ text, lines }) : byForms({ text, lines }, forms);
  if (found === null)
    return emptyListing(text, null, 'The text is sentences: no line of it looks like a setting.');
  const { known, read } = found;
  const isTooMuch = read.settings.length > mostSettings;
  const refused = isTooMuch ? `The text holds more than ${mostSettings} settings.` : read.refused;
  if (refused !== null) return emptyListing(text, known, refused);
  const isNew = forms === null && prompted.prompts.length > 0;
  const named = isNew ? { ...known, prompts: [...prompted.prompts] } : known;
  return listingOf(text, { ...found, known: named }, prompted.echoes);
}

/** The lines of a text as they are read, without what a session put around and into them; and what it was. */
export function linesToRead(text: string, forms: Forms | null): ReturnType<typeof withoutPrompts> {
  const shown = withoutProgress(linesOf(text).filter((line) => !isPageBreak(line.text)));
  const prompted = withoutPrompts(withoutTrees(withoutStamps(shown)), forms?.prompts ?? []);
  return isNumbered(forms) ? prompted : { ...prompted, lines: withoutCounters(prompted.lines, isNoSetting) };
}

/** Whether the board numbers its settings itself: then no tool's counter stands before them. */
function isNumbered(forms: Forms | null): boolean {
  return forms?.lines.some(({ form }) => form.includes('{index}')) === true;
}

interface ReadBy {
  readonly known: Forms;
  readonly read: LinesRead;
  readonly breaksAt: Listing['breaksAt'];
}

function byForms(source: DocumentSource, known: Forms): ReadBy {
  if (known.container !== 'lines' && known.container !== 'table')
    return { known, read: readDocument(source, known, mostSettings), breaksAt: null };
  const { lines, comments } = withoutBlockComments(source.lines);
  const { read, ...found } = linesByForms(lines, known);
  return comments.length === 0
    ? { read, ...found }
    : { ...found, read: { ...read, comments: inOrder([...read.comments, ...comments]) } };
}

function inOrder(places: readonly Stretch[]): readonly Stretch[] {
  return [...places].sort((one, other) => one.start - other.start);
}

function linesByForms(lines: readonly ListingLine[], known: Forms): ReadBy {
  const whole = known.continued === undefined ? lines : joinedAt(lines, known.continued);
  const cut = known.blocks === undefined ? null : cutAtBlocks(whole, known.blocks, known.comments);
  if (cut !== null)
    return {
      known,
      read: readLines(cut.pieces, compiled(known), mostSettings, cut.wholes),
      breaksAt: null,
    };
  const read = readLines(whole, compiled(known), mostSettings);
  const unread = new Set(read.unread);
  if (unread.size === 0) return { known, read, breaksAt: null };
  const joined = unwrapped(whole, (index) => unread.has(index));
  return joined === null
    ? { known, read, breaksAt: widthOf(whole) }
    : { known, read: readLines(joined, compiled(known), mostSettings), breaksAt: 0 };
}

/**
 * Finds the forms and reads by them; what is around the settings is known only then. Null for sentences that are no
 * listing.
 */
function foundIn(source: DocumentSource): ReadBy | null {
  const document = documentIn(source, mostSettings);
  if (document !== null) return { ...document, breaksAt: null };
  if (isRunningText(source.lines.slice(0, longestProse).map((line) => line.text))) return null;
  const found = byForms(source, findForms(withoutBlockComments(source.lines).lines));
  const first = countsLines(found.read) ? byForms(source, withoutCounts(found.known)) : found;
  const { known, read } = first;
  const opening = framesOf(read.openings, source.text, read.settings.length);
  const closing = framesOf(read.closings, source.text, read.settings.length);
  const framed = {
    ...known,
    opening: together(known.opening, opening),
    closing: together(known.closing, closing),
  };
  return opening.length + closing.length === 0 ? first : byForms(source, framed);
}

/** Whether what stands around the settings counts lines, of which some hold several. */
function countsLines({ openings, closings, settings, lines }: LinesRead): boolean {
  const said = lines.filter(({ kind }) => kind === 'settings').length;
  const isLines = ({ count }: Frame) => count === said && count !== settings.length;
  return [...openings, ...closings].some(isLines);
}

function withoutCounts(forms: Forms): Forms {
  const isOther = (form: string) => !form.includes('{count}');
  return { ...forms, opening: forms.opening.filter(isOther), closing: forms.closing.filter(isOther) };
}

const mostFrames = 4;

function together(some: readonly string[], more: readonly string[]): string[] {
  return [...new Set([...some, ...more])].slice(0, mostFrames);
}

/** Lines that a listing has beside its settings. */
function isNoSetting(text: string): boolean {
  return (
    text === '' ||
    commentMark(text) !== null ||
    /^\[.{1,80}\]$|[:{]$|^[}\])][,;]?$/.test(text) ||
    isSurelyHeading(text)
  );
}

function listingOf(
  text: string,
  { known: forms, read, breaksAt }: ReadBy,
  echoes: readonly Stretch[],
): Listing {
  const { settings, headings, comments, openings, closings, left, lines: said, settingLines } = read;
  const lines = settingLines + left.length;
  const understood = lines === 0 ? 0 : settingLines / lines;
  return {
    text,
    forms,
    settings,
    headings,
    comments,
    openings,
    closings,
    left,
    lines: said,
    breaksAt,
    echoes,
    understood,
    refused: null,
  };
}

function emptyListing(text: string, forms: Forms | null, refused: string): Listing {
  return {
    text,
    forms: forms ?? noForms,
    settings: [],
    headings: [],
    comments: [],
    openings: [],
    closings: [],
    left: [],
    lines: [],
    breaksAt: null,
    echoes: [],
    understood: 0,
    refused,
  };
}
