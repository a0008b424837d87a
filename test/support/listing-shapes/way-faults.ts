import type { ListedSetting, Listing } from '../../../server/src/board/listing/listing';
import { ownPath } from '../../../server/src/board/listing/own-path';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { settingKey } from '../../../server/src/board/listing/setting-key';
import { sameValue } from '../../../server/src/board/listing/value-look';
import type { WrittenText } from '../../../server/src/board/writing/write-text';
import { pathText } from '../../../server/src/language/path-text';
import { disagreements } from './agreement';
import { withAnotherValue, withoutSetting } from './edits';
import { boardOf, type DrawnBoard, type Plan } from './generate';
import { printed } from './print';
import { unequal, Way } from './way';

/**
 * What goes wrong on the way of a listing: learned, read, checked, written and proved, then with one value changed on
 * the board, in the script, and one setting less. Null for one that is not read as it is meant, which others look at.
 */
export async function wayFaults(plan: Plan): Promise<readonly string[] | null> {
  const board = boardOf(plan);
  const listing = printed(board);
  if (disagreements(board.shape, listing, readListing(listing.text, null)).length > 0) return null;
  const way = new Way(listing.text);
  const faults = [...way.faults, ...(await roundFaults(way, board))];
  return faults.length > 0 ? faults : changeFaults(way, board);
}

/** As it is: nothing to mend, written as it stands, proved equal. */
async function roundFaults(way: Way, board: DrawnBoard): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const { view, mustFix } of [await way.including(), await way.made()]) {
    const entries = way.entries(view);
    const written = way.written(entries);
    faults.push(
      ...mustFix,
      ...written.unwritten.map(({ entry, reason }) => `${entry.path} not written: ${reason}`),
      ...writtenFaults(way, board, written),
      ...unequal(way.proof(entries, way.text)),
      // Another time, the same board prints the same in a session that left nothing but what the board says last.
      ...unequal(way.proof(entries, printed({ ...board, dirt: closing(board) }).text)),
    );
  }
  return faults;
}

function closing({ dirt }: DrawnBoard): DrawnBoard['dirt'] {
  return dirt.filter((kind) => kind === 'banner');
}

/** Every settings line comes back character by character, without what a session left around it. */
function writtenFaults(way: Way, board: DrawnBoard, written: WrittenText): readonly string[] {
  if (written.isDocument) return written.text === way.text ? [] : ['the document is another one'];
  const clean = printed({ ...board, dirt: [] });
  const lines = linesOf(clean.text);
  const numbers = [...new Set(clean.settings.map(({ line }) => line))].sort((one, other) => one - other);
  const all = linesOf(written.text);
  let at = 0;
  for (const number of numbers) {
    const line = lines[number] ?? '';
    // Where a session may have counted the lines, nobody can tell whose the numbers are.
    const bare = board.plan.shape === 'numbered' ? line.replace(/^\W?\d+\W*\s*/, '') : line;
    const found = all.findIndex((one, index) => index >= at && (one === line || one === bare));
    if (found < 0)
      return [`not written: ${JSON.stringify(line)}, but ${JSON.stringify(all.slice(at, at + 3))}`];
    at = found + 1;
  }
  return [];
}

function linesOf(text: string): readonly string[] {
  return text.split(/\r\n?|\n/).map((line) => line.trimEnd());
}

/** One value of a drawn board is another: which setting that is, and how it is read then. */
interface Change {
  readonly board: DrawnBoard;
  readonly index: number;
  readonly text: string;
  readonly before: ListedSetting;
  readonly after: ListedSetting;
}

async function changeFaults(way: Way, board: DrawnBoard): Promise<readonly string[]> {
  const change = changeOf(way, board);
  if (change === null) return [];
  return [
    ...(await onBoardFaults(way, change)),
    ...(await inScriptFaults(way, change)),
    ...(await removedFaults(way, change)),
  ];
}

/** Null where none of some settings has another value of its look, or the change makes another listing of it. */
function changeOf(way: Way, board: DrawnBoard): Change | null {
  const listing = printed(board);
  for (let tries = 0; tries < 6; tries += 1) {
    const index = (board.plan.choices + 7 * tries) % board.items.length;
    const other = withAnotherValue(board, index, board.plan.choices + tries);
    const before = way.captured.settings.find(
      ({ at }) => at.name.end === listing.settings[index]?.at.name.end,
    );
    if (other === null || before === undefined) continue;
    const { text } = printed(other);
    const after = way.read(text).settings.find((one) => settingKey(one) === settingKey(before));
    if (after !== undefined && !sameValue(before.value, after.value))
      return { board, index, text, before, after };
  }
  return null;
}

