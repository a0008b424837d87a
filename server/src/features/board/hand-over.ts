import type { Listing } from '../../board/listing/listing';
import { settingKey } from '../../board/listing/setting-key';
import { settingText } from '../../board/listing/setting-text';
import type { Profile } from '../../board/profile/profile';
import { perCentChange, roleOfOwn } from '../../board/profile/roles';
import { calledOnBoard } from '../../board/writing/called';
import { type Entries, entriesOf, type Rounding } from '../../board/writing/entries';
import { heldElsewhereText, leftOutText } from '../../board/writing/left-out-text';
import { handedBefore, type WrittenText, writeText } from '../../board/writing/write-text';
import type { HandOver } from '../../catalog/model/hand-over';
import { replacementText } from '../../catalog/replacements';
import type { Finding } from '../../checks/report/finding';
import { notLookedAt } from '../../craft/read-as';
import { valueText } from '../../craft/value-text';
import type { CraftView } from '../../craft/view';
import { isOwnPath } from '../../language/path-text';
import { messageIn, type TextsOfBoards } from './finding-words';

/** A craft's text for its board, with what a person must know before it goes there. */
export interface PreparedText {
  readonly written: WrittenText;
  readonly entries: Entries;
  /** Must-fix findings: they hold the text back, unless a reason is given. */
  readonly blocking: readonly Finding[];
  /** What was not checked, since the script is no whole craft; null: all was. It stands in the text and in the report. */
  readonly unchecked: string | null;
  /** One line each: what is not handed over first, then what is rounded or only assumed. */
  readonly report: readonly string[];
}

export interface Preparation {
  /** null: nobody has described the board; only its own settings go to it, over the captured text. */
  readonly profile: Profile | null;
  readonly captured: Listing | null;
  readonly view: CraftView;
  readonly findings: readonly Finding[];
  /** Only what changed since then. */
  readonly since: HandOver | null;
  /** Why it goes out in spite of must-fix findings; null: it does not. */
  readonly reason: string | null;
}

/** Puts the text together, with the cautions that go along with it as comments. */
export function prepareBoardText(preparation: Preparation): PreparedText {
  const { profile, captured, view, findings, since } = preparation;
  const concerning = findings.filter(({ pack }) => (pack ?? view.pack) === view.pack);
  const blocking = concerning.filter(({ level }) => level === 'must-fix');
  const unchecked = notLookedAt(view.craft.readAs());
  const cautions = cautionsOf(preparation, concerning, blocking.length, unchecked);
  const entries = entriesOf(profile, view);
  const written = writeText({ profile, entries, captured, since, cautions });
  const report = [
    ...(written.hasCautions
      ? [unchecked ?? [], view.catalog.replacements.map(replacementText)].flat()
      : cautions),
    ...leftOutText(entries, written, view),
    ...reportOf(written, entries, preparation),
  ];
  return { written, entries, blocking, report, unchecked };
}

function cautionsOf(
  { view, reason }: Preparation,
  findings: readonly Finding[],
  blocking: number,
  unchecked: string | null,
): readonly string[] {
  const accepted = findings.filter((finding) => finding.accepted !== null);
  return [
    ...(unchecked === null ? [] : [unchecked]),
    'Propellers off until the last step. Estimates are estimates; local rules decide.',
    ...(view.pack === null ? [] : [`These are the settings with pack ${view.pack}.`]),
    ...accepted.map(({ check, accepted: why }) => `Accepted: ${check.title} (${check.id}): ${why ?? ''}`),
    ...view.catalog.replacements.map(replacementText),
    ...(blocking > 0 && reason !== null
      ? [`In spite of ${counted(blocking, 'must-fix finding')}: ${reason}`]
      : []),
  ];
}

function reportOf(
  { count, changes, removed, isDocument, isAssumed }: WrittenText,
  entries: Entries,
  { profile, view, since }: Preparation,
): readonly string[] {
  const title = profile?.title ?? 'the board';
  return [
    `${counted(count, 'setting')} for ${title}${ofPack(view.pack)}${changedSince(since, view.pack)}.`,
    ...(isDocument ? changes.map(changeText) : []),
    ...rolesChanged(entries, since, profile, view),
    ...removed.map((one) => `No longer set: ${settingText(one)}; the board keeps ${one.value}.`),
    ...entries.roundings.map((one) => roundedText(one, entries, view)),
    ...(isAssumed
      ? ['Nobody has said how this board is told a setting: the lines are written as it lists them.']
      : []),
    ...heldElsewhereText(entries),
    'What the script does not set stays as the board has it.',
  ];
}

/** `Rounded: calm corner (gyro.filter.1.cutoff) is 225 Hz; the board will hold 22 (220 Hz).` */
function roundedText({ path, given, held, found }: Rounding, { entries }: Entries, view: CraftView): string {
  const own = entries.filter((entry) => entry.path === path);
  const written = own.map(({ value }) => value).join(' and ');
  const [before, after] = [given, held].map((value) => valueText(value, found.parameter));
  const shown =
    after?.split(' ')[0] === written ? written + after.slice(written.length) : `${written} (${after})`;
  return `Rounded: ${calledOnBoard(view, path, own)} is ${before}; the board will hold ${shown}.`;
}

/** Settings of which only the role is known, with how much more or less they are than was handed over. */
function rolesChanged(
  { entries }: Entries,
  since: HandOver | null,
  profile: Profile | null,
  view: CraftView,
): readonly string[] {
  if (since === null || profile === null) return [];
  const before = handedBefore(since);
  return entries.flatMap((entry) => {
    const role = isOwnPath(entry.path) ? roleOfOwn(profile.board, entry.path, view.catalog) : undefined;
    const was = before.get(settingKey(entry));
    const change = was === undefined ? null : perCentChange(was, entry.value, profile.manner.decimal);
    if (role === undefined || was === undefined || change === null) return [];
    return [
      `${role.parameter.title}, by its role: ${settingText(entry)} is ${change} (${was} before, ${entry.value} now).`,
    ];
  });
}

function changeText({ entry, before, after }: WrittenText['changes'][number]): string {
  return `Changed: ${settingText(entry)} from ${before} to ${after}.`;
}

/** Empty where the craft has no packs. */
function ofPack(pack: string | null): string {
  return pack === null ? '' : `, pack ${pack}`;
}

function changedSince(since: HandOver | null, pack: string | null): string {
  if (since === null) return '';
  const other = since.pack === pack || since.pack === null ? '' : `, of pack ${since.pack}`;
  return `, changed since the last hand-over${other}`;
}

export function blockedText(blocking: readonly Finding[], texts: TextsOfBoards): readonly string[] {
  return [
    `${counted(blocking.length, 'must-fix finding')} ${blocking.length === 1 ? 'holds' : 'hold'} it back:`,
    ...blocking.map((finding) => `  ${finding.check.id}: ${messageIn(texts, finding)}`),
  ];
}

export function counted(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${count} ${what}s`;
}
