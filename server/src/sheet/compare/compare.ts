import type { Catalog } from '../../catalog/catalog';
import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { membershipsIn } from '../../craft/memberships';
import { CraftView } from '../../craft/view';
import { removalEdits, settingEdits, whatIf } from '../what-if';
import { type ChangedMember, type ChangedSetting, type Side, settingChanges } from './changed-settings';
import { type FindingChanges, findingChanges, type RenderedFinding } from './finding-changes';
import { type MovedFigure, movedFigures } from './moved-figures';
import { type Matter, whatMatters } from './what-matters';

/** Two tunes side by side: what differs, what matters most of what it comes to, and the rest. */
export interface Comparison {
  readonly before: SideLabel;
  readonly after: SideLabel;
  readonly settings: readonly ChangedSetting[];
  readonly members: readonly ChangedMember[];
  readonly totals: Totals;
  readonly matters: readonly Matter[];
  /** What each change does by itself, where there are several that can be made alone. */
  readonly alone: readonly ChangeAlone[];
  /** With everything changed at once; without those that matter most. */
  readonly figures: readonly MovedFigure[];
  readonly findings: FindingChanges;
  readonly caution: string;
}

/** How much everything together moves. */
export interface Totals {
  readonly better: number;
  readonly worse: number;
  /** Figures of which nobody but the pilot can say whether they are better. */
  readonly otherwise: number;
  readonly gained: number;
  readonly lost: number;
}

/** A setting, or several of one member such as the kind and the cutoff of a filter, changed without the others. */
export interface ChangeAlone {
  readonly paths: readonly string[];
  readonly effect: Effect;
}

export interface SideLabel {
  readonly name: string;
  readonly file: string;
  readonly pack: string | null;
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
const mostTried = 120;

/**
 * Compares two crafts. `check` finds what is wrong with a craft; `mostAlone` is how many changes are told alone, each of
 * which has a craft of its own checked. A generator, so that a server can answer others in between: it gives nothing
 * until it returns the whole.
 */
export function* comparing(
  before: CheckedSide,
  after: CheckedSide,
  check: (craft: Craft) => readonly Finding[],
  mostAlone = mostTried,
): Generator<void, Comparison> {
  const { settings, members } = settingChanges(before, after);
  const stays = new Set(after.findings.map((finding) => finding.check.id));
  const alone: ChangeAlone[] = [];
  const changes = together(settings, before.craft.catalog);
  const isOne = changes.length + members.length === 1;
  for (const change of isOne ? [] : changes.slice(0, mostTried)) {
    if (alone.length === mostAlone) break;
    const effect = effectOf(change, before, stays, check);
    if (effect !== null) alone.push({ paths: change.map(({ path }) => path), effect });
    yield;
  }
  const figures = movedFigures(before.craft, after.craft, [[before.pack, after.pack]]);
  const findings = findingChanges(before.findings, after.findings);
  const matters = whatMatters(findings, figures);
  return {
    before: labelOf(before),
    after: labelOf(after),
    settings,
    members,
    totals: totalsOf(figures, findings),
    matters,
    alone,
    figures: figures.filter(
      (one) => !matters.some((matter) => matter.kind === 'moved' && matter.figure === one),
    ),
    findings: withoutMatters(findings, matters),
    caution: 'Estimates are estimates: hover test, then feel the motors.',
  };
}

/** What has been told is not told again. */
function withoutMatters({ gained, lost }: FindingChanges, matters: readonly Matter[]): FindingChanges {
  const isNew = (finding: RenderedFinding) =>
    !matters.some((matter) => matter.kind !== 'moved' && matter.finding === finding);
  return { gained: gained.filter(isNew), lost: lost.filter(isNew) };
}

function totalsOf(figures: readonly MovedFigure[], { gained, lost }: FindingChanges): Totals {
  const count = (wanted: MovedFigure['turn']) => figures.filter(({ turn }) => turn === wanted).length;
  return {
    better: count('better'),
    worse: count('worse'),
    otherwise: count(null),
    gained: gained.length,
    lost: lost.length,
  };
}

/** Settings of one member of a collection belong together: the kind of a filter says little without its cutoff. */
function together(
  settings: readonly ChangedSetting[],
  catalog: Catalog,
): readonly (readonly ChangedSetting[])[] {
  const groups = new Map<string, ChangedSetting[]>();
  for (const setting of settings) {
    const last = membershipsIn(setting.path, catalog).at(-1);
    const key = last === undefined ? setting.path : `${last.collection}.${last.member}`;
    groups.set(key, [...(groups.get(key) ?? []), setting]);
  }
  return [...groups.values()];
}

/** The same in one go. */
export function compare(...sides: Parameters<typeof comparing>): Comparison {
  const work = comparing(...sides);
  for (let step = work.next(); ; step = work.next()) if (step.done === true) return step.value;
}

/** `stays`: checks of the second's findings; what neither side has comes of a change that is only half made. */
function effectOf(
  change: readonly ChangedSetting[],
  { craft, pack, findings }: CheckedSide,
  stays: ReadonlySet<string>,
  check: (craft: Craft) => readonly Finding[],
): Effect | null {
  const trial = changedAlone(change, craft, pack);
  if (trial === null) return null;
  const moved = movedFigures(craft, trial, [[pack, pack]]);
  const { gained, lost } = findingChanges(findings, check(trial));
  return {
    moved: moved.slice(0, mostMoved),
    leftOut: Math.max(0, moved.length - mostMoved),
    gained: gained.map((finding) => (stays.has(finding.id) ? finding : { ...finding, isOnlyAlone: true })),
    lost,
  };
}

/** Null where one of the settings can't be made so without others. */
function changedAlone(change: readonly ChangedSetting[], craft: Craft, pack: string | null): Craft | null {
  let trial = craft;
  for (const { before: was, after: is } of change) {
    const isLeftOut = is.text === null || (is.isAssumed && !was.isAssumed);
    const edits = isLeftOut
      ? removalEdits(trial, pack, was.path)
      : settingEdits(trial, pack, was.path, is.text);
    if (edits === null) return null;
    trial = whatIf(trial, edits);
  }
  return trial;
}

function labelOf({ craft, pack, file }: CheckedSide): SideLabel {
  return { name: new CraftView(craft, pack).text('craft.name') ?? file, file, pack };
}
