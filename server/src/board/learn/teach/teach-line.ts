import type { Forms } from '../../../catalog/model/board-forms';
import { frameOf } from '../../listing/forms/frame';
import { readHeading } from '../../listing/forms/heading';
import { templateOf } from '../../listing/forms/template';
import type { ListedSetting, Listing, Stretch } from '../../listing/listing';
import { linesToRead, readListing } from '../../listing/read-listing';
import type { ListingLine } from '../../listing/text/line';
import { type MoreForms, moreFormsFor, splitsOf } from './candidates';
import { type Lesson, type LessonOutcome, partName, type TaughtKind } from './lesson';

/**
 * Makes a form of a line of which a pilot says what it is, so that all lines like it are understood from then on. It
 * is taken only where every other setting of the listing is read as before.
 */
export function teachLine(before: Listing, lesson: Lesson): LessonOutcome {
  const { text, forms } = before;
  const { as, part } = lesson;
  const line = linesToRead(text, forms).lines.find(({ number }) => number === lesson.line);
  if (line === undefined || line.text.trim() === '') return refused('There is nothing in this line.');
  const inDocument = documentReason(forms, as);
  if (inDocument !== null) return refused(inDocument);
  const at = line.whole();
  if (isReadAs(before, as, at, part)) return { kind: 'taught', forms, alike: [] };
  if (part !== null && !holds(line.text, as, part)) return refused(`The line does not hold "${part}".`);
  let inTheWay: string | null = null;
  for (const base of formsWithout(forms, line)) {
    for (const more of moreFormsFor(as, line.text, part)) {
      const added = withMore(base, more);
      if (added === null)
        return refused('Its forms are as many as a profile holds: teach it by fewer lines.');
      // The whole text may be long: it is read by forms alone that read the line.
      if (as === 'setting' && readListing(line.text, added).settings.length !== 1) continue;
      const after = readListing(text, added);
      if (!isReadAs(after, as, at, part)) continue;
      const other = changedElsewhere(before, after, at, likeIt(before, at, added, more));
      if (other === null) return { kind: 'taught', forms: added, alike: newlyRead(before, after, as, at) };
      inTheWay ??= other;
    }
  }
  return unclear(lesson, inTheWay);
}

/** Whether a form by itself finds a setting in a line. */
function readsAlone(form: Forms['lines'][number], forms: Forms, text: string): boolean {
  const alone = { ...forms, lines: [form], headings: [], comments: [], opening: [], closing: [] };
  return readListing(text, alone).settings.length > 0;
}

/** The forms without those by which the line itself is no setting, comment or heading; then without all that fit it. */
function formsWithout(forms: Forms, line: ListingLine): readonly Forms[] {
  const { text } = line;
  const start = text.trimStart();
  const isNoFrame = (form: string) => frameOf([templateOf(form)], line, text) === null;
  const unframed = {
    ...forms,
    opening: forms.opening.filter(isNoFrame),
    closing: forms.closing.filter(isNoFrame),
  };
  const bare = {
    ...unframed,
    headings: forms.headings.filter((form) => readHeading([templateOf(form)], text) === null),
    comments: forms.comments.filter((mark) => !start.startsWith(mark)),
    lines: forms.lines.filter((form) => !readsAlone(form, forms, text)),
  };
  return JSON.stringify(bare) === JSON.stringify(unframed) ? [unframed] : [unframed, bare];
}

function holds(line: string, as: TaughtKind, part: string): boolean {
  if (line.includes(part)) return true;
  return (
    as === 'setting' && splitsOf(part).some(([name, value]) => line.includes(name) && line.includes(value))
  );
}

/**
 * Where the lines begin that are like one that was read as a setting, but not as what it is: they were misread with
 * it. None where it was read as nothing.
 */
function likeIt(before: Listing, at: Stretch, forms: Forms, { lines }: MoreForms): ReadonlySet<number> {
  const wasSetting = before.settings.some((one) => isIn(at, one.at.name));
  if (!wasSetting || lines === undefined) return new Set();
  const { text, settings } = readListing(before.text, { ...forms, lines: [...lines] });
  return new Set(settings.map((one) => lineOf(text, one.at.name)));
}

function refused(reason: string, asks = false): LessonOutcome {
  return { kind: 'refused', reason, asks };
}

function unclear({ as, part }: Lesson, inTheWay: string | null): LessonOutcome {
  if (inTheWay !== null)
    return refused(`By a form of this line, ${inTheWay} would be read otherwise than now.`, part === null);
  if (part !== null) return refused(`With "${part}" for ${partName[as]}, it still can't be read as a ${as}.`);
  const help =
    as === 'heading' ? ' A heading without marks has a blank line before it and settings below.' : '';
  return refused(`The line alone does not show ${partName[as]}: say it.${help}`, true);
}

const documents = { json: 'a JSON', yaml: 'a YAML', xml: 'an XML' } as const;

/** Lines of a document mean what its kind says. */
function documentReason({ container }: Forms, as: TaughtKind): string | null {
  if (container === 'json' || container === 'yaml' || container === 'xml')
    return `The listing is ${documents[container]} document: mend the line, for it is none of it.`;
  return container === 'table' && as === 'setting'
    ? 'The listing is a table: its settings are rows of as many cells as it has columns.'
    : null;
}

