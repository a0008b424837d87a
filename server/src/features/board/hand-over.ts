import type { Profile } from '../../board/profile/profile';
import { usualLine, type Written, writeBoardText } from '../../board/write';
import type { HandOver } from '../../catalog/model/hand-over';
import { replacementText } from '../../catalog/replacements';
import type { Finding } from '../../checks/report/finding';
import { messageOf } from '../../checks/report/render';
import { notLookedAt } from '../../craft/read-as';
import { valueText } from '../../craft/value-text';
import type { CraftView } from '../../craft/view';

/** A craft's text for its board, with what a person must know before it goes there. */
export interface PreparedText {
  readonly written: Written;
  /** Must-fix findings: they hold the text back, unless a reason is given. */
  readonly blocking: readonly Finding[];
  /** What was not checked, since the script is no whole craft; null: all was. It stands in the text and in the report. */
  readonly unchecked: string | null;
  /** One line each: what is rounded, left out or kept back. */
  readonly report: readonly string[];
}

export interface Preparation {
  readonly profile: Profile;
  readonly view: CraftView;
  readonly findings: readonly Finding[];
  /** Only what changed since then. */
  readonly since: HandOver | null;
  /** Why it goes out in spite of must-fix findings; null: it does not. */
  readonly reason: string | null;
}

/** Puts the text together, with the cautions that go along with it as comments. */
export function prepareBoardText({ profile, view, findings, since, reason }: Preparation): PreparedText {
  const concerning = findings.filter(({ pack }) => (pack ?? view.pack) === view.pack);
  const blocking = concerning.filter(({ level }) => level === 'must-fix');
  const accepted = concerning.filter((finding) => finding.accepted !== null);
  const unchecked = notLookedAt(view.craft.readAs());
  const replaced = view.catalog.replacements.map(replacementText);
  const cautions = [
    ...(unchecked === null ? [] : [unchecked]),
    'Propellers off until the last step. Estimates are estimates; local rules decide.',
    ...(view.pack === null ? [] : [`These are the settings with pack ${view.pack}.`]),
    ...accepted.map(({ check, accepted: why }) => `Accepted: ${check.title} (${check.id}): ${why ?? ''}`),
    ...replaced,
    ...(blocking.length > 0 && reason !== null
      ? [`In spite of ${counted(blocking.length, 'must-fix finding')}: ${reason}`]
      : []),
  ];
  const written = writeBoardText(profile, view, { cautions, since });
  const told = unchecked === null ? replaced : [unchecked, ...replaced];
  const report = [...told, ...reportOf(written, profile, view.pack, since)];
  return { written, blocking, report, unchecked };
}

function reportOf(
  written: Written,
  { title, text }: Profile,
  pack: string | null,
  since: HandOver | null,
): readonly string[] {
  const { roundings, refused, unnamed, tooLong, count } = written;
  return [
    `${counted(count, 'setting')} for ${title}${ofPack(pack)}${changedSince(since, pack)}.`,
    ...roundings.map(
      ({ path, given, held, found }) =>
        `Rounded: ${path} is ${valueText(given, found.parameter)}; the board will hold ${valueText(held, found.parameter)}.`,
    ),
    ...refused.map(({ path, reason }) => `Left out: ${path}: ${reason}.`),
    ...tooLong.map(
      ({ path }) =>
        `Left out: ${path}: its line is longer than the ${text.longestLine ?? usualLine} characters that the board reads.`,
    ),
    ...(unnamed.length === 0 ? [] : [`The board has no name for: ${unnamed.join(', ')}.`]),
    'What the script does not set stays as the board has it.',
  ];
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

export function blockedText(blocking: readonly Finding[]): readonly string[] {
  return [
    `${counted(blocking.length, 'must-fix finding')} ${blocking.length === 1 ? 'holds' : 'hold'} it back:`,
    ...blocking.map((finding) => `  ${finding.check.id}: ${messageOf(finding)}`),
  ];
}

export function counted(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${count} ${what}s`;
}