/** Found at its place, and nothing else. */
async function onBoardFaults(way: Way, { text, before, after }: Change): Promise<readonly string[]> {
  const { view } = await way.including();
  const proof = way.proof(way.entries(view), text);
  const [row, ...more] = proof.rows.filter(({ verdict }) => verdict !== 'equal');
  const isFound =
    row?.verdict === 'different' &&
    settingKey(row) === settingKey(before) &&
    row.at?.start === after.at.value.start;
  return isFound && more.length === 0 && proof.left.length === 0
    ? []
    : [`${settingKey(before)} became ${after.value}, but: ${unequal(proof).join('; ')}`];
}

/** Written alone; of a document all, with a list of one change. The board that took it proves equal. */
async function inScriptFaults(way: Way, { text, before, after }: Change): Promise<readonly string[]> {
  const { view } = await way.including();
  const path = ownPath(before);
  const value = after.value === '' ? '""' : after.value;
  const more = `[${pathText(path.slice(0, -1))}]\n${pathText(path.slice(-1))} = ${value}\n`;
  const changed = await way.includingWith(more);
  const entries = way.entries(changed.view);
  const written = way.written(entries, way.record(way.entries(view)));
  const [refused] = written.unwritten;
  // How it is turned off, only a listing in which it is off can tell.
  const isUntold = before.style.kind === 'presence' && before.style.negation === '';
  if (refused !== undefined) return isUntold ? [] : [`${more} not written: ${refused.reason}`];
  const read = way.read(written.text);
  const isRight = written.isDocument
    ? written.changes.length === 1 && said(read) === said(way.read(text))
    : isAlone(way.captured, read, before, after) || isLineOf(text, written.text);
  return [
    ...changed.mustFix,
    ...(isRight ? [] : [`${more} is written as ${JSON.stringify(written.text)}`]),
    ...unequal(way.proof(entries, text)),
  ];
}

/** One line alone may look like another thing, such as a time stamp: it is right as the board would print it. */
function isLineOf(captured: string, written: string): boolean {
  const linesOf = (text: string) => text.split(/\r\n?|\n/).map((line) => line.trim());
  const [line = '', ...more] = linesOf(written).filter((one) => one !== '');
  return line !== '' && more.length === 0 && linesOf(captured).includes(line);
}

function said({ settings }: Listing): string {
  return settings.map((one) => `${settingKey(one)} ${one.value}`).join('\n');
}

/** A line that holds several settings is written with all of them. */
function isAlone(
  captured: Listing,
  { settings }: Listing,
  before: ListedSetting,
  after: ListedSetting,
): boolean {
  const at = captured.settings.indexOf(before);
  const line = captured.lines.find(({ first, end }) => first <= at && at < end);
  return (
    line !== undefined &&
    settings.length === line.end - line.first &&
    settings.some(({ name, value }) => name === before.name && sameValue(value, after.value))
  );
}

/** A capture that lacks a setting lacks only that one; a script that lacks it tells that the board keeps it. */
async function removedFaults(way: Way, { board, index, before }: Change): Promise<readonly string[]> {
  const isAgain = way.captured.settings.some(
    (one) =>
      one !== before && settingKey({ ...one, occurrence: 1 }) === settingKey({ ...before, occurrence: 1 }),
  );
  if (isAgain || board.items.length < 4) return [];
  const { view } = await way.including();
  const entries = way.entries(view);
  const proof = way.proof(entries, printed(withoutSetting(board, index)).text);
  const wrong = proof.rows.filter(({ verdict }) => verdict !== 'equal');
  const less = {
    ...entries,
    entries: entries.entries.filter((one) => settingKey(one) !== settingKey(before)),
  };
  const { removed } = way.written(less, way.record(entries));
  return [
    ...(wrong.length === 1 && wrong[0]?.verdict === 'missing'
      ? []
      : [`without ${settingKey(before)}: ${unequal(proof).join('; ')}`]),
    ...(removed.length === 1 && removed[0]?.value === before.value
      ? []
      : [`${settingKey(before)} is not told`]),
  ];
}
