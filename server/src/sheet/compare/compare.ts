import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { removalEdits, settingEdits, whatIf } from '../what-if';
import { type ChangedMember, type ChangedSetting, type Side, settingChanges } from './changed-settings';
import { type FindingChanges, findingChanges } from './finding-changes';
import { type MovedFigure, movedFigures } from './moved-figures';

/** Two tunes side by side: what differs, what each difference does, and what it comes to. */
export interface Comparison {
  readonly before: SideLabel;
  readonly after: SideLabel;
  readonly settings: readonly SettingWithEffect[];
  readonly members: readonly ChangedMember[];
  /** With everything changed at once. */
  readonly figures: readonly MovedFigure[];
  readonly findings: FindingChanges;
  readonly caution: string;
}

export interface SideLabel {
  readonly name: string;
  readonly file: string;
  readonly pack: string | null;
}

export interface SettingWithEffect extends ChangedSetting {
  /** What this one change alone does to the first; null where it can't be made alone. */
  readonly effect: Effect | null;
}

export interface Effect extends FindingChanges {
  /** The worst and largest; `leftOut` more move as well. */
  readonly moved: readonly MovedFigure[];
  readonly leftOut: number;
}

/** A side with its file's name for people, and what was found in it. */
export interface CheckedSide extends Side {
  readonly file: string;
  readonly findings: readonly Finding[];
}

const mostMoved = 5;
/** Beyond this many differences two scripts are two craft, and each change alone says little. */
const mostEffects = 120;

/**
 * Compares two crafts. `check` finds what is wrong with a craft. A generator, so that a server can answer others
 * in between: it gives nothing until it returns the whole.
 */
export function* comparing(
  before: CheckedSide,
  after: CheckedSide,
  check: (craft: Craft) => readonly Finding[],
): Generator<void, Comparison> {
  const { settings, members } = settingChanges(before, after);
  const stays = new Set(after.findings.map((finding) => finding.check.id));
  const withEffects: SettingWithEffect[] = [];
  for (const setting of settings) {
    const isTried = withEffects.length < mostEffects;
    withEffects.push({ ...setting, effect: isTried ? effectOf(setting, before, stays, check) : null });
    yield;
  }
  return {
    before: labelOf(before),
    after: labelOf(after),
    settings: withEffects,
    members,
    figures: movedFigures(before.craft, after.craft, [[before.pack, after.pack]]),
    findings: findingChanges(before.findings, after.findings),
    caution: 'Estimates are estimates: hover test, then feel the motors.',
  };
}

/** The same in one go. */
export function compare(...sides: Parameters<typeof comparing>): Comparison {
  const work = comparing(...sides);
  for (let step = work.next(); ; step = work.next()) if (step.done === true) return step.value;
}

/** `stays`: checks of the second's findings; what neither side has comes of a change that is only half made. */
function effectOf(
  { before: was, after: is }: ChangedSetting,
  { craft, pack, findings }: CheckedSide,
  stays: ReadonlySet<string>,
  check: (craft: Craft) => readonly Finding[],
): Effect | null {
  const isLeftOut = is.text === null || (is.isAssumed && !was.isAssumed);
  const edits = isLeftOut
    ? removalEdits(craft, pack, was.path)
    : settingEdits(craft, pack, was.path, is.text);
  if (edits === null) return null;
  const trial = whatIf(craft, edits);
  const moved = movedFigures(craft, trial, [[pack, pack]]);
  const { gained, lost } = findingChanges(findings, check(trial));
  return {
    moved: moved.slice(0, mostMoved),
    leftOut: Math.max(0, moved.length - mostMoved),
    gained: gained.map((finding) => (stays.has(finding.id) ? finding : { ...finding, isOnlyAlone: true })),
    lost,
  };
}

function labelOf({ craft, pack, file }: CheckedSide): SideLabel {
  return { name: new CraftView(craft, pack).text('craft.name') ?? file, file, pack };
}
