import type { Catalog } from '../../catalog/catalog';
import { suggestWord } from '../../catalog/suggest';
import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { PlacedLine } from '../../craft/setting';
import type { Acceptance } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { changedFinding, type Finding, type Place } from './finding';

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

/** Quiets risks that their line accepts. */
export function withAcceptances(raised: readonly Raised[]): WithAcceptances {
  const accepting: Raised[] = [];
  const findings = raised.map((one) => {
    const { finding, acceptedOn } = one;
    const { acceptance } = acceptedOn.line.statement;
    if (acceptance === null || acceptance.check !== finding.check.id) return finding;
    accepting.push(one);
    if (finding.level === 'must-fix') return finding;
    return changedFinding(finding, { level: 'note', accepted: acceptance.reason });
  });
  return { findings, accepting };
}

/** Reports acceptances that accept nothing. `accepting`: the findings whose line accepts their check. */
export function complaints(craft: Craft, accepting: readonly Raised[]): readonly Finding[] {
  const { root, catalog } = craft;
  return root.lines(inputKeys.acceptance).flatMap((line) => {
    const { acceptance } = line.statement;
    if (acceptance === null) return [];
    const place = { script: root, line, start: acceptance.start, end: acceptance.end };
    const id = complaintId(craft, acceptance, accepting, line);
    return id === null ? [] : [complaint(catalog, id, acceptance, place)];
  });
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
  // A part that is included elsewhere may accept what shows only in a whole craft.
  return here.length > 0 || !craft.isWhole() ? null : 'line/accept-unused';
}

function complaint(catalog: Catalog, id: string, acceptance: Acceptance, place: Place): Finding {
  const check = catalog.check(id);
  if (check === undefined) throw new Error(`the catalogue has no check ${id}`);
  const near = id === 'line/accept-unknown' ? suggestWord(catalog.checks.keys(), acceptance.check) : [];
  const start = place.line.text.indexOf(acceptance.check, place.start);
  const written = { ...place, start, end: start + acceptance.check.length };
  const renamed = near.map((name) => ({
    title: `Write ${name}`,
    edits: [{ place: written, newText: name }],
  }));
  const removal = { title: 'Remove the acceptance', edits: [{ place, newText: '' }] };
  return {
    check,
    level: check.level,
    values: { check: acceptance.check, reason: acceptance.reason, suggestion: near.join(', ') },
    place,
    related: [],
    pack: null,
    fixes: near.length > 0 ? renamed : [removal],
    accepted: null,
  };
}
