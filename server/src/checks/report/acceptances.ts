import type { Check, Level } from '../../catalog/model/check';
import { suggestWord } from '../../catalog/suggest';
import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { Script } from '../../craft/script';
import type { PlacedLine } from '../../craft/setting';
import type { Acceptance } from '../../language/ast';
import { isOwnPath } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import { changedFinding, type Finding, type Place } from './finding';
import { standing } from './place';

/** A finding before its line's acceptance is looked at. */
export interface Raised {
  readonly finding: Finding;
  readonly acceptedOn: PlacedLine;
}

/** Findings in whatever order, and those among them whose line accepts their check. */
export interface WithAcceptances {
  readonly findings: readonly Finding[];
  readonly accepting: readonly Raised[];
}

/** Whether a check is about acceptances themselves: accepting what it says would be one more. */
export function isAboutAcceptances({ id }: Pick<Check, 'id'>): boolean {
  return /^line\/accept(ance)?-/.test(id);
}

/** What an accepted finding is told as. */
function quieted(level: Exclude<Level, 'must-fix'>): Level {
  return level === 'risk' ? 'note' : 'tidy';
}

/** Quiets risks and notes that their line accepts. */
export function withAcceptances(raised: readonly Raised[]): WithAcceptances {
  const accepting: Raised[] = [];
  const findings = raised.map((one) => {
    const { finding, acceptedOn } = one;
    const { acceptance } = acceptedOn.line.statement;
    if (acceptance === null || acceptance.check !== finding.check.id) return finding;
    accepting.push(one);
    const { level } = finding;
    return level === 'must-fix'
      ? finding
      : changedFinding(finding, { level: quieted(level), accepted: acceptance.reason });
  });
  return { findings, accepting };
}

/**
 * Reports acceptances that accept nothing, in the script and in the board's text that it includes. `accepting`: the
 * findings whose line accepts their check.
 */
export function complaints(craft: Craft, accepting: readonly Raised[]): readonly Finding[] {
  const { root } = craft;
  const text = craft.boardText();
  return [
    ...root.lines(inputKeys.acceptance).flatMap((line) => complaintsAbout(craft, root, line, accepting)),
    // What else is wrong with them, the text tells itself.
    ...(text === undefined || text === root ? [] : text.lines(inputKeys.acceptance)).flatMap((line) =>
      complaintsAbout(craft, text ?? root, line, accepting).filter(({ check }) => check.id === unused),
    ),
  ];
}

const unused = 'line/accept-unused';

function complaintsAbout(
  craft: Craft,
  script: Script,
  line: ScriptLine,
  accepting: readonly Raised[],
): readonly Finding[] {
  const { acceptance } = line.statement;
  const id = acceptance === null ? null : complaintId(craft, acceptance, accepting, line);
  if (acceptance === null || id === null) return [];
  const place = { script, line, start: acceptance.start, end: acceptance.end };
  return [complaint(craft, id, acceptance, place)];
}

function complaintId(
  craft: Craft,
  acceptance: Acceptance,
  accepting: readonly Raised[],
  line: ScriptLine,
): string | null {
  if (craft.catalog.check(acceptance.check) === undefined) return 'line/accept-unknown';
  // By line: equal lines share one acceptance.
  const here = accepting.filter(({ acceptedOn }) => acceptedOn.line === line);
  if (here.some(({ finding }) => finding.level === 'must-fix')) return 'line/accept-must-fix';
  if (craft.catalog.isSilent(acceptance.check)) return unused;
  // A part that is included elsewhere may accept what shows only in a whole craft; of a setting, nothing shows before
  // somebody has said what it means.
  const mayShow = here.length > 0 || !craft.isWhole() || isOwnPath(line.settingPath ?? '');
  return mayShow ? null : unused;
}

function complaint(craft: Craft, id: string, acceptance: Acceptance, place: Place): Finding {
  const { catalog } = craft;
  const check = catalog.check(id);
  if (check === undefined) throw new Error(`the catalogue has no check ${id}`);
  const near = id === 'line/accept-unknown' ? suggestWord(catalog.checks.keys(), acceptance.check) : [];
  const start = place.line.text.indexOf(acceptance.check, place.start);
  const written = { ...place, start, end: start + acceptance.check.length };
  const renamed = near.map((name) => ({
    title: 'Write {to}',
    values: { to: name },
    set: null,
    edits: [{ place: written, newText: name }],
  }));
  const shown = standing(craft, place);
  const removal = { title: 'Remove the acceptance', values: {}, set: null, edits: [{ place, newText: '' }] };
  return {
    check,
    level: check.level,
    values: {
      check: acceptance.check,
      reason: acceptance.reason,
      suggestion: near.join(', '),
      why: catalog.isSilent(acceptance.check) ? 'this workspace has switched it off' : '',
    },
    place: shown.place,
    related: shown.elsewhere === null ? [] : [{ place: shown.elsewhere, message: 'It is accepted here.' }],
    pack: null,
    fixes: near.length > 0 ? renamed : [removal],
    accepted: null,
  };
}
