import assert from 'node:assert/strict';
import type { Finding } from '../../../server/src/checks/report/finding';
import { codeActions } from '../../../server/src/features/code-actions';
import type { Snapshot } from '../../../server/src/features/snapshot';
import { checkCases } from '../../support/all-check-cases';
import { applied } from '../../support/applied';
import { estimateCases } from '../../support/estimate-cases';
import { aboutWholes, faults } from '../../support/faults';
import { findingsOf } from '../../support/findings';
import { retype } from '../../support/retyped';
import { snapshotOf } from '../../support/snapshot';

interface Trigger {
  readonly name: string;
  /** The check that the script is there for; null for a whole faulty script. */
  readonly id: string | null;
  readonly group: string;
  readonly text: string;
}

const triggers: readonly Trigger[] = [
  ...faults.map(({ name, text }) => ({ name, id: null, group: 'faulty scripts', text })),
  ...[...checkCases.flatMap(({ cases }) => cases), ...estimateCases].map(([id, , faulty]) => ({
    name: `${id}: ${faulty.at(-1)}`,
    id,
    group: id.split('/')[0] ?? '',
    text: faulty.join('\n'),
  })),
];

const everything = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** What was found in a trigger, and what its first fixes bring. */
interface Looked {
  readonly findings: readonly { readonly id: string; readonly level: string; readonly hasFix: boolean }[];
  /** Must-fix findings that a first fix brings, each with the fix. */
  readonly brought: readonly string[];
}

const known = new Map<Trigger, Looked>();

function looked(trigger: Trigger): Looked {
  const already = known.get(trigger);
  if (already !== undefined) return already;
  const { snapshot } = snapshotOf(trigger.text);
  const findings = snapshot
    .findings()
    .map(({ check: { id, level }, fixes }) => ({ id, level, hasFix: fixes.length > 0 }));
  const now = { findings, brought: brought(trigger.text, snapshot) };
  known.set(trigger, now);
  return now;
}

/** How often each check finds a must-fix; without those that wait for a script to be a whole craft, all of it there. */
function mustFixes(findings: readonly Finding[], hasWhole: boolean): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { check } of findings) {
    if (check.level !== 'must-fix' || (!hasWhole && aboutWholes.has(check.id))) continue;
    counts.set(check.id, (counts.get(check.id) ?? 0) + 1);
  }
  return counts;
}

function brought(text: string, snapshot: Snapshot): readonly string[] {
  const { craft } = snapshot;
  const hasWhole = craft.isWhole() && craft.isComplete();
  const findings = snapshot.findings();
  const before = mustFixes(findings, hasWhole);
  const actions = codeActions(snapshot, everything);
  const titles = new Map<string, string>();
  for (const finding of findings) {
    const first = actions.find((action) => action.findings.includes(finding));
    if (first === undefined || first.kind === 'accept') continue;
    const better = applied(first.edits, { 'main.craft': text })['main.craft'] ?? text;
    titles.set(better, `${finding.check.id}: ${first.title}`);
  }
  return [...titles].flatMap(([better, title]) => {
    retype(craft, better);
    return [...mustFixes(findingsOf(craft), hasWhole)].flatMap(([id, count]) =>
      count > (before.get(id) ?? 0) ? [`${title} brings ${id}\n${better}`] : [],
    );
  });
}

const shares = { 'must-fix': 85, risk: 60 } as const;

describe('what is offered for a finding', () => {
  for (const group of new Set(triggers.map((trigger) => trigger.group))) {
    it(`never begins with a fix that brings another must-fix: ${group}`, () => {
      assert.deepEqual(
        triggers.filter((trigger) => trigger.group === group).flatMap((trigger) => looked(trigger).brought),
        [],
      );
    });
  }

  for (const [level, share] of Object.entries(shares)) {
    it(`mends at least ${share} % of the findings of level ${level}, and of the checks by their own scripts`, () => {
      const all: boolean[] = [];
      const own = new Map<string, boolean>();
      for (const trigger of triggers) {
        for (const { id, hasFix, ...finding } of looked(trigger).findings) {
          if (finding.level !== level) continue;
          all.push(hasFix);
          if (id === trigger.id) own.set(id, (own.get(id) ?? true) && hasFix);
        }
      }
      const without = [...own].flatMap(([id, has]) => (has ? [] : [id]));
      const percent = (part: number, whole: number) => Math.floor((100 * part) / whole);
      const ofAll = percent(all.filter((has) => has).length, all.length);
      const ofOwn = percent(own.size - without.length, own.size);
      console.log(`      ${level}: ${ofAll} % of ${all.length} findings, ${ofOwn} % of ${own.size} checks`);
      assert.ok(ofAll >= share && ofOwn >= share, `${ofAll} %, ${ofOwn} %; without: ${without.join(', ')}`);
    });
  }
});
