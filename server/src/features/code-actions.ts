import type { Finding, Fix } from '../checks/report/finding';
import { fixTitle } from '../checks/report/render';
import { acceptance } from './accept-risk';
import { editsOf } from './fix-edits';
import { type Range, rangeOf } from './range';
import type { Snapshot } from './snapshot';
import type { FileEdits } from './text-edits';

/** Something that the pilot can have done about a finding. */
export interface CodeAction {
  readonly title: string;
  /** help: a fix that writes what the pilot is to look at or choose. */
  readonly kind: 'fix' | 'help' | 'accept';
  /** null: a risk is accepted. */
  readonly fix: Fix | null;
  /** The finding that it is for; several only where one check says the same of several packs. */
  readonly findings: readonly Finding[];
  /** Whether it is the only fix of its finding, and no help. */
  readonly isPreferred: boolean;
  readonly edits: readonly FileEdits[];
}

/** A problem as the client knows it. */
export interface ShownProblem {
  readonly id: string;
  readonly range: Range;
}

/**
 * What can be done about the findings in a range. With `shown` only about those of them that the client
 * asks for; a shown problem that is gone has no answer, since actions come from what is found now.
 */
export function codeActions(
  snapshot: Snapshot,
  range: Range,
  shown: readonly ShownProblem[] = [],
): readonly CodeAction[] {
  const asked = snapshot
    .findings()
    .filter((finding) => touches(rangeOf(finding.place), range))
    .filter((finding) => shown.length === 0 || shown.some((problem) => isShownAs(finding, problem)));
  return acceptingLast(joined(asked.flatMap((finding) => actionsFor(finding))));
}

/** What mends comes before what only says that it is fine. */
export function acceptingLast<T extends Pick<CodeAction, 'kind'>>(actions: readonly T[]): readonly T[] {
  return [
    ...actions.filter(({ kind }) => kind !== 'accept'),
    ...actions.filter(({ kind }) => kind === 'accept'),
  ];
}

/** What can be done about one finding. */
export function actionsFor(finding: Finding): readonly CodeAction[] {
  const { fixes } = finding;
  const accept = acceptance(finding);
  const actions = fixes.map((fix) => fixAction(finding, fix, fixes.length === 1 && fix.isHelp !== true));
  if (accept === null) return actions;
  return [...actions, { ...accept, kind: 'accept', fix: null, findings: [finding], isPreferred: false }];
}

/** What would be offered once for each pack is offered once. */
function joined(actions: readonly CodeAction[]): readonly CodeAction[] {
  const known = new Map<string, CodeAction>();
  for (const action of actions) {
    const key = JSON.stringify([action.findings[0]?.check.id, action.title, action.edits]);
    const same = known.get(key);
    known.set(
      key,
      same === undefined ? action : { ...same, findings: [...same.findings, ...action.findings] },
    );
  }
  return [...known.values()];
}

function fixAction(finding: Finding, fix: Fix, isPreferred: boolean): CodeAction {
  const edits = editsOf(fix);
  return {
    title: fixTitle(fix),
    kind: fix.isHelp === true ? 'help' : 'fix',
    fix,
    findings: [finding],
    isPreferred,
    edits,
  };
}

/** Whether the client means this finding by a problem. */
export function isShownAs({ check, place }: Finding, { id, range }: ShownProblem): boolean {
  const own = rangeOf(place);
  return check.id === id && compare(own.start, range.start) === 0 && compare(own.end, range.end) === 0;
}

/** Whether two ranges share a place; the ends count, since a cursor stands between two characters. */
function touches(one: Range, other: Range): boolean {
  return compare(one.start, other.end) <= 0 && compare(other.start, one.end) <= 0;
}

function compare(one: Range['start'], other: Range['start']): number {
  return one.line - other.line || one.character - other.character;
}