const moreKinds = ['lines', 'beside', 'headings', 'comments'] as const;
const most: Readonly<Record<keyof MoreForms, number>> = { lines: 32, beside: 32, headings: 16, comments: 8 };

/** The forms with more behind them; null where there are too many. */
function withMore(forms: Forms, more: MoreForms): Forms | null {
  const added = {
    lines: withNew(forms.lines, more.lines),
    beside: withNew(forms.beside, more.beside),
    headings: withNew(forms.headings, more.headings),
    comments: withNew(forms.comments, more.comments),
  };
  const isTooMany = moreKinds.some((kind) => added[kind].length > most[kind]);
  return isTooMany ? null : { ...forms, ...added };
}

function withNew<T>(held: readonly T[], more: readonly T[] = []): T[] {
  const there = new Set(held.map((one) => JSON.stringify(one)));
  return [...held, ...more.filter((one) => !there.has(JSON.stringify(one)))];
}

function isIn({ start, end }: Stretch, place: Stretch): boolean {
  return place.start >= start && place.start <= end;
}

function isReadAs(listing: Listing, as: TaughtKind, at: Stretch, part: string | null): boolean {
  if (!linesReadAs(listing, as).has(lineOf(listing.text, at))) return false;
  if (part === null || as === 'comment') return true;
  const { text, settings, headings } = listing;
  const holdsPart = (place: Stretch) => text.slice(place.start, place.end) === part;
  if (as === 'heading') return headings.some((one) => isIn(at, one.at) && holdsPart(one.at));
  return settings.some(
    (one) =>
      isIn(at, one.at.name) &&
      (holdsPart(one.at.value) ||
        part === inQuotes(one) ||
        splitsOf(part).some(([name, value]) => isNamed(one, name, listing) && value === one.value)),
  );
}

/** Whether a setting has this name in its line, which may be a path; its other groups are those that were open. */
function isNamed(setting: ListedSetting, said: string, { forms, settings, lines }: Listing): boolean {
  const { groups, name } = setting;
  const index = settings.indexOf(setting);
  const open = lines.find(({ first, end }) => first <= index && index < end)?.groups ?? [];
  const steps = forms.path === undefined ? [said] : said.split(forms.path);
  return JSON.stringify([...open, ...steps]) === JSON.stringify([...groups, name]);
}

/** Where the lines begin that are comments, headings, or one setting each. */
function linesReadAs({ text, settings, headings, comments }: Listing, as: TaughtKind): ReadonlySet<number> {
  if (as === 'comment') return new Set(comments.map((place) => lineOf(text, place)));
  if (as === 'heading') return new Set(headings.map((one) => lineOf(text, one.at)));
  // Several are words that stand alone: whoever says that the line is a setting means all of it.
  const [once, again] = [new Set<number>(), new Set<number>()];
  for (const { at } of settings) {
    const line = lineOf(text, at.name);
    (once.has(line) ? again : once).add(line);
  }
  for (const line of again) once.delete(line);
  return once;
}

function inQuotes({ style, value }: ListedSetting): string | null {
  return style.kind === 'quoted' ? style.mark + value + style.mark : null;
}

/** What of the other lines would be read otherwise, in a few words; null where nothing is. */
function changedElsewhere(
  before: Listing,
  after: Listing,
  at: Stretch,
  alike: ReadonlySet<number>,
): string | null {
  const now = new Map(after.settings.map((one) => [one.at.name.start, one]));
  const lost = before.settings.find((one) => {
    const same = now.get(one.at.name.start);
    // Names that stand alone may be words of lines like the one that is taught.
    return (
      one.style.kind !== 'presence' &&
      !isIn(at, one.at.name) &&
      !alike.has(lineOf(before.text, one.at.name)) &&
      (same?.name !== one.name || same.value !== one.value)
    );
  });
  if (lost !== undefined) return `the setting ${lost.name}`;
  const unread = new Set(before.left.map(({ number }) => number));
  const left = after.left.find((one) => !unread.has(one.number) && !isFrame(before, one.at));
  if (left !== undefined) return `line ${left.number + 1}`;
  const places = new Set(after.settings.map((one) => lineOf(before.text, one.at.name)));
  const known = [...before.headings.map((one) => one.at), ...before.comments];
  const turned = known.find((place) => !isIn(at, place) && places.has(lineOf(before.text, place)));
  return turned === undefined ? null : `"${before.text.slice(turned.start, turned.end)}"`;
}

function isFrame({ openings, closings }: Listing, at: Stretch): boolean {
  return [...openings, ...closings].some((one) => one.at.start === at.start);
}

/** Where the line begins that a place stands in. */
function lineOf(text: string, { start }: Stretch): number {
  return Math.max(text.lastIndexOf('\n', start - 1), text.lastIndexOf('\r', start - 1)) + 1;
}

/** The lines that were no setting, comment or heading before, and are now read as what was taught. */
function newlyRead(before: Listing, after: Listing, as: TaughtKind, at: Stretch): readonly number[] {
  const numbers = new Map(
    linesToRead(before.text, before.forms).lines.map((one) => [one.whole().start, one.number]),
  );
  const now = linesReadAs(after, as);
  return [...before.left, ...before.openings, ...before.closings]
    .filter((one) => one.at.start !== at.start && now.has(lineOf(before.text, one.at)))
    .flatMap((one) => numbers.get(one.at.start) ?? [])
    .sort((one, other) => one - other);
}
