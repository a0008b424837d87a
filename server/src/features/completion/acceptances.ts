import type { ScriptLine } from '../../language/script-line';
import { isAcceptable } from '../accept-risk';
import type { Snapshot } from '../snapshot';
import type { AcceptanceContext } from './context';
import { type CompletionItem, completionItem } from './item';

/** The risks and notes that were found on a line, and those already accepted there. The reason is left to the pilot. */
export function acceptanceItems(
  snapshot: Snapshot,
  line: ScriptLine,
  { range, lead, hasReason }: AcceptanceContext,
): readonly CompletionItem[] {
  const here = snapshot
    .findings()
    .filter((finding) => finding.place.line === line)
    .filter((finding) => finding.accepted !== null || isAcceptable(finding));
  const checks = new Map(here.map(({ check }) => [check.id, check]));
  return [...checks.values()].map(({ id, title }) =>
    completionItem({
      label: lead === '' ? id : `accept ${id}`,
      kind: 'acceptance',
      detail: title,
      range,
      insertText: `${lead}${id}${hasReason ? '' : ': '}`,
      subject: { kind: 'check', id },
    }),
  );
}
