import type { Catalog } from '../catalog/catalog';
import { suggestWord } from '../catalog/suggest';
import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import type { PlacedLine } from '../craft/setting';
import type { Acceptance } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import type { Finding, Place } from './finding';

/** A finding before its line's acceptance is looked at. */
export interface Raised {
  readonly finding: Finding;
  readonly acceptedOn: PlacedLine;
}

/** Quiets risks that their line accepts, and reports acceptances that accept nothing. */
export function withAcceptances(craft: Craft, raised: readonly Raised[]): readonly Finding[] {
  // By line: equal lines share one acceptance.
  const used = new Set<ScriptLine>();
  const findings = raised.map(({ finding, acceptedOn }) => {
    const { acceptance } = acceptedOn.line.statement;
    if (acceptance === null || acceptance.check !== finding.check.id) return finding;
    used.add(acceptedOn.line);
    if (finding.level === 'must-fix') return finding;
    return { ...finding, level: 'note' as const, accepted: acceptance.reason };
  });
  return [...findings, ...complaints(craft, raised, used)];
}

function complaints(
  craft: Craft,
  raised: readonly Raised[],
  used: ReadonlySet<ScriptLine>,
): readonly Finding[] {
  const { root, catalog } = craft;
  return root.lines(inputKeys.acceptance).flatMap((line) => {
    const { acceptance } = line.statement;
    if (acceptance === null) return [];
    const place = { script: root, line, start: acceptance.start, end: acceptance.end };
    const id = complaintId(craft, acceptance, raised, used, line);
    return id === null ? [] : [complaint(catalog, id, acceptance, place)];
  });
}

function complaintId(
  craft: Craft,
  acceptance: Acceptance,
  raised: readonly Raised[],
  used: ReadonlySet<ScriptLine>,
  line: ScriptLine,
): string | null {
  if (craft.catalog.check(acceptance.check) === undefined) return 'line/accept-unknown';
  const isMustFix = raised.some(
    ({ finding, acceptedOn }) =>
      acceptedOn.line === line && finding.check.id === acceptance.check && finding.level === 'must-fix',
  );
  if (isMustFix) return 'line/accept-must-fix';
  // A part that is included elsewhere may accept what shows only in a whole craft.
  return used.has(line) || !craft.isWhole() ? null : 'line/accept-unused';
}

function complaint(catalog: Catalog, id: string, acceptance: Acceptance, place: Place): Finding {
  const check = catalog.check(id);
  if (check === undefined) throw new Error(`the catalogue has no check ${id}`);
  const meant = id === 'line/accept-unknown' ? suggestWord(catalog.checks.keys(), acceptance.check) : [];
  const start = place.line.text.indexOf(acceptance.check, place.start);
  const written = { ...place, start, end: start + acceptance.check.length };
  const renamed = meant.map((name) => ({
    title: `Write ${name}`,
    edits: [{ place: written, newText: name }],
  }));
  const removal = { title: 'Remove the acceptance', edits: [{ place, newText: '' }] };
  return {
    check,
    level: check.level,
    values: { check: acceptance.check, reason: acceptance.reason, meant: meant.join(', ') },
    place,
    related: [],
    pack: null,
    fixes: meant.length > 0 ? renamed : [removal],
    accepted: null,
  };
}
